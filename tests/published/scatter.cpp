#include "scatter.hpp"

#include "figures.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <set>

namespace published {
namespace {

constexpr double side = 360.0; ///< of the square both axes span
constexpr double left = 80.0;
constexpr double top = 20.0;

/// Maps values to positions along an axis, 0 to 1.
struct Scale {
    bool logarithmic;
    double low;
    double high;

    [[nodiscard]] double position(double value) const {
        return logarithmic ? std::log(value / low) / std::log(high / low)
                           : (value - low) / (high - low);
    }
};

Scale scale_for(const std::vector<Outcome>& outcomes) {
    double low = outcomes.front().row.expected;
    double high = low;
    double least = low;
    double most = low;
    for (const auto& outcome : outcomes) {
        least = std::min(least, outcome.row.expected);
        most = std::max(most, outcome.row.expected);
        low = std::min({low, outcome.row.expected, outcome.computed});
        high = std::max({high, outcome.row.expected, outcome.computed});
    }
    if (low > 0.0 && most > 20.0 * least) {
        return {true, low / 1.2, high * 1.2};
    }
    const double margin = high > low ? 0.05 * (high - low) : std::max(0.1 * std::abs(high), 0.1);
    return {false, low - margin, high + margin};
}

/// Round values inside the scale: steps of 1, 2 or 5 times a power of ten, or such multiples of
/// decades on a logarithmic axis.
std::vector<double> ticks_of(const Scale& scale) {
    std::vector<double> ticks;
    if (scale.logarithmic) {
        const bool few = scale.high / scale.low < 1e3;
        const int first = static_cast<int>(std::floor(std::log10(scale.low)));
        for (int decade = first; std::pow(10.0, decade) <= scale.high; ++decade) {
            for (const double multiple : {1.0, 2.0, 5.0}) {
                const double tick = multiple * std::pow(10.0, decade);
                if (tick >= scale.low && tick <= scale.high && (few || multiple == 1.0)) {
                    ticks.push_back(tick);
                }
            }
        }
        return ticks;
    }
    const double rough = (scale.high - scale.low) / 5.0;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    double step = 10.0 * power;
    for (const double multiple : {5.0, 2.0, 1.0}) {
        if (rough <= multiple * power) {
            step = multiple * power;
        }
    }
    for (double n = std::ceil(scale.low / step); n * step <= scale.high; n += 1.0) {
        ticks.push_back(n * step);
    }
    return ticks;
}

double x_of(double position) {
    return left + side * position;
}

double y_of(double position) {
    return top + side * (1.0 - position);
}

std::string axes(const Scale& scale) {
    std::string svg = fmt::format(
        "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"none\" "
        "stroke=\"#444\"/>\n",
        left,
        top,
        side,
        side);
    for (const double tick : ticks_of(scale)) {
        const double at = scale.position(tick);
        svg += fmt::format("<path d=\"M{0:.1f} {1:.1f}v-5M{2:.1f} {3:.1f}h5\" stroke=\"#444\"/>\n"
                           "<text x=\"{0:.1f}\" y=\"{4:.1f}\" text-anchor=\"middle\">{6}</text>\n"
                           "<text x=\"{5:.1f}\" y=\"{7:.1f}\" text-anchor=\"end\">{6}</text>\n",
                           x_of(at),
                           y_of(0.0),
                           x_of(0.0),
                           y_of(at),
                           y_of(0.0) + 16.0,
                           x_of(0.0) - 6.0,
                           figure(tick),
                           y_of(at) + 4.0);
    }
    return svg;
}

std::string titles(const Outcome& outcome) {
    const std::string unit = outcome.unit.empty() ? "-" : outcome.unit;
    return fmt::format(
        "<text x=\"{0:.1f}\" y=\"{1:.1f}\" text-anchor=\"middle\">figure of others, {2} "
        "[{3}]</text>\n"
        "<text transform=\"translate(16 {4:.1f}) rotate(-90)\" "
        "text-anchor=\"middle\">computed {2} [{3}]</text>\n",
        x_of(0.5),
        top + side + 38.0,
        outcome.quantity,
        unit,
        y_of(0.5));
}

/// Dashed lines a tenth above and below, where the axes hold positive values and some row is far
/// enough off for them to say something.
std::string tenth_lines(const std::vector<Outcome>& outcomes, const Scale& scale) {
    constexpr double tenth = 0.1;
    constexpr double shown_from = 0.02;
    const bool far = std::any_of(outcomes.begin(), outcomes.end(), [](const Outcome& o) {
        return std::abs(o.computed - o.row.expected) > shown_from * std::abs(o.row.expected);
    });
    if (scale.low <= 0.0 || scale.high / scale.low < 1.0 + 2.0 * tenth || !far) {
        return "";
    }
    const auto line = [&](double x0, double y0, double x1, double y1) {
        return fmt::format("<path d=\"M{:.1f} {:.1f}L{:.1f} {:.1f}\" stroke=\"#999\" "
                           "stroke-dasharray=\"4 4\"/>\n",
                           x_of(scale.position(x0)),
                           y_of(scale.position(y0)),
                           x_of(scale.position(x1)),
                           y_of(scale.position(y1)));
    };
    const double over = 1.0 + tenth;
    const double under = 1.0 - tenth;
    return line(scale.low, over * scale.low, scale.high / over, scale.high)
           + line(scale.low / under, scale.low, scale.high, under * scale.high)
           + fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"end\" "
                         "fill=\"#666\">dashed: 10 % off</text>\n",
                         x_of(1.0) - 8.0,
                         y_of(0.0) - 10.0);
}

} // namespace

std::string scatter_svg(const std::vector<Outcome>& outcomes) {
    const Scale scale = scale_for(outcomes);
    std::string svg =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 460 430\" width=\"460\" "
        "height=\"430\" font-family=\"sans-serif\" font-size=\"12\">\n"
        "<rect width=\"460\" height=\"430\" fill=\"#fff\"/>\n";
    svg += axes(scale);
    svg += titles(outcomes.front());
    svg += fmt::format("<path d=\"M{:.1f} {:.1f}L{:.1f} {:.1f}\" stroke=\"#999\"/>\n",
                       x_of(0.0),
                       y_of(0.0),
                       x_of(1.0),
                       y_of(1.0));
    svg += tenth_lines(outcomes, scale);
    std::set<std::string> drawn;
    for (const auto& outcome : outcomes) {
        const std::string dot = fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"3\"/>\n",
                                            x_of(scale.position(outcome.row.expected)),
                                            y_of(scale.position(outcome.computed)));
        drawn.insert(dot);
    }
    svg += "<g fill=\"#b3541e\" fill-opacity=\"0.6\">\n";
    for (const auto& dot : drawn) {
        svg += dot;
    }
    return svg + "</g>\n</svg>\n";
}

} // namespace published
