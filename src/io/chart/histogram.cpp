#include "histogram.hpp"

#include "chart.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright::chart {
namespace {

constexpr double histogram_width = 900.0;
constexpr double histogram_height = 330.0;
constexpr double histogram_left = 78.0;
constexpr double histogram_right = 860.0;
constexpr double histogram_top = 56.0;
constexpr double histogram_foot = 270.0;
constexpr int wanted_bars = 20;
constexpr std::string_view good_bar = "#1f5fa8";
constexpr std::string_view short_bar = "#c2561a";

} // namespace

std::vector<double> bounds_of_bars(const std::vector<double>& values) {
    if (values.empty()) {
        return {};
    }
    const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
    // Equal values get a bar of their own.
    const double wide = std::max(*greatest - *least, std::max(1e-6, 1e-3 * std::abs(*greatest)));
    const std::vector<double> steps = round_steps(*least, *least + wide, wanted_bars);
    const double step = steps.size() > 1 ? steps[1] - steps[0] : wide;
    std::vector<double> bounds;
    const double first = std::floor(*least / step) * step;
    for (int i = 0; bounds.empty() || bounds.back() < *greatest; ++i) {
        bounds.push_back(first + i * step);
    }
    if (bounds.size() < 2) {
        bounds.push_back(first + step);
    }
    return bounds;
}

std::vector<std::size_t> counts_of_bars(const std::vector<double>& values,
                                        const std::vector<double>& bounds) {
    std::vector<std::size_t> counts(bounds.empty() ? 0 : bounds.size() - 1, 0);
    for (const double value : values) {
        const auto above = std::upper_bound(bounds.begin(), bounds.end(), value);
        const auto bar = std::clamp<std::ptrdiff_t>(
            above - bounds.begin() - 1, 0, static_cast<std::ptrdiff_t>(counts.size()) - 1);
        ++counts[static_cast<std::size_t>(bar)];
    }
    return counts;
}

std::string histogram_svg(const Histogram& histogram) {
    const std::vector<double> bounds = bounds_of_bars(histogram.values);
    if (bounds.empty()) {
        return {};
    }
    const std::vector<std::size_t> counts = counts_of_bars(histogram.values, bounds);
    Picture picture(histogram_width, histogram_height, histogram.title);
    picture.bold({histogram_left, 26.0}, histogram.title);
    Axis x{.title = histogram.x_title,
           .low = bounds.front(),
           .high = bounds.back(),
           .start_px = histogram_left,
           .end_px = histogram_right};
    Axis y{.title = "installations",
           .low = 0.0,
           .high = static_cast<double>(*std::max_element(counts.begin(), counts.end())),
           .start_px = histogram_foot,
           .end_px = histogram_top};
    y.round_out();
    picture.axes(x, y, true);
    for (std::size_t i = 0; i < counts.size(); ++i) {
        const double left = x.px(bounds[i]);
        const double high = y.px(static_cast<double>(counts[i]));
        if (counts[i] == 0) {
            continue;
        }
        const bool falls_short =
            histogram.has_limit && 0.5 * (bounds[i] + bounds[i + 1]) < histogram.least_good;
        const double wide = x.px(bounds[i + 1]) - left;
        picture.box({left, high}, wide, histogram_foot - high, falls_short ? short_bar : good_bar);
        if (falls_short) {
            picture.hatch(
                {left, high}, wide, histogram_foot - high, 6.0, {.color = "#ffffff", .width = 1.2});
        }
        picture.frame({left, high}, wide, histogram_foot - high);
    }
    if (histogram.has_limit && histogram.least_good > x.low && histogram.least_good < x.high) {
        const double at = x.px(histogram.least_good);
        picture.line({at, histogram_top}, {at, histogram_foot}, {.width = 1.6, .dashes = "6 3"});
    }
    return picture.finished();
}

} // namespace fluewright::chart
