#pragma once

#include "fluewright/advice/parts/cut_list.hpp"

#include <optional>
#include <vector>

/// How a group of straights comes out of a group of lengths.
namespace fluewright::cutting {

inline constexpr double rounding_m = 1e-6;

struct Layout {
    std::vector<Bar> bars;
    int pieces{};
    int cuts{};
    int cut_pieces{}; ///< those that are no whole length
};

/// What a search for a layout found.
struct LayoutSearch {
    std::optional<Layout> found;
    bool complete{true}; ///< every way was looked at
    long work{};         ///< about tenths of a microsecond
};

/// The layout of the fewest pieces, then the fewest cuts, that uses each of `bars` (indices into
/// the lengths of the task) and fills each of `straights`; nothing where there is none.
[[nodiscard]] LayoutSearch lay_out(const CutTask& task,
                                   const std::vector<std::size_t>& straights,
                                   const std::vector<std::size_t>& bars);

} // namespace fluewright::cutting
