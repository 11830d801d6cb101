#include "rule_check.hpp"

#include <algorithm>
#include <array>

/// Around and under the heater.
namespace fluewright::checking {
namespace {

constexpr std::string_view not_solid = "for solid fuel only";
constexpr std::string_view is_fireplace = "an open fireplace is built in";

Verdict heater(Verdict v) {
    v.place = "the heater";
    return v;
}

struct Side {
    std::string_view key;
    std::string_view words;
    Given Clearances::*member;
};

constexpr auto sides = std::to_array<Side>({
    {"side", "to the side", &Clearances::side_m},
    {"back", "behind", &Clearances::back_m},
    {"corner", "to the corner", &Clearances::corner_m},
    {"front", "before", &Clearances::front_m},
    {"above", "above", &Clearances::above_m},
});

std::string clearance_key(std::string_view side) {
    return "/appliance/clearances/" + std::string{side};
}

/// Whether the file says it is listed; listed distances say so too.
Flag listed(const View& view) {
    const Appliance& a = view.written.appliance;
    for (const Side& side : sides) {
        if (a.listed_clearances.*side.member) {
            return true;
        }
    }
    return a.listed;
}

double unlisted_m(const catalog::UnlistedClearance& row, std::string_view side) {
    return side == "above"   ? row.above_m
           : side == "front" ? row.front_m
           : side == "back"  ? row.back_m
                             : row.side_m;
}

/// Why the distances of heaters without a listing are not asked for; empty where they are.
std::optional<Verdict> no_unlisted(const View& view) {
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    if (view.fireplace()) {
        return not_here(is_fireplace);
    }
    const Flag is_listed = listed(view);
    if (!is_listed) {
        return unknown({"/appliance/listed"});
    }
    if (*is_listed) {
        return not_here("the heater is listed");
    }
    return std::nullopt;
}

Verdict around_unlisted(const View& view, const catalog::Rule& rule, bool shielded) {
    if (auto v = no_unlisted(view)) {
        return *v;
    }
    const Appliance& a = view.written.appliance;
    const Clearances& around = a.clearances;
    if (around.shield.has_value() != shielded) {
        return not_here(shielded ? "the heater has no shield" : "the heater has a shield");
    }
    if (!a.style) {
        return unknown({"/appliance/style"});
    }
    const catalog::UnlistedClearance& row = *catalog::find_unlisted(name(*a.style));
    Fold fold{"the table has no distance for this heater"};
    for (const Side& side : sides) {
        const double bare_m = unlisted_m(row, side.key);
        if (bare_m <= 0.0 || (side.key == "corner" && !(around.*side.member))) {
            continue;
        }
        double limit_m = bare_m;
        if (shielded && side.key != "front") {
            const bool above = side.key == "above";
            limit_m = std::max(shielded_clearance_m(*around.shield, bare_m, above).value_or(bare_m),
                               above ? rule.second : rule.figure);
        }
        fold.add(around.*side.member ? heater(at_least(
                     view, *(around.*side.member), limit_m, Kind::length, std::string{side.words}))
                                     : unknown({clearance_key(side.key)}));
    }
    return fold.result();
}

Verdict unlisted_bare(const View& view, const catalog::Rule& rule) {
    return around_unlisted(view, rule, false);
}

Verdict unlisted_shielded(const View& view, const catalog::Rule& rule) {
    return around_unlisted(view, rule, true);
}

/// The plate's distances, times `factor`.
Verdict around_listed(const View& view, double factor) {
    const Appliance& a = view.written.appliance;
    Fold fold{"the file has no listed distances"};
    for (const Side& side : sides) {
        if (const Given& limit = a.listed_clearances.*side.member) {
            const Given& here = a.clearances.*side.member;
            fold.add(here ? heater(at_least(
                         view, *here, *limit * factor, Kind::length, std::string{side.words}))
                          : unknown({clearance_key(side.key)}));
        }
    }
    return fold.result();
}

/// A shield takes nothing off what the heater was tested for, except where the body has a rule of
/// its own that says how much; that rule judges the distance then.
Verdict plate(const View& view, const catalog::Rule& /*rule*/) {
    const bool body_reduces = view.body == "ca" || view.body == "au";
    if (view.written.appliance.clearances.shield && body_reduces) {
        return not_here("a shield stands between; the rule for shields says what it takes off");
    }
    return around_listed(view, 1.0);
}

Verdict no_shield_below_12(const View& view, const catalog::Rule& rule) {
    const Appliance& a = view.written.appliance;
    const Flag is_listed = listed(view);
    if (!a.clearances.shield) {
        return not_here("the heater has no shield");
    }
    if (!is_listed) {
        return unknown({"/appliance/listed"});
    }
    if (!*is_listed) {
        return not_here("the heater is not listed");
    }
    Fold fold{"no listed distance is 12 in or less"};
    bool any = false;
    for (const Side& side : sides) {
        const Given& limit = a.listed_clearances.*side.member;
        any = any || limit.has_value();
        if (limit && *limit <= rule.figure + 5e-4) {
            const Given& here = a.clearances.*side.member;
            fold.add(
                here ? heater(at_least(view, *here, *limit, Kind::length, std::string{side.words}))
                     : unknown({clearance_key(side.key)}));
        }
    }
    return any ? fold.result() : unknown({"/appliance/listed_clearances"});
}

Verdict factor_au(const View& view, const catalog::Rule& rule) {
    constexpr double narrow_gap_m = 0.012;
    constexpr double wide_gap_m = 0.025;
    constexpr double two_layers = 0.20;
    const Clearances& around = view.written.appliance.clearances;
    if (!around.shield) {
        return not_here("the heater has no shield");
    }
    if (!around.shield_gap_m) {
        return unknown({"/appliance/clearances/shield_gap"});
    }
    double factor = 1.0;
    if (reaches(*around.shield_gap_m, narrow_gap_m, Kind::length)) {
        factor = *around.shield == Shield::two_sheets                      ? two_layers
                 : reaches(*around.shield_gap_m, wide_gap_m, Kind::length) ? rule.second
                                                                           : rule.figure;
    }
    return around_listed(view, factor);
}

/// The share by which each kind of shield cuts the plate's distance.
Verdict share_ca(const View& view, const catalog::Rule& rule) {
    const Appliance& a = view.written.appliance;
    const Clearances& around = a.clearances;
    if (!around.shield) {
        return not_here("the heater has no shield");
    }
    if (!around.shield_gap_m) {
        return unknown({"/appliance/clearances/shield_gap"});
    }
    const auto rows = catalog::shield_shares();
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const catalog::ShieldShare& r) {
        return r.body == "ca" && r.id.substr(r.id.find('/') + 1) == name(*around.shield);
    });
    const bool counts =
        row != rows.end() && reaches(*around.shield_gap_m, rule.figure, Kind::length);
    Fold fold{"the file has no listed distances"};
    for (const Side& side : sides) {
        const Given& limit = a.listed_clearances.*side.member;
        if (!limit) {
            continue;
        }
        const double share = !counts || side.key == "front" ? 0.0
                             : side.key == "above"          ? row->above
                                                            : row->side;
        const Given& here = around.*side.member;
        fold.add(here ? heater(at_least(
                     view, *here, *limit * (1.0 - share), Kind::length, std::string{side.words}))
                      : unknown({clearance_key(side.key)}));
    }
    return fold.result();
}

/// Floor pads: `front` before the door, `beside` at sides and back.
Verdict pad(const View& view, double front_m, double beside_m, bool back) {
    const FloorProtection& floor = view.written.appliance.floor_protection;
    Fold fold{""};
    const auto ask = [&](const Given& given, double limit_m, std::string_view key) {
        fold.add(given ? heater(at_least(
                     view, *given, limit_m, Kind::length, "floor protected, " + std::string{key}))
                       : unknown({"/appliance/floor_protection/" + std::string{key}}));
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
        return not_here(not_solid);
    }
    if (view.fireplace()) {
        return not_here(is_fireplace);
    }
    const auto& floor = view.written.appliance.floor;
    if (!floor) {
        return unknown({"/appliance/floor"});
    }
    if (*floor == FloorKind::noncombustible) {
        return not_here("the floor does not burn");
    }
    return std::nullopt;
}

/// Whether the floor of a listed heater is protected as far as instructions of listed heaters ask
/// at the least: 16 in before the door, 8 in elsewhere. Common practice, no source; what the
/// instructions of this heater ask has no key in the file.
bool pad_as_instructions_ask(const View& view) {
    constexpr double front_m = 0.4064;
    constexpr double beside_m = 0.2032;
    const FloorProtection& floor = view.written.appliance.floor_protection;
    const auto covers = [](const Given& given, double limit_m) {
        return given && reaches(*given, limit_m, Kind::length);
    };
    return view.written.appliance.listed.value_or(false) && covers(floor.front_m, front_m)
           && covers(floor.sides_m, beside_m) && covers(floor.back_m, beside_m);
}

Verdict pad_all_round(const View& view, const catalog::Rule& rule) {
    if (const auto none = no_pad(view)) {
        return *none;
    }
    if (pad_as_instructions_ask(view)) {
        return not_here("a listed heater goes by its instructions; hold the floor against those");
    }
    return pad(view, rule.figure, rule.figure, true);
}

Verdict pad_unlisted(const View& view, const catalog::Rule& rule) {
    if (auto v = no_unlisted(view)) {
        return *v;
    }
    const auto none = no_pad(view);
    return none ? *none : pad(view, rule.second, rule.figure, true);
}

Verdict pad_au(const View& view, const catalog::Rule& rule) {
    const auto none = no_pad(view);
    return none ? *none : pad(view, rule.figure, rule.second, false);
}

Verdict hearth_uk(const View& view, const catalog::Rule& rule) {
    constexpr double open_fire_m = 0.3;
    if (!view.solid_fuel()) {
        return not_here(not_solid);
    }
    return pad(view, view.fireplace() ? open_fire_m : rule.figure, rule.second, true);
}

Verdict pad_by_legs(const View& view, const catalog::Rule& rule) {
    if (auto v = no_unlisted(view)) {
        return *v;
    }
    if (auto none = no_pad(view)) {
        return *none;
    }
    const Appliance& a = view.written.appliance;
    if (!a.legs_m) {
        return unknown({"/appliance/legs"});
    }
    if (!reaches(*a.legs_m, rule.figure, Kind::length)) {
        return heater(decided(false,
                              "legs under " + view.show(rule.figure, Kind::length)
                                  + " want a floor that does not burn"));
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
    return legs ? heater(at_least(view, *legs, rule.figure, Kind::length, "height under it"))
                : unknown({"/appliance/legs"});
}

constexpr auto entries = std::to_array<Entry>({
    {"heater-clearance-unlisted", unlisted_bare},
    {"heater-clearance-shielded", unlisted_shielded},
    {"heater-clearance-listed", plate},
    {"heater-shield-not-below-listed-12", no_shield_below_12},
    {"au-shield-factor", factor_au},
    {"ca-shield-percent", share_ca},
    {"floor-protection-extent", pad_all_round},
    {"floor-protection-extent-umc", pad_unlisted},
    {"floor-protection-by-leg", pad_by_legs},
    {"au-floor", pad_au},
    {"uk-hearth", hearth_uk},
    {"heater-floor-gap", under_heater},
});

} // namespace

std::span<const Entry> heater_checks() {
    return entries;
}

} // namespace fluewright::checking
