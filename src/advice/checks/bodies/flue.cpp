#include "fluewright/core/constants.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// Size and height of the flue of a closed heater.
namespace fluewright::checking {
namespace {

constexpr std::string_view no_chimney = "there is no chimney after the pipe";

/// Smallest and largest part of a list by area; both null when it is empty.
std::pair<const Piece*, const Piece*> ends_by_area(const std::vector<const Piece*>& list) {
    const Piece* least = nullptr;
    const Piece* most = nullptr;
    for (const Piece* piece : list) {
        if (piece->has_length()) {
            least = least == nullptr || piece->section->area_m2 < least->section->area_m2 ? piece
                                                                                          : least;
            most =
                most == nullptr || piece->section->area_m2 > most->section->area_m2 ? piece : most;
        }
    }
    return {least, most};
}

Verdict not_below_connector(const View& view, const catalog::Rule& rule) {
    const Piece* least = ends_by_area(view.chimney()).first;
    const Piece* pipe = ends_by_area(view.connector()).second;
    if (least == nullptr) {
        return not_here(no_chimney);
    }
    if (pipe == nullptr) {
        return not_here("there is no pipe before the chimney");
    }
    const double share = least->section->area_m2 / pipe->section->area_m2;
    Verdict v = at_least(
        view, share, 0.98 * rule.figure, Kind::fraction, "flue area over that of the pipe");
    v.limit = rule.figure;
    return at(view, *least, std::move(v));
}

bool walls_outdoors(const View& view) {
    constexpr double above_roof_m = 1.2; // what stands above the roof anyhow
    double outdoors_m = 0.0;
    for (const Piece* piece : view.chimney()) {
        outdoors_m += piece->section->zone == Zone::outdoors ? piece->section->length_m : 0.0;
    }
    const double roof_m = view.written.site.roof.mouth_above_roof_m.value_or(above_roof_m);
    return outdoors_m > std::max(roof_m, above_roof_m) + 0.5;
}

Verdict at_most_times(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel() || view.fireplace()) {
        return not_here("for closed solid-fuel heaters");
    }
    const Piece* most = ends_by_area(view.chimney()).second;
    if (most == nullptr) {
        return not_here(no_chimney);
    }
    return at(view,
              *most,
              at_most(view,
                      most->section->area_m2 / view.outlet_area_m2(),
                      rule.figure,
                      Kind::number,
                      "flue area over that of the collar:"));
}

Verdict at_most_times_outside(const View& view, const catalog::Rule& rule) {
    if (!walls_outdoors(view)) {
        return not_here("the chimney has no walls outdoors below the roof");
    }
    return at_most_times(view, rule);
}

Verdict absolute_least(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    const Piece* least = ends_by_area(view.chimney()).first;
    if (least == nullptr) {
        return not_here(no_chimney);
    }
    const bool room_heater = view.heater().type == ApplianceType::stove;
    // 6 in pipe has 28 in2, which the same rule lets a small special stove use.
    return at(view,
              *least,
              at_least(view,
                       least->section->area_m2,
                       room_heater ? rule.figure : rule.second,
                       Kind::area,
                       "flue area"));
}

Verdict rise_gas(const View& view, const catalog::Rule& rule) {
    if (view.fireplace()) {
        return not_here("an open fireplace has no collar");
    }
    return at_least(view, view.rise_m(), rule.figure, Kind::length, "mouth above the collar");
}

Verdict rise_solid(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    return at_least(view, view.rise_m(), rule.figure, Kind::length, "mouth above the outlet");
}

Verdict height_over_floor(const View& view, const catalog::Rule& rule) {
    return at_least(view,
                    view.rise_m() + view.heater().outlet_height_m,
                    rule.figure,
                    Kind::length,
                    "mouth above the floor");
}

Verdict size_uk(const View& view, const catalog::Rule& /*rule*/) {
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    const double output_w = view.heater().high.heat_output_w;
    const Appliance& a = view.written.appliance;
    if (!view.fireplace() && output_w > 50000.0) {
        return not_here("for heaters to 50 kW");
    }
    const Piece* least = nullptr;
    for (const Piece& piece : view.pieces) {
        const bool smaller = least == nullptr || piece.section->area_m2 < least->section->area_m2;
        least = piece.has_length() && smaller ? &piece : least;
    }
    if (least == nullptr) {
        return not_here("the run has no pipe");
    }
    // Without a word about exemption only a flue that suits every fuel can be called met.
    const bool small = output_w <= 20000.0;
    const bool exempt = a.smoke_exempt.value_or(false);
    double limit_m = 0.0;
    const bool square = least->section->rectangular;
    for (const catalog::FlueSizeUk& row : catalog::flue_sizes_uk()) {
        const bool fits = view.fireplace()  ? row.id == "open fire"
                          : exempt && small ? row.id == "exempt"
                                            : row.id.starts_with("closed") && output_w > row.over_w
                                                  && output_w <= row.to_w;
        limit_m = fits ? (square ? row.side_m : row.round_m) : limit_m;
    }
    const double across_m = least->section->diameter_m;
    const FlueBore& collar = view.resolved.run.collar.bore;
    const double outlet_m = collar.round() ? collar.diameter_m : 0.0;
    Verdict v = at_least(view, across_m, std::max(limit_m, outlet_m), Kind::length, "flue across");
    constexpr double exempt_m = 0.125;
    if (v.outcome == CheckOutcome::not_met && !a.smoke_exempt && small && !view.fireplace()
        && reaches(across_m, std::max(exempt_m, outlet_m), Kind::length)) {
        return unknown({"/appliance/smoke_exempt"});
    }
    return at(view, *least, std::move(v));
}

constexpr auto entries = std::to_array<Entry>({
    {"chimney-flue-not-below-connector", not_below_connector},
    {"ca-flue-area", not_below_connector},
    {"chimney-flue-max-3x", at_most_times},
    {"chimney-flue-max-2x-outside", at_most_times_outside},
    {"chimney-flue-absolute-min", absolute_least},
    {"chimney-min-height-gas", rise_gas},
    {"chimney-min-height", rise_solid},
    {"uk-flue-height", rise_solid},
    {"au-height", height_over_floor},
    {"uk-flue-size", size_uk},
});

} // namespace

std::span<const Entry> flue_checks() {
    return entries;
}

} // namespace fluewright::checking
