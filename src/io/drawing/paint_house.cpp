#include "colors.hpp"
#include "paint.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright::drawing {
namespace {

using chart::Point;

constexpr double thickness_m = 0.18;  ///< of walls and ceilings: a sign, no file tells it
constexpr double chase_room_m = 0.15; ///< between the pipe and the walls of its chase: likewise

class HousePainter {
public:
    HousePainter(const Elevation& elevation, Painting& painting) : e_(elevation), paint_(painting) {
        left_m_ = e_.left_m;
        right_m_ = e_.right_m;
        roof_ = e_.first(BarrierKind::roof);
        for (const Barrier& barrier : e_.barriers) {
            if (barrier.kind == BarrierKind::ceiling && below_roof(barrier)) {
                ceiling_m_ = std::max(ceiling_m_, barrier.at_m);
            }
            if (barrier.kind == BarrierKind::wall && e_.run_leaves_sideways) {
                right_m_ = barrier.at_m;
                wall_axis_m_ = barrier.axis_m;
            }
        }
        constexpr double over_passage_m = 0.9;
        top_m_ = roof_ != nullptr ? roof_->at_m
                 : e_.run_leaves_sideways
                     ? std::min(e_.high_m, std::max(wall_axis_m_, e_.heater.top_m) + over_passage_m)
                 : ceiling_m_ > 0.0 && !has_attic() ? ceiling_m_
                                                    : e_.high_m;
    }

    void paint() {
        end_at_eaves();
        fill();
        for (const Barrier& barrier : e_.barriers) {
            if (barrier.kind == BarrierKind::ceiling) {
                slab(barrier.at_m, barrier.stated);
            } else if (barrier.kind == BarrierKind::wall) {
                wall(barrier);
            }
        }
        floor();
        roof();
        chases();
    }

private:
    [[nodiscard]] bool has_zone(Zone zone) const {
        return std::any_of(e_.parts.begin(), e_.parts.end(), [zone](const DrawnPart& part) {
            return part.part->zone.value == zone;
        });
    }

    [[nodiscard]] bool has_attic() const { return has_zone(Zone::attic); }

    [[nodiscard]] bool below_roof(const Barrier& b) const {
        return roof_ == nullptr || b.at_m < roof_->at_m - 0.2;
    }

    void rect(double left_m, double right_m, double low_m, double high_m, std::string_view fill) {
        const Point corner = paint_.frame.at({left_m, high_m});
        paint_.picture.box(corner,
                           std::max(0.0, paint_.frame.px(right_m - left_m)),
                           std::max(0.0, paint_.frame.px(high_m - low_m)),
                           fill);
        if (fill == wall_color) {
            paint_.sheet.take({corner.x,
                               corner.y,
                               paint_.frame.px(right_m - left_m),
                               paint_.frame.px(high_m - low_m)});
        }
    }

    /// Height of the roof over a place; level where no pitch is told.
    [[nodiscard]] double roof_m(double x_m) const {
        const double slope = std::tan(e_.roof->pitch_rad);
        const double edge_m = roof_->axis_m - roof_->half_opening_m;
        const double rise_m = slope * (edge_m - x_m);
        if (!e_.roof->ridge_m) {
            return roof_->at_m + rise_m;
        }
        const double ridge_m = slope * (edge_m - (roof_->axis_m - *e_.roof->ridge_m));
        return roof_->at_m + (rise_m <= ridge_m ? rise_m : 2.0 * ridge_m - rise_m);
    }

    /// Where the roof comes down to head height or the ceiling, the house ends.
    void end_at_eaves() {
        constexpr double head_room_m = 2.0; // judgement
        if (roof_ == nullptr || !e_.roof->pitch_known || !(e_.roof->pitch_rad > 0.0)) {
            return;
        }
        const double least_m = std::min(std::max(ceiling_m_, head_room_m), roof_->at_m);
        constexpr double step_m = 0.02;
        double right_m = roof_->axis_m + roof_->half_opening_m;
        while (right_m + step_m < right_m_ && roof_m(right_m + step_m) >= least_m) {
            right_m += step_m;
        }
        double left_m = roof_->axis_m - roof_->half_opening_m;
        while (left_m - step_m > left_m_ && roof_m(left_m - step_m) >= least_m) {
            left_m -= step_m;
        }
        // What stands in the house stays in it.
        right_m_ = e_.run_leaves_sideways ? right_m_ : std::max(right_m, inside_right_m());
        left_m_ = std::min(left_m, e_.heater.left_m - 0.3);
    }

    [[nodiscard]] double inside_right_m() const {
        double right_m = e_.heater.right_m;
        for (const DrawnPart& part : e_.parts) {
            if (part.part->zone.value != Zone::outdoors) {
                right_m = std::max(right_m, part.axis.back().x_m + 0.5 * part.outside_m);
            }
        }
        return std::min(e_.right_m, right_m + 0.3);
    }

    /// The roof from left to right, a little over the walls, as far as the drawing goes.
    [[nodiscard]] std::vector<Spot> roof_line(double over_m) const {
        const double from_m = std::max(e_.left_m, left_m_ - over_m);
        const double to_m = std::min(e_.right_m, right_m_ + over_m);
        std::vector<double> places{from_m, to_m};
        const double slope = std::tan(e_.roof->pitch_rad);
        if (e_.roof->ridge_m) {
            places.push_back(roof_->axis_m - *e_.roof->ridge_m);
        }
        if (slope > 0.0) {
            // Where it leaves the drawing at the top, on both slopes.
            const double edge_m = roof_->axis_m - roof_->half_opening_m;
            const double cut_m = edge_m - (e_.high_m - roof_->at_m) / slope;
            places.push_back(cut_m);
            if (e_.roof->ridge_m) {
                places.push_back(2.0 * (roof_->axis_m - *e_.roof->ridge_m) - cut_m);
            }
        }
        std::sort(places.begin(), places.end());
        std::vector<Spot> line;
        for (const double x_m : places) {
            if (x_m >= from_m && x_m <= to_m) {
                line.push_back({x_m, std::min(roof_m(x_m), e_.high_m)});
            }
        }
        return line;
    }

    /// What is under the roof and over a level.
    void fill_below_roof(double base_m, std::string_view color) {
        const std::vector<Spot> line = roof_line(0.0);
        if (line.size() < 2) {
            return;
        }
        std::vector<Point> corners;
        corners.reserve(line.size() + 2);
        for (const Spot& spot : line) {
            corners.push_back(paint_.frame.at({spot.x_m, std::max(spot.y_m, base_m)}));
        }
        corners.push_back(paint_.frame.at({line.back().x_m, base_m}));
        corners.push_back(paint_.frame.at({line.front().x_m, base_m}));
        paint_.picture.polygon(corners, color);
    }

    void fill() {
        const bool in_house = has_zone(Zone::room) || has_attic() || has_zone(Zone::chase);
        if (!in_house) {
            return;
        }
        if (roof_ != nullptr) {
            fill_below_roof(0.0, indoors);
            if (ceiling_m_ > 0.0 && has_attic()) {
                fill_below_roof(ceiling_m_, attic_air);
            }
            return;
        }
        rect(left_m_, right_m_, 0.0, ceiling_m_ > 0.0 ? ceiling_m_ : top_m_, indoors);
        if (top_m_ < e_.high_m && !(ceiling_m_ > 0.0)) {
            paint_.picture.line(paint_.frame.at({left_m_, top_m_}),
                                paint_.frame.at({right_m_, top_m_}),
                                {.color = faint, .width = 0.8, .dashes = "2 4"});
        }
        if (ceiling_m_ > 0.0 && has_attic()) {
            rect(left_m_, right_m_, ceiling_m_, top_m_, attic_air);
        }
    }

    void slab(double at_m, bool stated) {
        const double half_m = 0.5 * thickness_m;
        rect(left_m_, right_m_, at_m - half_m, at_m + half_m, wall_color);
        edges({left_m_, at_m - half_m}, {right_m_, at_m - half_m}, stated);
        edges({left_m_, at_m + half_m}, {right_m_, at_m + half_m}, stated);
    }

    void wall(const Barrier& b) {
        const double half_m = 0.5 * thickness_m;
        double high_m = ceiling_m_ > 0.0 && !e_.run_leaves_sideways ? ceiling_m_ : top_m_;
        if (roof_ != nullptr && e_.run_leaves_sideways) {
            high_m = std::min(roof_m(b.at_m), e_.high_m);
        }
        rect(b.at_m - half_m, b.at_m + half_m, 0.0, high_m, wall_color);
        edges({b.at_m - half_m, 0.0}, {b.at_m - half_m, high_m}, b.stated);
        edges({b.at_m + half_m, 0.0}, {b.at_m + half_m, high_m}, b.stated);
    }

    void edges(Spot from, Spot to, bool stated) {
        paint_.picture.line(paint_.frame.at(from),
                            paint_.frame.at(to),
                            {.color = "#6f6a60", .width = 0.8, .dashes = stated ? "" : "5 3"});
    }

    void floor() {
        rect(e_.left_m, e_.right_m, -0.5 * thickness_m, 0.0, "#d8d3c7");
        paint_.picture.line(paint_.frame.at({e_.left_m, 0.0}),
                            paint_.frame.at({e_.right_m, 0.0}),
                            {.color = ink, .width = 1.4});
    }

    void roof() {
        if (roof_ == nullptr) {
            return;
        }
        constexpr double eaves_m = 0.3;
        std::vector<Point> points;
        for (const Spot& spot : roof_line(eaves_m)) {
            // Cut off at the top of the drawing it has no line there.
            const bool cut = spot.y_m >= e_.high_m && !points.empty()
                             && points.back().y <= paint_.frame.at(spot).y + 0.01;
            if (cut) {
                points.push_back({std::numeric_limits<double>::quiet_NaN(), 0.0});
            }
            points.push_back(paint_.frame.at(spot));
        }
        const bool known = e_.roof->pitch_known;
        paint_.picture.path(points, {.color = "#8b857a", .width = 6.0});
        paint_.picture.path(points,
                            {.color = "#f7f5f0", .width = 3.5, .dashes = known ? "" : "9 5"});
        for (std::size_t i = 1; i < points.size(); ++i) {
            if (!std::isfinite(points[i].x) || !std::isfinite(points[i - 1].x)) {
                continue;
            }
            paint_.sheet.take_line(points[i - 1], points[i], 4.0);
        }
    }

    void chases() {
        for (const DrawnPart& part : e_.parts) {
            if (part.part->zone.value != Zone::chase || !part.has_length()) {
                continue;
            }
            const double room_m = 0.5 * part.outside_m + chase_room_m;
            const bool level = part.part->level();
            const Spot from = part.axis.front();
            const Spot to = part.axis.back();
            const Spot low{std::min(from.x_m, to.x_m) - (level ? 0.0 : room_m),
                           std::min(from.y_m, to.y_m) - (level ? room_m : 0.0)};
            const Spot high{std::max(from.x_m, to.x_m) + (level ? 0.0 : room_m),
                            std::max(from.y_m, to.y_m) + (level ? room_m : 0.0)};
            rect(low.x_m, high.x_m, low.y_m, high.y_m, chase_air);
            if (level) {
                edges({low.x_m, low.y_m}, {high.x_m, low.y_m}, false);
                edges({low.x_m, high.y_m}, high, false);
            } else {
                edges(low, {low.x_m, high.y_m}, false);
                edges({high.x_m, low.y_m}, high, false);
            }
        }
    }

    const Elevation& e_;
    Painting& paint_;
    const Barrier* roof_{};
    double left_m_{};
    double right_m_{};
    double top_m_{};
    double ceiling_m_{};
    double wall_axis_m_{};
};

} // namespace

void paint_house(const Elevation& elevation, Painting& painting) {
    HousePainter{elevation, painting}.paint();
}

void paint_heater(const Elevation& elevation, Painting& painting) {
    const DrawnHeater& h = elevation.heater;
    const Frame& frame = painting.frame;
    chart::Picture& picture = painting.picture;
    const chart::Stroke outline{.color = ink, .width = 1.4};
    const auto corner = [&](double x_m, double y_m) { return frame.at({x_m, y_m}); };
    if (elevation.floor_protection_left_m || elevation.floor_protection_right_m) {
        const double left_m = elevation.floor_protection_left_m.value_or(h.left_m);
        const double right_m = elevation.floor_protection_right_m.value_or(h.right_m);
        picture.line(corner(left_m, 0.0), corner(right_m, 0.0), {.color = "#5b5b5b", .width = 4.5});
    }
    picture.shape({corner(h.left_m, h.foot_m),
                   corner(h.left_m, h.top_m),
                   corner(h.right_m, h.top_m),
                   corner(h.right_m, h.foot_m)},
                  h.masonry ? color_of(Stuff::masonry) : body,
                  outline);
    if (h.masonry) {
        painting.signs.insert(Sign::masonry);
    }
    if (h.foot_m > 0.0) {
        constexpr double in_m = 0.06;
        picture.line(corner(h.left_m + in_m, h.foot_m), corner(h.left_m + in_m, 0.0), outline);
        picture.line(corner(h.right_m - in_m, h.foot_m), corner(h.right_m - in_m, 0.0), outline);
    }
    if (h.door_foot) {
        const double wide_m = h.right_m - h.left_m;
        const double deep_m = h.open_front ? 0.65 * wide_m : std::min(0.08, 0.3 * wide_m);
        const Spot foot = *h.door_foot;
        if (h.open_front && !h.outlet_at_back && !elevation.parts.empty()) {
            const double half_m = 0.5 * elevation.parts.front().bore_m;
            const double top_m = foot.y_m + h.door_height_m;
            picture.shape({frame.at({foot.x_m + 0.3 * deep_m, top_m}),
                           frame.at({elevation.outlet.x_m - half_m, h.top_m}),
                           frame.at({elevation.outlet.x_m + half_m, h.top_m}),
                           frame.at({foot.x_m + deep_m, top_m})},
                          opening,
                          {.color = ink, .width = 0.8});
        }
        picture.shape({frame.at(foot),
                       frame.at({foot.x_m, foot.y_m + h.door_height_m}),
                       frame.at({foot.x_m + deep_m, foot.y_m + h.door_height_m}),
                       frame.at({foot.x_m + deep_m, foot.y_m})},
                      opening,
                      {.color = ink, .width = 1.0});
    }
    const Point top_left = corner(h.left_m, h.top_m);
    painting.sheet.take({top_left.x - 2.0,
                         top_left.y - 2.0,
                         frame.px(h.right_m - h.left_m) + 4.0,
                         frame.px(h.top_m) + 4.0});
}

void paint_combustibles(const Elevation& elevation, Painting& painting) {
    constexpr double deep_px = 7.0;
    for (const Combustible& thing : elevation.combustibles) {
        const Point low = painting.frame.at(thing.from);
        const Point high = painting.frame.at(thing.to);
        const Point pipe = painting.frame.at(thing.pipe);
        const bool level = thing.from.x_m < thing.to.x_m || thing.from.x_m > thing.to.x_m;
        const bool to_left = !level && pipe.x > low.x;
        const Point corner{to_left ? low.x - deep_px : std::min(low.x, high.x),
                           level ? high.y - deep_px : std::min(low.y, high.y)};
        const double width = level ? std::abs(high.x - low.x) : deep_px;
        const double height = level ? deep_px : std::abs(high.y - low.y);
        painting.picture.hatch(corner, width, height, 5.0, {.color = burns, .width = 1.0});
        painting.picture.line(low, high, {.color = burns, .width = 1.8});
        const Point face = level ? Point{pipe.x, low.y} : Point{low.x, pipe.y};
        painting.picture.line(pipe, face, {.color = burns, .width = 0.9, .dashes = "2 2"});
        if (thing.shield) {
            constexpr double before_px = 4.0;
            const Point shift = level     ? Point{0.0, before_px}
                                : to_left ? Point{before_px, 0.0}
                                          : Point{-before_px, 0.0};
            painting.picture.line({low.x + shift.x, low.y + shift.y},
                                  {high.x + shift.x, high.y + shift.y},
                                  {.color = ink, .width = 1.5});
            painting.signs.insert(Sign::shield);
        }
        painting.sheet.take({corner.x, corner.y, width, height});
        painting.sheet.take_line(pipe, face, 1.0);
        painting.signs.insert(Sign::combustible);
    }
}

} // namespace fluewright::drawing
