#include "advice/checks/same_trade_size.hpp"
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
            least =
                least == nullptr || piece->section->built_area_m2 < least->section->built_area_m2
                    ? piece
                    : least;
            most = most == nullptr || piece->section->built_area_m2 > most->section->built_area_m2
                       ? piece
                       : most;
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
    const double share = least->section->built_area_m2 / pipe->section->built_area_m2;
    Verdict v = at_least(
        view, share, 0.98 * rule.figure, Kind::fraction, "flue area over that of the pipe");
    v.limit = rule.figure;
    if (same_trade_size(least->section->built_area_m2, pipe->section->built_area_m2)) {
        v.outcome = CheckOutcome::met;
    }
    return at(view, *least, std::move(v));
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
                      most->section->built_area_m2 / view.outlet_area_m2(),
                      rule.figure,
                      Kind::number,
                      "flue area over that of the collar:"));
}

Verdict at_most_times_outside(const View& view, const catalog::Rule& rule) {
    if (!view.resolved.walls_outdoors) {
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
                       least->section->built_area_m2,
                       room_heater ? rule.figure : rule.second,
                       Kind::area,
                       "flue area"));
}

Verdict rise_gas(const View& view, const catalog::Rule& rule) {
    if (view.fireplace()) {
        return not_here("an open fireplace has no collar");
    }
    if (view.heater().pushed_by_fan) {
        return not_here("a fan pushes the gas through");
    }
    return at_least(view, view.rise_m(), rule.figure, Kind::length, "chimney top above the collar");
}

Verdict rise_solid(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    return at_least(view, view.rise_m(), rule.figure, Kind::length, "chimney top above the outlet");
}

Verdict height_over_floor(const View& view, const catalog::Rule& rule) {
    return at_least(view,
                    view.rise_m() + view.heater().outlet_height_m,
                    rule.figure,
                    Kind::length,
                    "chimney top above the floor");
}

/// A round flue by its diameter, another by its area and its short side; never below the outlet.
Verdict wide_enough_uk(const View& view, const Piece& piece, const catalog::FlueSizeUk& row) {
    const FlueBore& bore = piece.run_part->bore;
    const FlueBore& collar = view.resolved.run.collar.bore;
    const double outlet_m = collar.round() ? collar.diameter_m : 0.0;
    if (bore.round()) {
        return at_least(view,
                        piece.section->built_diameter_m,
                        std::max(row.round_m, outlet_m),
                        Kind::length,
                        "flue across");
    }
    const double short_m = std::min(bore.width_m, bore.depth_m);
    if (!view.reaches(short_m, row.side_m, Kind::length)) {
        return at_least(view, short_m, row.side_m, Kind::length, "short side of the flue");
    }
    const double round_m2 = 0.25 * constants::pi * row.round_m * row.round_m;
    return at_least(view,
                    piece.section->built_area_m2,
                    std::max(round_m2, view.outlet_area_m2()),
                    Kind::area,
                    "flue area");
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
        const bool smaller =
            least == nullptr || piece.section->built_area_m2 < least->section->built_area_m2;
        least = piece.has_length() && smaller ? &piece : least;
    }
    if (least == nullptr) {
        return not_here("the run has no pipe");
    }
    // Without a word about exemption only a flue that suits every fuel can be called met.
    const bool small = output_w <= 20000.0;
    const bool exempt = a.smoke_exempt.value_or(false);
    const catalog::FlueSizeUk* wanted = nullptr;
    const catalog::FlueSizeUk* if_exempt = nullptr;
    for (const catalog::FlueSizeUk& row : catalog::flue_sizes_uk()) {
        const bool fits = view.fireplace()  ? row.id == "open fire"
                          : exempt && small ? row.id == "exempt"
                                            : row.id.starts_with("closed") && output_w > row.over_w
                                                  && output_w <= row.to_w;
        wanted = fits ? &row : wanted;
        if_exempt = row.id == "exempt" ? &row : if_exempt;
    }
    if (wanted == nullptr) {
        return not_here("the table has no size for this heater");
    }
    Verdict v = wide_enough_uk(view, *least, *wanted);
    if (v.outcome == CheckOutcome::not_met && !a.smoke_exempt && small && !view.fireplace()
        && if_exempt != nullptr
        && wide_enough_uk(view, *least, *if_exempt).outcome == CheckOutcome::met) {
        return unknown({"/appliance/smoke_exempt"},
                       "flue at least " + view.show(wanted->round_m, Kind::length) + " across, or "
                           + view.show(if_exempt->round_m, Kind::length)
                           + " for a heater that is exempt");
    }
    return at(view, *least, std::move(v));
}

constexpr auto flue_entries = std::to_array<Entry>({
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
    return flue_entries;
}

} // namespace fluewright::checking
