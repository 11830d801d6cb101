#include "fluewright/core/constants.hpp"
#include "roof_geometry.hpp"

#include <array>

/// Where the chimney ends: Australia, New Zealand and Germany.
namespace fluewright::checking {
namespace {

Verdict chimney_top(Verdict v) {
    v.place = "the chimney top";
    return v;
}

/// A place on the roof, or why there is none to judge.
struct Placed {
    std::optional<Verdict> instead;
    RoofPlace place;
};

Placed placed(const View& view, const catalog::Rule& rule) {
    const Roof& roof = view.written.site.roof;
    if (!leaves_house(view)) {
        return {not_here(stays_inside), {}};
    }
    if (auto missing = missing_of_roof(roof); !missing.empty()) {
        return {unknown(std::move(missing), "the chimney top: " + std::string{rule.says}), {}};
    }
    return {std::nullopt, place_of(roof)};
}

Verdict near_ridge_au(const View& view, const catalog::Rule& rule) {
    const auto [instead, place] = placed(view, rule);
    if (instead) {
        return *instead;
    }
    if (place.flat()) {
        return not_here("the roof is flat");
    }
    if (!view.reaches(rule.figure, place.to_ridge_m, Kind::length)) {
        return not_here("the ridge is farther off");
    }
    return chimney_top(at_least(
        view, place.above_ridge_m(), rule.second, Kind::length, "chimney top above the ridge"));
}

Verdict away_au(const View& view, const catalog::Rule& rule) {
    const auto [instead, place] = placed(view, rule);
    if (instead) {
        return *instead;
    }
    if (!place.flat() && view.reaches(rule.figure, place.to_ridge_m, Kind::length)) {
        return not_here("the chimney is near the ridge");
    }
    Fold fold{""};
    fold.add(chimney_top(
        at_least(view, place.top_m, rule.second, Kind::length, "chimney top above the roof")));
    if (place.above_ridge_m() < 0.0) {
        fold.add(chimney_top(at_least(view,
                                      place.level_to_slope_m(),
                                      rule.figure,
                                      Kind::length,
                                      "level from the chimney top to the roof")));
    }
    each_near(
        view, fold, NearThingKind::building, [&](const NearThing& thing, const std::string& key) {
            if (!thing.below_top_m) {
                return unknown({key + "/below_top"});
            }
            if (*thing.below_top_m > 0.0) {
                return not_here("it is lower than the chimney top");
            }
            return chimney_top(given_at_least(view,
                                              thing.distance_m,
                                              rule.figure,
                                              Kind::length,
                                              "level from the chimney top to a building",
                                              key + "/distance"));
        });
    return fold.result();
}

constexpr double steep_rad = 20.0 * constants::pi / 180.0;

/// Whether the year puts the chimney under a version of the ordinance; a verdict where not.
std::optional<Verdict> not_in_years(const View& view, double from, double to) {
    const Given& year = view.written.site.year_fitted;
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    if (!year) {
        return unknown({"/site/year_fitted"});
    }
    if (*year < from || *year > to) {
        return not_here("fitted in other years");
    }
    return std::nullopt;
}

/// Above the ridge, or so far from the roof. A flat roof has no ridge.
struct OffTheRoof {
    double off_m;    ///< as the chimney top stands
    double wanted_m; ///< as it would have to
    std::string_view words;
};

Verdict over_ridge_or_off(const View& view,
                          const RoofPlace& place,
                          double over_ridge_m,
                          const OffTheRoof& off) {
    const bool over_ridge =
        !place.flat() && view.reaches(place.above_ridge_m(), over_ridge_m, Kind::length);
    const bool off_it = view.reaches(off.off_m, off.wanted_m, Kind::length);
    const bool by_ridge = over_ridge || (!off_it && !place.flat() && place.above_ridge_m() >= 0.0);
    return chimney_top(
        by_ridge ? at_least(
            view, place.above_ridge_m(), over_ridge_m, Kind::length, "chimney top above the ridge")
                 : at_least(view, off.off_m, off.wanted_m, Kind::length, std::string{off.words}));
}

constexpr std::string_view from_roof = "chimney top from the roof";

Verdict top_2010(const View& view, const catalog::Rule& rule) {
    constexpr double square_m = 1.0;
    constexpr double level_m = 2.3;
    if (auto v = not_in_years(view, 2010.0, 2021.0)) {
        return *v;
    }
    const auto [instead, place] = placed(view, rule);
    if (instead) {
        return *instead;
    }
    const bool gentle = place.pitch_rad <= steep_rad + 1e-6;
    return over_ridge_or_off(view,
                             place,
                             rule.figure,
                             gentle ? OffTheRoof{place.square_to_slope_m(), square_m, from_roof}
                                    : OffTheRoof{place.level_to_roof_m(),
                                                 level_m,
                                                 "level from the chimney top to the roof"});
}

Verdict top_before_2010(const View& view, const catalog::Rule& rule) {
    constexpr double first_year = 0.0;
    if (auto v = not_in_years(view, first_year, 2009.0)) {
        return *v;
    }
    const auto [instead, place] = placed(view, rule);
    if (instead) {
        return *instead;
    }
    return over_ridge_or_off(
        view, place, rule.figure, {place.square_to_slope_m(), rule.second, from_roof});
}

/// The roof counts as no flatter than 20 degrees, so that even a flat one has a ridge: its middle.
/// Near the ridge is what stands farther above it than away from it.
Verdict top_2022(const View& view, const catalog::Rule& rule) {
    constexpr double for_ever = 1e4;
    if (auto v = not_in_years(view, 2022.0, for_ever)) {
        return *v;
    }
    auto [instead, place] = placed(view, rule);
    if (instead) {
        return *instead;
    }
    if (!view.written.site.roof.distance_to_ridge_m) {
        return unknown({"/site/roof/distance_to_ridge"},
                       "the chimney top: " + std::string{rule.says});
    }
    place.pitch_rad = std::max(place.pitch_rad, steep_rad);
    const bool near =
        place.above_ridge_m() > place.to_ridge_m
        && !view.same_as_printed(place.above_ridge_m(), place.to_ridge_m, Kind::length);
    if (near || !view.reaches(place.above_ridge_m(), rule.figure, Kind::length)) {
        return chimney_top(at_least(
            view, place.above_ridge_m(), rule.figure, Kind::length, "chimney top above the ridge"));
    }
    Verdict v =
        decided(false,
                "chimney top above the ridge " + view.show(place.above_ridge_m(), Kind::length)
                    + ", more than the " + view.show(place.to_ridge_m, Kind::length)
                    + " to the ridge is required");
    v.kind = Kind::length;
    v.figure = place.above_ridge_m();
    v.limit = place.to_ridge_m;
    return chimney_top(std::move(v));
}

Verdict windows_de(const View& view, const catalog::Rule& rule) {
    constexpr double step_kw = 50.0;
    constexpr double per_step_m = 2.0;
    constexpr double farthest_m = 40.0;
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    const double steps = std::max(0.0, std::ceil((view.output_kw() - step_kw) / step_kw - 1e-9));
    const double reach_m = std::min(farthest_m, rule.figure + per_step_m * steps);
    Fold fold{"the file has no opening near the chimney top"};
    each_near(
        view, fold, NearThingKind::opening, [&](const NearThing& thing, const std::string& key) {
            return below_if_near(view, thing, key, reach_m, rule.second);
        });
    return fold.result();
}

Verdict close_things_de(const View& view, const catalog::Rule& rule) {
    Fold fold{"the file has nothing near the chimney top"};
    for (const auto what : {NearThingKind::opening, NearThingKind::building}) {
        each_near(view, fold, what, [&](const NearThing& thing, const std::string& key) {
            return below_if_near(view, thing, key, rule.figure, rule.second);
        });
    }
    return fold.result();
}

constexpr auto chimney_top_abroad_entries = std::to_array<Entry>({
    {"au-top-near-ridge", near_ridge_au},
    {"au-top-away", away_au},
    {"de-top-2010", top_2010},
    {"de-top-2022", top_2022},
    {"de-top-before-2010", top_before_2010},
    {"de-top-windows", windows_de},
    {"de-top-openings-building", close_things_de},
});

} // namespace

std::span<const Entry> chimney_top_abroad_checks() {
    return chimney_top_abroad_entries;
}

} // namespace fluewright::checking
