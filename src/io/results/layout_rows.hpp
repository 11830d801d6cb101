#pragma once

#include "fluewright/advice/study/compare.hpp"
#include "record.hpp"

#include <vector>

/// A layout beside others.
namespace fluewright::results {

struct LayoutRow {
    const Comparison& all;
    std::size_t at;

    [[nodiscard]] const Layout& of() const { return all.layouts[at]; }
};

template <>
const Record<LayoutRow>& record_of<LayoutRow>();

[[nodiscard]] std::vector<LayoutRow> layouts_of(const Comparison& all);

} // namespace fluewright::results
