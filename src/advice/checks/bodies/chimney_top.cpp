#include "fluewright/core/constants.hpp"
#include "roof_geometry.hpp"

#include <algorithm>
#include <array>

/// Where the chimney ends: North America and the United Kingdom.
namespace fluewright {

double top_height_needed_m(double pitch_rad,
                           double distance_to_ridge_m,
                           double above_roof_m,
                           double above_near_m,
                           double reach_m) {
    const double rise_m = std::min(distance_to_ridge_m, reach_m) * std::tan(pitch_rad);
    return std::max(above_roof_m, rise_m + above_near_m);
}

} // namespace fluewright

namespace fluewright::checking {
namespace {

Verdict chimney_top(Verdict v) {
    v.place = "the chimney top";
    return v;
}

/// Out of a wall and no farther is no chimney: wind blows down it, and sparks and gas go along the
/// wall.
Verdict ends_upright(const View& view, const catalog::Rule& /*rule*/) {
    if (!view.solid_fuel() || view.heater().pushed_by_fan) {
        return not_here("for solid fuel that no fan pushes");
    }
    const RunPart* straight = view.resolved.run.last_straight();
    if (straight == nullptr) {
        return not_here("the run has no pipe");
    }
    const auto last = std::find_if(view.pieces.begin(), view.pieces.end(), [&](const Piece& p) {
        return p.run_part == straight;
    });
    return at(view,
              *last,
              decided(!straight->level(),
                      straight->level() ? "the flue ends level, with no chimney upright behind it"
                                        : "the chimney goes up to its end"));
}

/// The height asked for: exactly where the roof is known, else in general.
std::string roof_asks(const View& view, const catalog::Rule& rule, double reach_m) {
    const Roof& roof = view.written.site.roof;
    const auto needed = [&](double to_ridge_m) {
        return view.show(
            top_height_needed_m(
                roof.pitch_rad.value_or(0.0), to_ridge_m, rule.figure, rule.second, reach_m),
            Kind::length);
    };
    std::string general = "chimney top above the roof at least "
                          + view.show(rule.figure, Kind::length) + ", and "
                          + view.show(rule.second, Kind::length) + " above all within "
                          + view.show(reach_m, Kind::length);
    if (!roof.pitch_rad) {
        return general;
    }
    return roof.distance_to_ridge_m
               ? "chimney top above the roof at least " + needed(*roof.distance_to_ridge_m)
               : general + ": " + needed(reach_m) + " at this pitch, or less near the ridge";
}

/// A vent that a fan pushes out of a wall.
bool ends_out_of_a_wall(const View& view) {
    const RunPart* last = view.resolved.run.last_straight();
    return view.heater().pushed_by_fan && last != nullptr && last->level();
}

constexpr std::string_view not_through_a_roof =
    "for chimneys through a roof; a listed vent ends as its maker says";

/// So much above the roof, and above everything within a reach: the roof itself and what is near.
Verdict over_roof_and_near(const View& view, const catalog::Rule& rule, double reach_m) {
    if (ends_out_of_a_wall(view)) {
        return not_here(not_through_a_roof);
    }
    if (!leaves_house(view)) {
        return not_here(stays_inside);
    }
    const Roof& roof = view.written.site.roof;
    Fold fold{""};
    if (const auto missing = missing_of_roof(roof); !missing.empty()) {
        const bool too_low = roof.top_above_roof_m
                             && !view.reaches(*roof.top_above_roof_m, rule.figure, Kind::length);
        fold.add(too_low ? chimney_top(at_least(view,
                                                *roof.top_above_roof_m,
                                                rule.figure,
                                                Kind::length,
                                                "chimney top above the roof"))
                         : unknown(missing, roof_asks(view, rule, reach_m)));
    } else {
        const RoofPlace place = place_of(roof);
        fold.add(chimney_top(
            at_least(view,
                     place.top_m,
                     top_height_needed_m(
                         place.pitch_rad, place.to_ridge_m, rule.figure, rule.second, reach_m),
                     Kind::length,
                     "chimney top above the roof")));
    }
    for (const auto what : {NearThingKind::building, NearThingKind::opening}) {
        each_near(view, fold, what, [&](const NearThing& thing, const std::string& key) {
            return below_if_near(view, thing, key, reach_m, rule.second);
        });
    }
    return fold.result();
}

/// A gas vent of double wall from where it leaves the room up to its cap.
bool ends_as_gas_vent(const View& view) {
    return view.heater().fuel_group == FuelGroup::gas && !view.pieces.empty()
           && std::all_of(view.pieces.begin(), view.pieces.end(), [](const Piece& piece) {
                  return !piece.in_chimney || piece.run_part->wall_kind == WallKind::double_wall;
              });
}

Verdict three_two_ten(const View& view, const catalog::Rule& rule) {
    if (ends_as_gas_vent(view)) {
        return not_here(not_through_a_roof);
    }
    constexpr double ten_feet_m = 3.048;
    return over_roof_and_near(view, rule, ten_feet_m);
}

/// Lower than any body lets a chimney end, where nothing more is told of the roof.
Verdict top_far_too_low(const View& view, const catalog::Rule& rule) {
    const Given& above_m = view.written.site.roof.top_above_roof_m;
    if (!view.solid_fuel() || ends_out_of_a_wall(view) || !above_m) {
        return not_here("for chimneys of solid fuel of which the file tells how far they stand "
                        "above the roof");
    }
    return chimney_top(
        at_least(view, *above_m, rule.figure, Kind::length, "chimney top above the roof"));
}

Verdict top_canada(const View& view, const catalog::Rule& rule) {
    constexpr double reach_m = 3.0;
    return over_roof_and_near(view, rule, reach_m);
}

Verdict medium_heat(const View& view, const catalog::Rule& rule) {
    constexpr double low_heat_k = 811.15; // 1000 degF
    double hottest_k = 0.0;
    for (const StateResult& state : view.states()) {
        if (state.kind == StateKind::high_fire) {
            hottest_k = std::max(hottest_k, state.gas_temperature_k);
        }
    }
    if (hottest_k <= low_heat_k) {
        return not_here("the gas is not that hot");
    }
    Fold fold{"the file has nothing near the chimney top"};
    each_near(
        view, fold, NearThingKind::building, [&](const NearThing& thing, const std::string& key) {
            return below_if_near(view, thing, key, rule.second, rule.figure);
        });
    return fold.result();
}

Verdict trees(const View& view, const catalog::Rule& rule) {
    Fold fold{"the file has no tree near the chimney top"};
    each_near(view, fold, NearThingKind::tree, [&](const NearThing& thing, const std::string& key) {
        return chimney_top(given_at_least(view,
                                          thing.distance_m,
                                          rule.figure,
                                          Kind::length,
                                          "branches from the chimney top",
                                          key + "/distance"));
    });
    return fold.result();
}

constexpr double flat_below_rad = 10.0 * constants::pi / 180.0;

bool burns(const Roof& roof) {
    return roof.covering == RoofCovering::thatch || roof.covering == RoofCovering::shingles;
}

/// What all rules for pitched roofs in the United Kingdom ask first.
std::optional<Verdict> not_pitched_uk(const View& view) {
    constexpr double ridge_m = 0.6;
    constexpr double level_m = 2.3;
    constexpr double roof_m = 1.0;
    const std::string asks = "chimney top " + view.show(ridge_m, Kind::length)
                             + " above the ridge where it stands at it, else "
                             + view.show(level_m, Kind::length) + " level from the roof and "
                             + view.show(roof_m, Kind::length) + " above it";
    const Roof& roof = view.written.site.roof;
    if (!leaves_house(view)) {
        return not_here(stays_inside);
    }
    if (const auto missing = missing_of_roof(roof); !missing.empty()) {
        return unknown(missing, asks);
    }
    if (*roof.pitch_rad < flat_below_rad - 1e-6) {
        return not_here("the roof is flatter than 10 degrees");
    }
    return std::nullopt;
}

Verdict ridge_uk(const View& view, const catalog::Rule& rule) {
    if (auto v = not_pitched_uk(view)) {
        return *v;
    }
    const RoofPlace place = place_of(view.written.site.roof);
    if (!view.reaches(rule.second, place.to_ridge_m, Kind::length)) {
        return not_here("the chimney is not at the ridge");
    }
    if (burns(view.written.site.roof)) {
        return not_here("see the rule for roofs that catch fire");
    }
    return chimney_top(at_least(
        view, place.above_ridge_m(), rule.figure, Kind::length, "chimney top above the ridge"));
}

Verdict top_slope_uk(const View& view, const catalog::Rule& rule) {
    constexpr double at_ridge_m = 0.6;
    if (auto v = not_pitched_uk(view)) {
        return *v;
    }
    const RoofPlace place = place_of(view.written.site.roof);
    if (view.reaches(at_ridge_m, place.to_ridge_m, Kind::length)) {
        return not_here("the chimney is at the ridge");
    }
    if (burns(view.written.site.roof)) {
        return not_here("see the rule for roofs that catch fire");
    }
    if (place.above_ridge_m() >= 0.0) { // in place of the height over the roof (from memory)
        return chimney_top(at_least(
            view, place.above_ridge_m(), 0.0, Kind::length, "chimney top above the ridge"));
    }
    if (!view.reaches(place.top_m, rule.second, Kind::length)) {
        return chimney_top(
            at_least(view, place.top_m, rule.second, Kind::length, "chimney top above the roof"));
    }
    return chimney_top(at_least(view,
                                place.level_to_slope_m(),
                                rule.figure,
                                Kind::length,
                                "level from the chimney top to the roof"));
}

Verdict thatch_uk(const View& view, const catalog::Rule& rule) {
    constexpr double level_m = 2.3;
    const Roof& roof = view.written.site.roof;
    if (!leaves_house(view)) {
        return not_here(stays_inside);
    }
    if (!roof.covering) {
        return unknown({"/site/roof/covering"},
                       "on thatch or shingles " + view.show(rule.figure, Kind::length)
                           + " above the roof and " + view.show(rule.second, Kind::length)
                           + " above the ridge");
    }
    if (!burns(roof)) {
        return not_here("the roof does not catch fire easily");
    }
    if (const auto missing = missing_of_roof(roof); !missing.empty()) {
        return unknown(missing,
                       "chimney top " + view.show(rule.figure, Kind::length)
                           + " above the roof and " + view.show(rule.second, Kind::length)
                           + " above the ridge");
    }
    const RoofPlace place = place_of(roof);
    if (!view.reaches(place.top_m, rule.figure, Kind::length)) {
        return chimney_top(
            at_least(view, place.top_m, rule.figure, Kind::length, "chimney top above the roof"));
    }
    if (place.above_ridge_m() < 0.0
        && view.reaches(place.level_to_slope_m(), level_m, Kind::length)) {
        return chimney_top(at_least(view,
                                    place.level_to_slope_m(),
                                    level_m,
                                    Kind::length,
                                    "level from the chimney top to the roof"));
    }
    return chimney_top(at_least(
        view, place.above_ridge_m(), rule.second, Kind::length, "chimney top above the ridge"));
}

Verdict flat_uk(const View& view, const catalog::Rule& rule) {
    const Roof& roof = view.written.site.roof;
    if (!leaves_house(view)) {
        return not_here(stays_inside);
    }
    if (!roof.pitch_rad) {
        return unknown({"/site/roof/pitch"},
                       "on a flat roof the chimney top " + view.show(rule.figure, Kind::length)
                           + " above it");
    }
    if (*roof.pitch_rad >= flat_below_rad - 1e-6) {
        return not_here("the roof is pitched");
    }
    return chimney_top(given_at_least(view,
                                      roof.top_above_roof_m,
                                      rule.figure,
                                      Kind::length,
                                      "chimney top above the roof",
                                      "/site/roof/top_above_roof"));
}

Verdict near_uk(const View& view, const catalog::Rule& rule) {
    constexpr double reach_m = 2.3;
    Fold fold{"the file has nothing near the chimney top"};
    each_near(
        view, fold, NearThingKind::opening, [&](const NearThing& thing, const std::string& key) {
            return below_if_near(view, thing, key, reach_m, rule.figure);
        });
    each_near(
        view, fold, NearThingKind::building, [&](const NearThing& thing, const std::string& key) {
            return below_if_near(view, thing, key, reach_m, rule.second);
        });
    return fold.result();
}

/// Heights of gas vents over the roof, to each pitch in rise over twelve.   [fuel-gas-code, from
/// memory]
constexpr auto gas_vent_heights_ft = std::to_array<std::pair<double, double>>({{6.0, 1.0},
                                                                               {7.0, 1.25},
                                                                               {8.0, 1.5},
                                                                               {9.0, 2.0},
                                                                               {10.0, 2.5},
                                                                               {11.0, 3.25},
                                                                               {12.0, 4.0},
                                                                               {14.0, 5.0},
                                                                               {16.0, 6.0},
                                                                               {18.0, 7.0},
                                                                               {20.0, 7.5},
                                                                               {21.0, 8.0}});

double gas_vent_height_m(double pitch_rad) {
    constexpr double rounding = 1e-3;
    const double rise_in_12 = 12.0 * std::tan(pitch_rad) - rounding;
    const auto* row = std::find_if(gas_vent_heights_ft.begin(),
                                   gas_vent_heights_ft.end(),
                                   [&](const auto& each) { return rise_in_12 <= each.first; });
    return (row == gas_vent_heights_ft.end() ? gas_vent_heights_ft.back() : *row).second
           * constants::foot_m;
}

Verdict gas_vent_top(const View& view, const catalog::Rule& rule) {
    if (view.heater().fuel_group != FuelGroup::gas) {
        return not_here("for gas only");
    }
    if (!leaves_house(view) || view.pieces.back().run_part->lie == Lie::level) {
        return not_here("no vent goes up through the roof");
    }
    const Roof& roof = view.written.site.roof;
    if (!roof.top_above_roof_m || !roof.pitch_rad) {
        return unknown({!roof.top_above_roof_m ? "/site/roof/top_above_roof" : "/site/roof/pitch"});
    }
    Fold fold{""};
    fold.add(chimney_top(at_least(view,
                                  *roof.top_above_roof_m,
                                  gas_vent_height_m(*roof.pitch_rad),
                                  Kind::length,
                                  "vent top above the roof at this pitch")));
    each_near(
        view, fold, NearThingKind::building, [&](const NearThing& thing, const std::string& key) {
            constexpr double over_wall_m = 2.0 * constants::foot_m;
            return below_if_near(view, thing, key, rule.second, over_wall_m);
        });
    return fold.result();
}

constexpr auto chimney_top_entries = std::to_array<Entry>({
    {"top-3-2-10", three_two_ten},
    {"ca-top", top_canada},
    {"trade-top-over-roof", top_far_too_low},
    {"top-medium-heat", medium_heat, Needs::solution},
    {"top-tree", trees},
    {"trade-ends-upright", ends_upright},
    {"uk-outlet-ridge", ridge_uk},
    {"gas-vent-top", gas_vent_top},
    {"uk-outlet-slope", top_slope_uk},
    {"uk-outlet-thatch", thatch_uk},
    {"uk-outlet-flat", flat_uk},
    {"uk-outlet-near", near_uk},
});

} // namespace

std::span<const Entry> chimney_top_checks() {
    return chimney_top_entries;
}

} // namespace fluewright::checking
