#pragma once

#include "fluewright/advice/assessment.hpp"

#include <string>

/// Trade sizes of pipe: what rules some out, and a run in others.
namespace fluewright::pipe_sizes {

/// Sizes within this share of each other count as equal: trade sizes are nominal.
inline constexpr double same_size = 0.02;

[[nodiscard]] std::string_view system_name(TradeSizes sizes);

/// The greatest area over the outlet's that the trade allows; infinite for an open front.
[[nodiscard]] double greatest_area_ratio(const Case& present);

/// The rule of the trade against a size, in words; empty where there is none.
[[nodiscard]] std::string rule_against(double area_over_outlet, double greatest);

/// Name of the size nearest to a diameter, or the diameter itself when none is within 1 %.
[[nodiscard]] std::string trade_name(double diameter_m, TradeSizes sizes, UnitSystem units);

struct Present {
    double diameter_m{}; ///< that most of the length has; 0 where no part can be chosen
    bool uniform{true};
};

/// The diameter of the parts of a spelled-out run from `begin` to `end` that can be chosen.
[[nodiscard]] Present present_size(const Installation& spelled, std::size_t begin, std::size_t end);

/// The spelled-out run with other pipe; masonry and rectangular flues keep their size.
[[nodiscard]] Installation
with_sizes(const Installation& spelled, double connector_m, double chimney_m);

} // namespace fluewright::pipe_sizes
