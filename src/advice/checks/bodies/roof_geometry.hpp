#pragma once

#include "rule_check.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

/// The chimney top against a plain pitched roof. Heights count from the highest place where the
/// chimney leaves the roof; the slope rises from there to the ridge.
namespace fluewright::checking {

struct RoofPlace {
    double top_m{}; ///< height of the chimney top
    double pitch_rad{};
    double to_ridge_m{}; ///< level

    /// Without a slope there is no ridge.
    [[nodiscard]] bool flat() const { return pitch_rad <= 0.0; }

    [[nodiscard]] double ridge_m() const { return to_ridge_m * std::tan(pitch_rad); }

    [[nodiscard]] double above_ridge_m() const { return top_m - ridge_m(); }

    /// From the chimney top level to the slope; without end where the chimney top looks over the
    /// ridge.
    [[nodiscard]] double level_to_slope_m() const {
        return above_ridge_m() >= 0.0 ? std::numeric_limits<double>::infinity()
                                      : top_m / std::tan(pitch_rad);
    }

    /// The same, to the ridge at the least: a chimney top that looks over it is no nearer to the
    /// roof than one level with it.
    [[nodiscard]] double level_to_roof_m() const {
        return above_ridge_m() >= 0.0 ? to_ridge_m : level_to_slope_m();
    }

    /// At right angles to the slope.
    [[nodiscard]] double square_to_slope_m() const { return top_m * std::cos(pitch_rad); }
};

/// The keys a roof rule needs; empty where the file has them all.
[[nodiscard]] inline std::vector<std::string> missing_of_roof(const Roof& roof) {
    std::vector<std::string> missing;
    if (!roof.top_above_roof_m) {
        missing.emplace_back("/site/roof/top_above_roof");
    }
    if (!roof.pitch_rad) {
        missing.emplace_back("/site/roof/pitch");
    }
    // Without a slope it does not matter where the middle of the roof is.
    if (!roof.distance_to_ridge_m && roof.pitch_rad.value_or(1.0) > 0.0) {
        missing.emplace_back("/site/roof/distance_to_ridge");
    }
    return missing;
}

[[nodiscard]] inline RoofPlace place_of(const Roof& roof) {
    return {roof.top_above_roof_m.value_or(0.0),
            roof.pitch_rad.value_or(0.0),
            roof.distance_to_ridge_m.value_or(0.0)};
}

/// Whether any part of the run stands outdoors: else no roof rule applies.
[[nodiscard]] inline bool leaves_house(const View& view) {
    return std::any_of(view.pieces.begin(), view.pieces.end(), [](const Piece& piece) {
        return piece.section->zone == Zone::outdoors;
    });
}

constexpr std::string_view stays_inside = "no part of the run is outdoors";

/// Holds `test(thing)` for each thing near the chimney top; keys it lacks are gathered by the
/// caller's test through `unknown`.
template <class Test>
void each_near(const View& view, Fold& fold, NearThingKind what, Test&& test) {
    const auto& list = view.written.site.roof.near;
    for (std::size_t i = 0; i < list.size(); ++i) {
        const std::string key = "/site/roof/near/" + std::to_string(i);
        if (!list[i].what) {
            fold.add(unknown({key + "/what"}));
        } else if (*list[i].what == what) {
            fold.add(test(list[i], key));
        }
    }
}

/// A thing within `reach_m` must lie `below_m` under the chimney top.
[[nodiscard]] inline Verdict below_if_near(const View& view,
                                           const NearThing& thing,
                                           const std::string& key,
                                           double reach_m,
                                           double below_m) {
    if (!thing.distance_m) {
        return unknown({key + "/distance"},
                       "chimney top " + view.show(below_m, Kind::length) + " above the "
                           + std::string{name(*thing.what)} + " if it is within "
                           + view.show(reach_m, Kind::length));
    }
    if (!view.reaches(reach_m, *thing.distance_m, Kind::length)) {
        return not_here("it is farther off");
    }
    if (!thing.below_top_m) {
        return open_at_least(view,
                             below_m,
                             Kind::length,
                             "chimney top above the " + std::string{name(*thing.what)},
                             key + "/below_top");
    }
    Verdict v = at_least(view,
                         *thing.below_top_m,
                         below_m,
                         Kind::length,
                         "chimney top above the " + std::string{name(*thing.what)});
    v.place = "the chimney top";
    return v;
}

} // namespace fluewright::checking
