#include "chart.hpp"

#include "io/text/markup.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright::chart {
namespace {

std::string_view name(Anchor anchor) {
    constexpr std::array<std::string_view, 3> names{"start", "middle", "end"};
    return names[static_cast<std::size_t>(anchor)];
}

std::string dashes_of(const Stroke& stroke) {
    return stroke.dashes.empty() ? std::string{}
                                 : fmt::format(R"( stroke-dasharray="{}")", stroke.dashes);
}

std::string attributes(const Stroke& stroke) {
    return fmt::format(R"(fill="none" stroke="{}" stroke-width="{}"{})",
                       stroke.color,
                       stroke.width,
                       dashes_of(stroke));
}

constexpr double edge_px = 10.0; ///< kept free at the right

constexpr double letter_down = 4.5; ///< from the middle of a line of text to its base

} // namespace

UnitScale unit_scale(Kind kind, std::string_view unit) {
    UnitScale scale{.unit = std::string{unit}};
    const auto zero = parse_quantity("0 " + scale.unit, kind);
    const auto one = parse_quantity("1 " + scale.unit, kind);
    if (zero && one) {
        scale.zero_si = zero->value;
        scale.one_si = one->value;
    }
    return scale;
}

std::vector<double> round_steps(double low, double high, int wanted) {
    const double rough = (high - low) / wanted;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    double step = 10.0 * power;
    for (const double multiple : {5.0, 2.0, 1.0}) {
        if (rough <= multiple * power * 1.0001) {
            step = multiple * power;
        }
    }
    std::vector<double> steps;
    const double slack = 1e-9 * step;
    for (double n = std::ceil((low - slack) / step); n * step <= high + slack; n += 1.0) {
        steps.push_back(n * step);
    }
    return steps;
}

std::vector<double> Axis::steps() const {
    const double px_per_step = start_px > end_px ? 45.0 : 70.0;
    return round_steps(
        low, high, std::max(2, static_cast<int>(std::abs(end_px - start_px) / px_per_step)));
}

void Axis::round_out() {
    const std::vector<double> inner = steps();
    if (inner.size() < 2) {
        return;
    }
    const double step = inner[1] - inner[0];
    low = std::floor(low / step) * step;
    high = std::ceil(high / step) * step;
}

Axis axis_over(const std::vector<double>& shown, std::string title) {
    Axis axis{.title = std::move(title)};
    bool any = false;
    for (const double value : shown) {
        if (std::isfinite(value)) {
            axis.low = any ? std::min(axis.low, value) : value;
            axis.high = any ? std::max(axis.high, value) : value;
            any = true;
        }
    }
    if (!any) {
        axis.low = 0.0;
        axis.high = 1.0;
    } else if (!(axis.high > axis.low)) {
        const double half = std::max(0.5, 0.1 * std::abs(axis.low));
        axis.low -= half;
        axis.high += half;
    }
    return axis;
}

Picture::Picture(double width, double height, std::string_view title)
    : width_(width), height_(height), title_(title) {
    body_ = fmt::format("<title>{}</title>\n", markup(title));
    body_ += R"(<rect width="100%" height="100%" fill="#ffffff"/>)";
    body_ += '\n';
}

void Picture::line(Point from, Point to, const Stroke& stroke) {
    body_ += fmt::format("<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" {}/>\n",
                         from.x,
                         from.y,
                         to.x,
                         to.y,
                         attributes(stroke));
}

void Picture::path(const std::vector<Point>& points, const Stroke& stroke) {
    // A value that was not computed breaks the line.
    std::string steps;
    bool pen_down = false;
    for (const Point& point : points) {
        if (!std::isfinite(point.x) || !std::isfinite(point.y)) {
            pen_down = false;
            continue;
        }
        steps += fmt::format("{}{:.1f} {:.1f}", pen_down ? "L" : "M", point.x, point.y);
        pen_down = true;
    }
    if (!steps.empty()) {
        body_ += fmt::format(
            "<path d=\"{}\" {} stroke-linejoin=\"round\"/>\n", steps, attributes(stroke));
    }
}

void Picture::polygon(const std::vector<Point>& corners, std::string_view fill) {
    std::string points;
    for (const Point& corner : corners) {
        points += fmt::format("{:.1f},{:.1f} ", corner.x, corner.y);
    }
    // The rim of its own color closes the seam to the next one.
    body_ += fmt::format("<polygon points=\"{}\" fill=\"{}\" stroke=\"{}\" "
                         "stroke-width=\"0.5\"/>\n",
                         points,
                         fill,
                         fill);
}

void Picture::head(double left_px, std::string_view title, std::string_view sentence) {
    constexpr double title_px = 14.0;
    constexpr double sentence_px = 12.0;
    const double room = width_ - left_px - edge_px;
    bold({left_px, 24.0}, fitted(title, room, title_px, Weight::bold));
    std::vector<std::string> lines = wrap_to(sentence, room, sentence_px);
    if (lines.size() > 2) {
        lines.resize(2);
        lines.back() = fitted(lines.back() + " ...", room, sentence_px);
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
        text({left_px, 44.0 + 16.0 * static_cast<double>(i)}, lines[i], Anchor::start, sentence_px);
    }
}

void Picture::box(Point corner, double width, double height, std::string_view fill) {
    body_ += fmt::format(
        "<rect x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\" fill=\"{}\"/>\n",
        corner.x,
        corner.y,
        width,
        height,
        fill);
}

void Picture::frame(Point corner, double width, double height) {
    body_ += fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" "
                         "fill=\"none\" stroke=\"#222222\"/>\n",
                         corner.x,
                         corner.y,
                         width,
                         height);
}

void Picture::dot(Point at, std::string_view fill) {
    if (std::isfinite(at.x) && std::isfinite(at.y)) {
        body_ += fmt::format(
            "<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"2.5\" fill=\"{}\"/>\n", at.x, at.y, fill);
    }
}

void Picture::circle(Point at, double radius, std::string_view fill, const Stroke& stroke) {
    body_ += fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{:.1f}\" fill=\"{}\" "
                         "stroke=\"{}\" stroke-width=\"{}\"/>\n",
                         at.x,
                         at.y,
                         radius,
                         fill,
                         stroke.color,
                         stroke.width);
}

void Picture::shape(const std::vector<Point>& corners,
                    std::string_view fill,
                    const Stroke& stroke) {
    std::string points;
    for (const Point& corner : corners) {
        points += fmt::format("{}{:.1f},{:.1f}", points.empty() ? "" : " ", corner.x, corner.y);
    }
    body_ += fmt::format("<polygon points=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"{}\"{} "
                         "stroke-linejoin=\"round\"/>\n",
                         points,
                         fill,
                         stroke.color,
                         stroke.width,
                         dashes_of(stroke));
}

void Picture::hatch(
    Point corner, double width, double height, double step_px, const Stroke& stroke) {
    // A line x + y = c, from its ends on the rim.
    std::string steps;
    const int count = static_cast<int>(std::ceil((width + height) / step_px)) - 1;
    for (int i = 1; i <= count; ++i) {
        const double c = static_cast<double>(i) * step_px;
        const double x_low = std::max(0.0, c - height);
        const double x_high = std::min(width, c);
        steps += fmt::format("M{:.1f} {:.1f}L{:.1f} {:.1f}",
                             corner.x + x_low,
                             corner.y + c - x_low,
                             corner.x + x_high,
                             corner.y + c - x_high);
    }
    if (!steps.empty()) {
        body_ += fmt::format("<path d=\"{}\" {}/>\n", steps, attributes(stroke));
    }
}

void Picture::set(Point at, std::string_view words, const Words& look) {
    body_ += fmt::format(
        "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\" font-size=\"{}\"{}{}>{}</text>\n",
        at.x,
        at.y,
        name(look.anchor),
        look.size,
        look.weight == Weight::bold ? " font-weight=\"bold\"" : "",
        look.color.empty() ? "" : fmt::format(" fill=\"{}\"", look.color),
        markup(words));
}

void Picture::text(Point at, std::string_view words, Anchor anchor, double size) {
    body_ += fmt::format(
        "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\" font-size=\"{}\">{}</text>\n",
        at.x,
        at.y,
        name(anchor),
        size,
        markup(words));
}

void Picture::bold(Point at, std::string_view words, double size) {
    body_ += fmt::format(
        "<text x=\"{:.1f}\" y=\"{:.1f}\" font-weight=\"bold\" font-size=\"{}\">{}</text>\n",
        at.x,
        at.y,
        size,
        markup(words));
}

void Picture::label(Point at, std::string_view words) {
    body_ += fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\" font-size=\"12\" "
                         "stroke=\"#ffffff\" stroke-width=\"3\" paint-order=\"stroke\">{}</text>\n",
                         at.x,
                         at.y + letter_down,
                         markup(words));
}

void Picture::upright(Point at, std::string_view words) {
    body_ += fmt::format("<text transform=\"translate({:.1f} {:.1f}) rotate(-90)\" "
                         "text-anchor=\"middle\" font-size=\"13\">{}</text>\n",
                         at.x,
                         at.y,
                         markup(words));
}

void Picture::axes(const Axis& x, const Axis& y, bool grid) {
    constexpr double tick_px = 5.0;
    constexpr double number_below_px = 19.0;
    constexpr double title_below_px = 40.0;
    constexpr double title_left_px = 52.0;
    const Stroke thin{.color = "#dddddd"};
    constexpr double number_size = 12.0;
    const auto mark = [&](double at, std::string_view words) {
        const double px = x.px(at);
        if (grid) {
            line({px, y.start_px}, {px, y.end_px}, thin);
        }
        line({px, y.start_px}, {px, y.start_px + tick_px}, {});
        text({px, y.start_px + number_below_px}, words, Anchor::middle, number_size);
    };
    if (x.named.empty()) {
        for (const double step : x.steps()) {
            mark(step, format_number(step, 4));
        }
    } else {
        // Each has its share of the width; where that is little, every second has twice as much.
        constexpr double least_px = 36.0;
        const double share_px = (x.end_px - x.start_px) / static_cast<double>(x.named.size());
        const auto stride = static_cast<std::size_t>(std::ceil(least_px / share_px));
        for (std::size_t i = 0; i < x.named.size(); i += stride) {
            const double room = share_px * static_cast<double>(stride) - 4.0;
            mark(x.named[i].first, fitted(x.named[i].second, room, number_size));
        }
    }
    for (const double step : y.steps()) {
        const double px = y.px(step);
        if (grid) {
            line({x.start_px, px}, {x.end_px, px}, thin);
        }
        line({x.start_px - tick_px, px}, {x.start_px, px}, {});
        text({x.start_px - tick_px - 4.0, px + letter_down},
             format_number(step, 4),
             Anchor::end,
             12.0);
    }
    frame({x.start_px, y.end_px}, x.end_px - x.start_px, y.start_px - y.end_px);
    constexpr double title_size = 13.0;
    text({0.5 * (x.start_px + x.end_px), y.start_px + title_below_px},
         fitted(x.title, x.end_px - x.start_px, title_size),
         Anchor::middle,
         title_size);
    upright({x.start_px - title_left_px, 0.5 * (y.start_px + y.end_px)},
            fitted(y.title, y.start_px - y.end_px, title_size));
}

namespace {

constexpr double legend_line_px = 20.0;
constexpr double legend_sample_px = 30.0;
constexpr double legend_size = 12.0;
constexpr double legend_next_line = 1.25 * legend_size;

double words_left(Point at) {
    return at.x + legend_sample_px + 8.0;
}

} // namespace

std::vector<std::string> Picture::legend_lines(Point at, const Entry& entry) const {
    return wrap_to(entry.words, width_ - words_left(at) - edge_px, legend_size);
}

double Picture::legend_height(Point at, const std::vector<Entry>& entries) const {
    double sum = 0.0;
    for (const Entry& entry : entries) {
        const auto more = static_cast<double>(legend_lines(at, entry).size() - 1);
        sum += legend_line_px + more * legend_next_line;
    }
    return sum;
}

double Picture::legend(Point at, const std::vector<Entry>& entries) {
    double y = at.y;
    for (const Entry& entry : entries) {
        if (entry.fill.empty()) {
            line({at.x, y}, {at.x + legend_sample_px, y}, entry.stroke);
        } else {
            box({at.x, y - 7.0}, legend_sample_px, 14.0, entry.fill);
        }
        double base = y + letter_down;
        for (const std::string& line : legend_lines(at, entry)) {
            text({words_left(at), base}, line, Anchor::start, legend_size);
            base += legend_next_line;
        }
        y = base - letter_down - legend_next_line + legend_line_px;
    }
    return y - at.y;
}

std::string Picture::finished() const {
    return fmt::format(
        R"(<svg xmlns="http://www.w3.org/2000/svg" width="{0:.0f}" height="{1:.0f}" )"
        R"(viewBox="0 0 {0:.0f} {1:.0f}" role="img" aria-label="{3}" )"
        R"(font-family="{4}" fill="#222222">)"
        "\n{2}</svg>\n",
        width_,
        height_,
        body_,
        markup(title_),
        font_family);
}

} // namespace fluewright::chart
