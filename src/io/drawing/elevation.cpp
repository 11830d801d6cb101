#include "elevation.hpp"

#include "fluewright/model/march/wall_heat.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fluewright::drawing {
namespace {

// Of a heater whose file does not tell them: a sign that stands for it. Judgement.
constexpr double usual_depth_m = 0.5;
constexpr double usual_masonry_depth_m = 0.9;
constexpr double body_behind_firebox_m = 0.15;
constexpr double body_over_back_outlet_m = 0.2;

constexpr double right_angle_rad = 0.5 * std::numbers::pi;

/// Clear width from the side: the depth of what has one.
double seen_bore_m(const FlueBore& bore) {
    return bore.round() ? bore.diameter_m : bore.depth_m;
}

double direction_of(const RunPart& part) {
    return std::atan2(part.rise_m, part.plan_m);
}

/// The way the gas leaves a part without length: that of the next straight, else of the one before.
double direction_behind(const Run& run, const RunPart& part) {
    if (const RunPart* next = run.straight_behind(part)) {
        return direction_of(*next);
    }
    const RunPart* before = run.straight_before(part);
    return before != nullptr ? direction_of(*before) : right_angle_rad;
}

DrawnPart drawn(const Case& resolved, const RunPart& part, Spot from) {
    DrawnPart made{.part = &part, .section = part.section, .axis = {from}, .at = from};
    const Section& section = resolved.sections[part.section];
    const double deposit_m = 2.0 * part.written.deposit_m.value_or(0.0);
    made.bore_m = std::max(0.0, seen_bore_m(part.bore) - deposit_m);
    made.outside_m = outside_diameter_m(resolved.walls[section.wall], made.bore_m);
    made.direction_rad =
        part.has_length() ? direction_of(part) : direction_behind(resolved.run, part);
    if (part.has_length()) {
        made.axis.push_back({from.x_m + part.plan_m, from.y_m + part.rise_m});
        made.at = {0.5 * (from.x_m + made.axis.back().x_m),
                   0.5 * (from.y_m + made.axis.back().y_m)};
    }
    return made;
}

/// Whether the run leaves the heater level, so that its outlet is at the back.
bool leaves_at_back(const Run& run) {
    const auto first = std::find_if(
        run.parts.begin(), run.parts.end(), [](const RunPart& part) { return part.has_length(); });
    return first != run.parts.end() && first->level();
}

DrawnHeater heater_of(const Installation& written, const Case& resolved) {
    const ApplianceCase& a = resolved.appliance;
    const HeaterKind kind = kind_of(a);
    DrawnHeater made;
    made.masonry = kind == HeaterKind::open_fire || kind == HeaterKind::masonry_heater;
    made.open_front = has_open_front(a);
    const Given& firebox_m = written.appliance.firebox.depth_m;
    made.depth_known = firebox_m.has_value();
    const double depth_m = firebox_m      ? *firebox_m + body_behind_firebox_m
                           : made.masonry ? usual_masonry_depth_m
                                          : usual_depth_m;
    made.outlet_at_back = leaves_at_back(resolved.run);
    made.right_m = made.outlet_at_back ? 0.0 : 0.5 * depth_m;
    made.left_m = made.right_m - depth_m;
    made.foot_m = std::clamp(written.appliance.legs_m.value_or(0.0), 0.0, 0.8 * a.outlet_height_m);
    made.top_m = a.outlet_height_m + (made.outlet_at_back ? body_over_back_outlet_m : 0.0);
    if (a.has_door) {
        const double door_top_m = a.outlet_height_m - a.door.top_below_outlet_m;
        made.door_height_m = a.door.height_m;
        made.door_foot = Spot{made.left_m, door_top_m - a.door.height_m};
        made.top_m = std::max(made.top_m, door_top_m);
    }
    return made;
}

void include(Elevation& made, double x_m, double y_m) {
    made.left_m = std::min(made.left_m, x_m);
    made.right_m = std::max(made.right_m, x_m);
    made.bottom_m = std::min(made.bottom_m, y_m);
    made.high_m = std::max(made.high_m, y_m);
}

void find_extent(const Installation& written, Elevation& made) {
    constexpr double around_m = 0.35;
    include(made, made.heater.left_m - around_m, 0.0);
    include(made, made.heater.right_m + around_m, made.heater.top_m);
    for (const DrawnPart& part : made.parts) {
        for (const Spot& spot : part.axis) {
            include(made, spot.x_m - 0.5 * part.outside_m - around_m, spot.y_m);
            include(made, spot.x_m + 0.5 * part.outside_m + around_m, spot.y_m);
        }
    }
    const double cap_m = made.parts.empty() ? 0.0 : made.parts.back().outside_m;
    include(made, made.top.x_m, made.top.y_m + cap_m);
    for (const Combustible& thing : made.combustibles) {
        include(made, thing.from.x_m - 0.1, thing.from.y_m);
        include(made, thing.to.x_m + 0.1, thing.to.y_m);
    }
    for (const auto& end_m : {made.floor_protection_left_m, made.floor_protection_right_m}) {
        include(made, end_m.value_or(0.0), 0.0);
    }
    // The ridge, where that does not make the run small.
    if (made.roof && made.roof->ridge_m && made.roof->pitch_known) {
        const Barrier* roof = made.first(BarrierKind::roof);
        const double ridge_y_m =
            roof->at_m + *made.roof->ridge_m * std::tan(made.roof->pitch_rad) + around_m;
        constexpr double most_share = 0.5;
        const double height_m = made.high_m - made.bottom_m;
        if (ridge_y_m - made.high_m < most_share * height_m
            && *made.roof->ridge_m
                   < std::max(height_m, written.appliance.outlet.height_m.value_or(0.0))) {
            include(made, roof->axis_m - *made.roof->ridge_m - around_m, ridge_y_m);
        }
    }
}

} // namespace

Stuff stuff_of(const WallLayer& layer) {
    constexpr double metal_least_w_mk = 5.0;
    if (layer.air_gap) {
        return Stuff::air;
    }
    return layer.conductivity_w_mk < insulation_conductivity_most_w_mk ? Stuff::insulation
           : layer.conductivity_w_mk > metal_least_w_mk                ? Stuff::sheet
                                                                       : Stuff::masonry;
}

bool is_masonry(const Case& resolved, const RunPart& part) {
    const WallBuild& wall = resolved.walls[part.wall];
    return std::any_of(wall.layers.begin(),
                       wall.layers.begin() + static_cast<std::ptrdiff_t>(wall.layer_count),
                       [](const WallLayer& layer) { return stuff_of(layer) == Stuff::masonry; });
}

const Barrier* Elevation::first(BarrierKind kind) const {
    const auto found = std::find_if(
        barriers.begin(), barriers.end(), [kind](const Barrier& b) { return b.kind == kind; });
    return found == barriers.end() ? nullptr : &*found;
}

Elevation elevation_of(const Installation& written, const Case& resolved) {
    Elevation made;
    made.outlet = {0.0, resolved.appliance.outlet_height_m};
    made.heater = heater_of(written, resolved);
    Spot now = made.outlet;
    for (const RunPart& part : resolved.run.parts) {
        made.parts.push_back(drawn(resolved, part, now));
        now = made.parts.back().axis.back();
    }
    made.top = now;
    add_building(written, resolved, made);
    add_combustibles(written, made);
    find_extent(written, made);
    return made;
}

} // namespace fluewright::drawing
