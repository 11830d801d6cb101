#include "heater_listing.hpp"
#include "rule_check.hpp"

#include <array>

/// Under the heater and beside its hearth.
namespace fluewright::checking {
namespace {

constexpr std::string_view floor_not_solid = "for solid fuel only";

Verdict heater(Verdict v) {
    v.place = "the heater";
    return v;
}

/// Floor pads: `front` before the door, `beside` at sides and back.
Verdict pad(const View& view, double front_m, double beside_m, bool back) {
    const FloorProtection& floor = view.written.appliance.floor_protection;
    Fold fold{""};
    const auto ask = [&](const Given& given, double limit_m, std::string_view key) {
        fold.add(heater(given_at_least(view,
                                       given,
                                       limit_m,
                                       Kind::length,
                                       "floor protected, " + std::string{key},
                                       "/appliance/floor_protection/" + std::string{key})));
    };
    ask(floor.front_m, front_m, "front");
    ask(floor.sides_m, beside_m, "sides");
    if (back) {
        ask(floor.back_m, beside_m, "back");
    }
    return fold.result();
}

/// Why no pad is asked for, or what is missing to know.
std::optional<Verdict> no_pad(const View& view) {
    if (!view.solid_fuel()) {
        return not_here(floor_not_solid);
    }
    if (view.fireplace()) {
        return not_here("an open fireplace is built in");
    }
    if (view.heater().fuel_group == FuelGroup::pellets && is_listed(view).value_or(false)) {
        return not_here("a listed pellet heater drops no embers; its instructions tell the pad");
    }
    const auto& floor = view.written.appliance.floor;
    if (!floor) {
        return unknown({"/appliance/floor"});
    }
    if (*floor == FloorKind::noncombustible) {
        return not_here("the floor is noncombustible");
    }
    return std::nullopt;
}

/// A heater of which the file does not say that it is listed is asked for the greater pad.
Verdict pad_all_round(const View& view, const catalog::Rule& rule) {
    if (is_listed(view).value_or(false)) {
        return not_here("a listed heater goes by its instructions");
    }
    const auto none = no_pad(view);
    return none ? *none : pad(view, rule.figure, rule.figure, true);
}

/// What instructions of listed heaters ask at the least; what those of this heater ask has no key
/// in the file.
Verdict pad_listed(const View& view, const catalog::Rule& rule) {
    if (!is_listed(view).value_or(false)) {
        return not_here("for listed heaters");
    }
    const auto none = no_pad(view);
    return none ? *none : pad(view, rule.figure, rule.second, true);
}

Verdict pad_unlisted(const View& view, const catalog::Rule& rule) {
    if (auto v = not_unlisted(view)) {
        return *v;
    }
    const auto none = no_pad(view);
    return none ? *none : pad(view, rule.second, rule.figure, true);
}

Verdict pad_ca(const View& view, const catalog::Rule& rule) {
    const auto none = no_pad(view);
    return none ? *none : pad(view, rule.figure, rule.second, true);
}

Verdict pad_au(const View& view, const catalog::Rule& rule) {
    const auto none = no_pad(view);
    return none ? *none : pad(view, rule.figure, rule.second, false);
}

Verdict hearth_uk(const View& view, const catalog::Rule& rule) {
    constexpr double open_fire_m = 0.3;
    if (!view.solid_fuel()) {
        return not_here(floor_not_solid);
    }
    return pad(view, view.fireplace() ? open_fire_m : rule.figure, rule.second, true);
}

Verdict pad_by_legs(const View& view, const catalog::Rule& rule) {
    if (auto v = not_unlisted(view)) {
        return *v;
    }
    if (auto none = no_pad(view)) {
        return *none;
    }
    const Appliance& a = view.written.appliance;
    if (!a.legs_m) {
        return unknown({"/appliance/legs"});
    }
    if (!view.reaches(*a.legs_m, rule.figure, Kind::length)) {
        return heater(decided(false,
                              "legs under " + view.show(rule.figure, Kind::length)
                                  + " require a noncombustible floor"));
    }
    const auto& build = a.floor_protection.build;
    if (!build) {
        return unknown({"/appliance/floor_protection/build"});
    }
    const bool high = *a.legs_m > rule.second;
    const bool met =
        *build == FloorBuild::hollow_masonry || (high && *build == FloorBuild::close_masonry);
    return heater(decided(met,
                          "on legs of " + view.show(*a.legs_m, Kind::length) + ", with "
                              + std::string{name(*build)} + " under it"));
}

Verdict under_heater(const View& view, const catalog::Rule& rule) {
    if (view.heater().type != ApplianceType::stove) {
        return not_here("for stoves only");
    }
    const Given& legs = view.written.appliance.legs_m;
    return heater(given_at_least(
        view, legs, rule.figure, Kind::length, "height under it", "/appliance/legs"));
}

/// A wall that does not burn, beside a heater: the nearer, the thicker.
Verdict hearth_wall_uk(const View& view, const catalog::Rule& rule) {
    constexpr double near_m = 0.05;
    constexpr double beside_m = 0.15;
    const HearthWall& wall = view.written.appliance.hearth_wall;
    if (!view.solid_fuel()) {
        return not_here(floor_not_solid);
    }
    if (!wall.distance_m && !wall.thickness_m) {
        return not_here("the file tells of no wall beside the hearth");
    }
    if (!wall.distance_m) {
        return unknown({"/appliance/hearth_wall/distance"},
                       "wall beside the hearth at least " + view.show(rule.figure, Kind::length)
                           + " thick to " + view.show(near_m, Kind::length) + " from the heater, "
                           + view.show(rule.second, Kind::length) + " to "
                           + view.show(beside_m, Kind::length));
    }
    const bool near = view.reaches(near_m, *wall.distance_m, Kind::length);
    if (!near && !view.reaches(beside_m, *wall.distance_m, Kind::length)) {
        return not_here("the wall is far enough from the heater");
    }
    return heater(given_at_least(view,
                                 wall.thickness_m,
                                 near ? rule.figure : rule.second,
                                 Kind::length,
                                 "thickness of the wall beside the hearth",
                                 "/appliance/hearth_wall/thickness"));
}

constexpr auto floor_entries = std::to_array<Entry>({
    {"floor-protection-extent", pad_all_round},
    {"floor-protection-listed", pad_listed},
    {"floor-protection-extent-umc", pad_unlisted},
    {"floor-protection-by-leg", pad_by_legs},
    {"ca-ember-pad", pad_ca},
    {"au-floor", pad_au},
    {"de-floor", pad_au},
    {"trade-floor", where_told<pad_au>},
    {"uk-hearth", hearth_uk},
    {"uk-wall-by-hearth", hearth_wall_uk},
    {"heater-floor-gap", under_heater},
});

} // namespace

std::span<const Entry> floor_checks() {
    return floor_entries;
}

} // namespace fluewright::checking
