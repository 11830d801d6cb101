#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "record.hpp"
#include "state_rows.hpp"

#include <optional>
#include <string_view>
#include <vector>

/// A pipe size that was tried, the same in every answer.
namespace fluewright::results {

struct SizeEntry {
    std::string_view connector;
    std::string_view chimney;
    double connector_m{};
    double chimney_m{};
    double height_m{};
    double area_over_outlet{};
    std::string_view ruled_out_by;
    std::string_view seldom_sold;
    bool works{};
    bool present{};
    bool suggested{};
    std::optional<double> least_margin_pa{};
    std::optional<double> least_opening_share{};
    std::optional<std::vector<StateRow>> states{};
};

template <>
const Record<SizeEntry>& record_of<SizeEntry>();

[[nodiscard]] std::vector<SizeEntry> entries_of(const Assessment& assessment);
[[nodiscard]] std::vector<SizeEntry> entries_of(const SizeTable& table);

/// What `check` says of the size.
struct SizeAdviceRow {
    const Assessment& of;
};

template <>
const Record<SizeAdviceRow>& record_of<SizeAdviceRow>();

} // namespace fluewright::results
