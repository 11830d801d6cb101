#include "colors.hpp"
#include "paint.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace fluewright::drawing {
namespace {

using chart::Point;
using PointLine = std::vector<Point>;

double line_length(const PointLine& line) {
    return line.size() < 2
               ? 0.0
               : std::hypot(line.back().x - line.front().x, line.back().y - line.front().y);
}

class RunPainter {
public:
    RunPainter(const Case& resolved,
               const Elevation& elevation,
               const Shown& shown,
               const Lines& lines,
               Painting& painting)
        : case_(resolved), e_(elevation), shown_(shown), lines_(lines), paint_(painting) {}

    void paint() {
        foundation();
        for (std::size_t i = 0; i < e_.parts.size(); ++i) {
            pipe(i);
        }
        for (std::size_t i = 0; i < e_.parts.size(); ++i) {
            fitting(i);
        }
    }

private:
    chart::Picture& picture() { return paint_.picture; }

    /// A masonry chimney beside the heater stands on the ground.
    void foundation() {
        for (std::size_t i = 0; i < e_.parts.size(); ++i) {
            const DrawnPart& part = e_.parts[i];
            if (!is_masonry(case_, *part.part) || !part.has_length()) {
                continue;
            }
            const double top = lines_[i].front().y;
            const Spot foot = part.axis.front();
            const double half_m = 0.5 * part.outside_m;
            const bool on_heater = foot.x_m <= e_.heater.right_m && foot.y_m >= e_.heater.top_m;
            if (!part.part->level() && !on_heater && foot.y_m > 0.0) {
                const Point left = paint_.frame.at({foot.x_m - half_m, 0.0});
                const Point right = paint_.frame.at({foot.x_m + half_m, 0.0});
                picture().shape({{left.x, top}, left, right, {right.x, top}},
                                color_of(Stuff::masonry),
                                {.color = ink, .width = 0.8});
            }
            return;
        }
    }

    void band(const PointLine& line, double inner, double outer, std::string_view fill) {
        for (const double side : {1.0, -1.0}) {
            PointLine corners = beside(line, side * inner);
            PointLine far = beside(line, side * outer);
            corners.insert(corners.end(), far.rbegin(), far.rend());
            picture().shape(corners, fill, {.color = fill, .width = 0.3});
        }
    }

    /// All layers of a part, its bore and its outlines.
    void pipe(std::size_t index) {
        const DrawnPart& part = e_.parts[index];
        const PointLine& line = lines_[index];
        if (line.size() < 2) {
            return;
        }
        const double bore = 0.5 * paint_.frame.px(part.bore_m);
        const double outside = std::max(1.5, 0.5 * paint_.frame.px(part.outside_m));
        const WallBuild& wall = case_.walls[part.part->wall];
        double radius_m = 0.5 * part.bore_m;
        for (std::size_t i = 0; i < wall.layer_count; ++i) {
            const double from = paint_.frame.px(radius_m);
            radius_m += wall.layers[i].thickness_m;
            const Stuff stuff = stuff_of(wall.layers[i]);
            band(line, from, paint_.frame.px(radius_m), color_of(stuff));
            note(stuff);
        }
        if (paint_.frame.px(radius_m) < outside - 0.2) {
            band(line, paint_.frame.px(radius_m), outside, color_of(Stuff::insulation));
        }
        const bool by_outside = shown_.show == Show::surface;
        fill(line, shown_.tints[index], by_outside ? outside : std::max(1.0, bore));
        const bool masonry = is_masonry(case_, *part.part);
        const chart::Stroke outline{.color = ink, .width = masonry ? 1.2 : 0.9};
        for (const double side : {1.0, -1.0}) {
            picture().path(beside(line, side * outside), outline);
            if (outside - bore > 1.5) {
                picture().path(beside(line, side * bore),
                               {.color = ink, .width = 0.5, .dashes = by_outside ? "3 2" : ""});
            }
        }
        for (std::size_t i = 1; i < line.size(); ++i) {
            paint_.sheet.take_line(line[i - 1], line[i], outside + 2.0);
        }
    }

    void note(Stuff stuff) {
        paint_.signs.insert(stuff == Stuff::insulation ? Sign::insulation
                            : stuff == Stuff::air      ? Sign::air_gap
                            : stuff == Stuff::masonry  ? Sign::masonry
                                                       : Sign::sheet);
    }

    /// The color along the part, in steps too small to see.
    void fill(const PointLine& line, const Tint& tint, double half_width) {
        if (!tint.from || !tint.to) {
            band_whole(line, half_width, no_figure);
            return;
        }
        const std::string first = shown_.color(*tint.from);
        const std::string last = shown_.color(*tint.to);
        if (first == last || line.size() > 2) {
            band_whole(line, half_width, first);
            return;
        }
        constexpr double step_px = 5.0;
        constexpr int most_steps = 40;
        const int steps = std::clamp(static_cast<int>(line_length(line) / step_px), 2, most_steps);
        for (int i = 0; i < steps; ++i) {
            const auto at = [&](double share) {
                return Point{line.front().x + share * (line.back().x - line.front().x),
                             line.front().y + share * (line.back().y - line.front().y)};
            };
            const double middle = (i + 0.5) / steps;
            // Each reaches under the next, so that no seam shows.
            band_whole({at(static_cast<double>(i) / steps), at(std::min(1.0, (i + 1.3) / steps))},
                       half_width,
                       shown_.color(*tint.from + middle * (*tint.to - *tint.from)));
        }
    }

    void band_whole(const PointLine& line, double half_width, std::string_view color) {
        PointLine corners = beside(line, half_width);
        const PointLine far = beside(line, -half_width);
        corners.insert(corners.end(), far.rbegin(), far.rend());
        picture().polygon(corners, color);
    }

    /// A point beside the axis of a part: `along` its way and `across` to the left, in half widths.
    [[nodiscard]] Point off(const DrawnPart& part, Point at, double along, double across) const {
        const double half = std::max(3.0, 0.5 * paint_.frame.px(part.outside_m));
        const double c = std::cos(part.direction_rad);
        const double s = std::sin(part.direction_rad);
        return {at.x + half * (along * c - across * s), at.y - half * (along * s + across * c)};
    }

    void fitting(std::size_t index) {
        const DrawnPart& part = e_.parts[index];
        const Point at = paint_.frame.at(part.at);
        const chart::Stroke thin{.color = ink, .width = 1.0};
        const chart::Stroke thick{.color = ink, .width = 2.2};
        switch (part.part->kind) {
        case PartKind::tee:
            tee(index, at);
            break;
        case PartKind::damper: {
            const double blade = part.part->written.blade_angle_rad.value_or(0.0);
            const double c = std::cos(blade);
            const double s = std::sin(blade);
            picture().line(off(part, at, -c, -s), off(part, at, c, s), thick);
            picture().line(at, off(part, at, 0.0, -1.8), thin);
            break;
        }
        case PartKind::screen:
            picture().line(off(part, at, 0.0, -1.0),
                           off(part, at, 0.0, 1.0),
                           {.color = ink, .width = 2.0, .dashes = "2 2"});
            break;
        case PartKind::cap:
            cap(part, at);
            break;
        case PartKind::reducer:
        case PartKind::increaser: {
            const bool narrows = part.part->kind == PartKind::reducer;
            const double before = narrows ? 1.45 : 0.75;
            picture().shape({off(part, at, -0.8, before),
                             off(part, at, 0.5, 1.05),
                             off(part, at, 0.5, -1.05),
                             off(part, at, -0.8, -before)},
                            "#ffffff",
                            thin);
            break;
        }
        case PartKind::obstruction:
            picture().shape({off(part, at, -0.6, 1.0), off(part, at, 0.6, 1.0), at}, ink, thin);
            break;
        case PartKind::draft_regulator:
            picture().circle(off(part, at, 0.0, -1.6),
                             std::max(3.5, 0.3 * paint_.frame.px(part.outside_m)),
                             "#ffffff",
                             thin);
            break;
        case PartKind::draft_hood:
            picture().shape({off(part, at, -0.9, 1.9),
                             off(part, at, 0.6, 1.0),
                             off(part, at, 0.6, -1.0),
                             off(part, at, -0.9, -1.9)},
                            "#ffffff",
                            thin);
            break;
        case PartKind::fitting:
            picture().shape({off(part, at, -0.7, 1.2),
                             off(part, at, 0.7, 1.2),
                             off(part, at, 0.7, -1.2),
                             off(part, at, -0.7, -1.2)},
                            "none",
                            thin);
            break;
        case PartKind::elbow:
            if (turns_in_plan(index)) { // towards the reader
                picture().circle(
                    at, std::max(4.0, 0.6 * paint_.frame.px(part.outside_m)), "#ffffff", thin);
                picture().dot(at, ink);
            }
            break;
        case PartKind::straight:
        case PartKind::collar:
            break;
        }
    }

    /// Whether it stands between two straights that are drawn in one line.
    [[nodiscard]] bool turns_in_plan(std::size_t index) const {
        const RunPart& part = *e_.parts[index].part;
        return lines_[index].size() < 2 && case_.run.straight_before(part) != nullptr
               && case_.run.straight_behind(part) != nullptr;
    }

    /// The leg the gas does not take, with its lid.
    void tee(std::size_t index, Point at) {
        const DrawnPart& part = e_.parts[index];
        const bool side = part.part->flow.value == TeeFlow::side;
        // In masonry it is a shaft of the bore.
        const double across =
            is_masonry(case_, *part.part) ? part.bore_m / std::max(part.outside_m, 1e-6) : 1.0;
        const double far = -2.2 * across;
        const chart::Stroke thin{.color = ink, .width = 0.9};
        if (side) {
            picture().shape({off(part, at, 0.0, across),
                             off(part, at, far, across),
                             off(part, at, far, -across),
                             off(part, at, 0.0, -across)},
                            "#ffffff",
                            thin);
            picture().line(off(part, at, far, 1.2 * across),
                           off(part, at, far, -1.2 * across),
                           {.color = ink, .width = 2.5});
            paint_.sheet.take_line(
                at, off(part, at, far, 0.0), 0.5 * paint_.frame.px(part.outside_m));
        } else {
            picture().shape({off(part, at, 0.9, -1.0),
                             off(part, at, 0.9, -2.0),
                             off(part, at, -0.9, -2.0),
                             off(part, at, -0.9, -1.0)},
                            "#ffffff",
                            thin);
            picture().line(
                off(part, at, 1.1, -2.0), off(part, at, -1.1, -2.0), {.color = ink, .width = 2.5});
        }
    }

    void cap(const DrawnPart& part, Point at) {
        if (part.part->bare_end()) {
            return;
        }
        const chart::Stroke thin{.color = ink, .width = 1.1};
        // It looks the way the pipe ends: up, or out of a wall.
        const double lid = 0.9;
        for (const double side : {-0.7, 0.7}) {
            picture().line(off(part, at, 0.0, side), off(part, at, lid, side), thin);
        }
        if (has_screen(part.part->written)) {
            picture().line(off(part, at, 0.5 * lid, -0.7),
                           off(part, at, 0.5 * lid, 0.7),
                           {.color = ink, .width = 1.0, .dashes = "2 2"});
        }
        const std::array<Point, 3> roof{
            off(part, at, lid, -1.4), off(part, at, lid, 1.4), off(part, at, lid + 0.7, 0.0)};
        picture().shape({roof[0], roof[1], roof[2]}, "#d9d9d9", thin);
        const auto [left, right] = std::minmax({at.x, roof[0].x, roof[1].x, roof[2].x});
        const auto [upper, lower] = std::minmax({at.y, roof[0].y, roof[1].y, roof[2].y});
        paint_.sheet.take({left, upper, right - left, lower - upper});
    }

    const Case& case_;
    const Elevation& e_;
    const Shown& shown_;
    const Lines& lines_;
    Painting& paint_;
};

} // namespace

void paint_run(const Case& resolved,
               const Elevation& elevation,
               const Shown& shown,
               const Lines& lines,
               Painting& painting) {
    RunPainter{resolved, elevation, shown, lines, painting}.paint();
}

} // namespace fluewright::drawing
