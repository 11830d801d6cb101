#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fluewright::chart {

/// How many values lie where, as bars between round steps.
struct Histogram {
    std::string title;
    std::string x_title; ///< with its unit
    std::vector<double> values;
    double least_good{}; ///< bars below stand in the color of what falls short, and are hatched
    bool has_limit{};
};

/// The bounds of the bars, the last one that of the end: at most 40 bars, round steps.
[[nodiscard]] std::vector<double> bounds_of_bars(const std::vector<double>& values);

/// How many values lie in each bar; a value on a bound belongs to the bar above it, on the last
/// bound to the last bar.
[[nodiscard]] std::vector<std::size_t> counts_of_bars(const std::vector<double>& values,
                                                      const std::vector<double>& bounds);

/// A picture; empty where there are no values.
[[nodiscard]] std::string histogram_svg(const Histogram& histogram);

} // namespace fluewright::chart
