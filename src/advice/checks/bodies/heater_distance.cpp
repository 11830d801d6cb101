#include "heater_listing.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>

/// Distances from heaters to what burns, bare and behind a shield.
namespace fluewright::checking {

bool has_plate(const View& view) {
    const Clearances& plate = view.written.appliance.listed_clearances;
    return std::any_of(heater_sides.begin(), heater_sides.end(), [&](const HeaterSide& side) {
        return (plate.*side.member).has_value();
    });
}

Flag is_listed(const View& view) {
    return has_plate(view) ? Flag{true} : view.written.appliance.listed;
}

std::optional<Verdict> not_unlisted(const View& view) {
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    if (view.fireplace()) {
        return not_here("an open fireplace is built in");
    }
    const Flag listed = is_listed(view);
    if (!listed) {
        return unknown({"/appliance/listed"});
    }
    if (*listed) {
        return not_here("the heater is listed");
    }
    return std::nullopt;
}

namespace {

Verdict at_heater(Verdict v) {
    v.place = "the heater";
    return v;
}

std::string clearance_key(const HeaterSide& side) {
    return "/appliance/clearances/" + std::string{side.key};
}

/// The distance of a side as it stands, against the least.
Verdict side_distance(const View& view, const HeaterSide& side, double least_m) {
    return at_heater(given_at_least(view,
                                    view.written.appliance.clearances.*side.member,
                                    least_m,
                                    Kind::length,
                                    "heater to combustibles, " + std::string{side.words} + ":",
                                    clearance_key(side)));
}

/// One distance for the sides, one above and one before; 0: none is asked.
struct Around {
    double beside_m{};
    double back_m{};
    double above_m{};
    double front_m{};

    [[nodiscard]] double of(const HeaterSide& side) const {
        return side.above()         ? above_m
               : side.front()       ? front_m
               : side.key == "back" ? back_m
                                    : beside_m;
    }
};

/// "36 in all round" for a heater whose style or listing is not known.
std::string around_words(const View& view, const Around& around) {
    const auto part = [&](double m, std::string_view where) {
        return m > 0.0 ? ", " + std::string{where} + " " + view.show(m, Kind::length)
                       : std::string{};
    };
    return "heater to combustibles at least " + view.show(around.beside_m, Kind::length)
           + " to the side" + part(around.back_m, "behind") + part(around.above_m, "above")
           + part(around.front_m, "before");
}

Around around_of(const catalog::UnlistedClearance& row) {
    return {.beside_m = row.side_m,
            .back_m = row.back_m,
            .above_m = row.above_m,
            .front_m = row.front_m};
}

/// The style the table is entered with where the file gives none, to tell what would be asked.
constexpr std::string_view usual_style = "radiant";

Verdict around_unlisted(const View& view, const catalog::Rule& rule, bool shielded) {
    const Appliance& a = view.written.appliance;
    const Clearances& around = a.clearances;
    if (around.shield.has_value() != shielded) {
        return not_here(shielded ? "the heater has no shield" : "the heater has a shield");
    }
    const auto asked = [&](std::string_view style) {
        return around_words(view, around_of(*catalog::find_unlisted(style)));
    };
    if (auto v = not_unlisted(view)) {
        if (v->outcome == CheckOutcome::undetermined) {
            return unknown({"/appliance/listed"},
                           "not listed: " + asked(a.style ? name(*a.style) : usual_style)
                               + "; listed: as its plate says");
        }
        return *v;
    }
    if (!a.style) {
        return unknown({"/appliance/style"}, asked(usual_style) + ", if it is radiant");
    }
    const Around bare = around_of(*catalog::find_unlisted(name(*a.style)));
    const double gap_m = catalog::rule_of(RuleId::shield_air_gap).figure;
    Fold fold{"the table has no distance for this heater"};
    for (const HeaterSide& side : heater_sides) {
        const double bare_m = bare.of(side);
        if (bare_m <= 0.0 || (side.corner() && !(around.*side.member))) {
            continue;
        }
        if (!shielded || side.front()) {
            fold.add(side_distance(view, side, bare_m));
            continue;
        }
        const double behind_m =
            std::max(shielded_clearance_m(*around.shield, bare_m, side.above()).value_or(bare_m),
                     side.above() ? rule.second : rule.figure);
        const catalog::ShieldClearance* row = catalog::find_shield(name(*around.shield));
        const bool needs_gap = row != nullptr && row->ventilated == "yes";
        const Given& here = around.*side.member;
        const bool open_gap = needs_gap && !around.shield_gap_m && here
                              && view.reaches(*here, behind_m, Kind::length)
                              && !view.reaches(*here, bare_m, Kind::length);
        if (open_gap) {
            fold.add(unknown({"/appliance/clearances/shield_gap"},
                             "air gap behind the heater's shield at least "
                                 + view.show(gap_m, Kind::length)));
            continue;
        }
        const bool counts = !needs_gap || !around.shield_gap_m
                            || view.reaches(*around.shield_gap_m, gap_m, Kind::length);
        fold.add(side_distance(view, side, counts ? behind_m : bare_m));
    }
    return fold.result();
}

Verdict unlisted_bare(const View& view, const catalog::Rule& rule) {
    return around_unlisted(view, rule, false);
}

Verdict unlisted_shielded(const View& view, const catalog::Rule& rule) {
    return around_unlisted(view, rule, true);
}

/// How much of a distance is left on a side behind the heater's shield.
using LeftBehind = double (*)(const View&, const HeaterSide&);

double all_of_it(const View& /*view*/, const HeaterSide& /*side*/) {
    return 1.0;
}

/// The factor of the shield by the air behind it.
double left_au(const View& view, const HeaterSide& side) {
    const catalog::Rule& rule = catalog::rule_of(RuleId::au_shield_factor);
    constexpr double narrow_gap_m = 0.012;
    constexpr double wide_gap_m = 0.025;
    constexpr double two_layers = 0.20;
    const Clearances& around = view.written.appliance.clearances;
    if (side.front() || side.above() // the shields of the tables stand upright
        || !view.reaches(around.shield_gap_m.value_or(0.0), narrow_gap_m, Kind::length)) {
        return 1.0;
    }
    return *around.shield == Shield::two_sheets                           ? two_layers
           : view.reaches(*around.shield_gap_m, wide_gap_m, Kind::length) ? rule.second
                                                                          : rule.figure;
}

/// The share of the table of shields, where the air behind it is wide enough.
double left_ca(const View& view, const HeaterSide& side) {
    const Clearances& around = view.written.appliance.clearances;
    const double gap_m = catalog::rule_of(RuleId::ca_shield_percent).figure;
    const auto rows = catalog::shield_shares();
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const catalog::ShieldShare& r) {
        return r.body == "ca" && r.id.substr(r.id.find('/') + 1) == name(*around.shield);
    });
    if (row == rows.end() || side.front()
        || !view.reaches(around.shield_gap_m.value_or(0.0), gap_m, Kind::length)) {
        return 1.0;
    }
    return 1.0 - (side.above() ? row->above : row->side);
}

/// The plate's distances, less what a shield takes off.
Verdict around_listed(const View& view, LeftBehind left = all_of_it) {
    Fold fold{"the file has no listed distances"};
    for (const HeaterSide& side : heater_sides) {
        if (const Given& limit = view.written.appliance.listed_clearances.*side.member) {
            fold.add(side_distance(view, side, *limit * left(view, side)));
        }
    }
    return fold.result();
}

/// A listed heater whose plate the file does not tell. Nobody can say what its plate asks; where it
/// stands as far off as a heater without a listing has to, no plate asks for more. Bodies with
/// general distances of their own judge it by those.
Verdict untold_plate(const View& view) {
    if (view.fireplace()) {
        return not_here("an open fireplace is built in");
    }
    if (view.solid_fuel() && view.body != "us" && view.body != "none") {
        return not_here("the general distances of the rules stand for its plate");
    }
    const Around bare = around_of(*catalog::find_unlisted(usual_style));
    const Clearances& around = view.written.appliance.clearances;
    const bool far_off =
        std::all_of(heater_sides.begin(), heater_sides.end(), [&](const HeaterSide& side) {
            const Given& here = around.*side.member;
            return bare.of(side) <= 0.0 || (side.corner() && !here)
                   || (here && view.reaches(*here, bare.of(side), Kind::length));
        });
    return at_heater(far_off ? decided(true, "it stands as far off as one that is not listed must")
                             : unknown({"/appliance/listed_clearances"},
                                       "the distances on the plate of the listed heater"));
}

/// A shield takes nothing off what the heater was tested for, except where the body has a rule of
/// its own that says how much; that rule judges the distance then.
Verdict plate(const View& view, const catalog::Rule& /*rule*/) {
    const bool body_reduces = view.body == "ca" || view.body == "au";
    if (view.written.appliance.clearances.shield && body_reduces) {
        return not_here("a shield stands between; the rule for shields says what it takes off");
    }
    return has_plate(view) || !is_listed(view).value_or(false) ? around_listed(view)
                                                               : untold_plate(view);
}

Verdict plate_behind_shield(const View& view, LeftBehind left) {
    const Clearances& around = view.written.appliance.clearances;
    if (!around.shield) {
        return not_here("the heater has no shield");
    }
    if (!around.shield_gap_m) {
        return has_plate(view)
                   ? unknown({"/appliance/clearances/shield_gap"},
                             "the distance on its plate, less the share of the shield if the air "
                             "gap behind it is wide enough")
                   : not_here("the file has no listed distances");
    }
    return around_listed(view, left);
}

Verdict factor_au(const View& view, const catalog::Rule& /*rule*/) {
    return plate_behind_shield(view, left_au);
}

Verdict share_ca(const View& view, const catalog::Rule& /*rule*/) {
    return plate_behind_shield(view, left_ca);
}

Verdict no_shield_below_12(const View& view, const catalog::Rule& rule) {
    const Appliance& a = view.written.appliance;
    const Flag listed = is_listed(view);
    if (!a.clearances.shield) {
        return not_here("the heater has no shield");
    }
    if (!listed) {
        return unknown({"/appliance/listed"});
    }
    if (!*listed) {
        return not_here("the heater is not listed");
    }
    if (!has_plate(view)) {
        return unknown({"/appliance/listed_clearances"});
    }
    Fold fold{"no listed distance is 12 in or less"};
    for (const HeaterSide& side : heater_sides) {
        const Given& limit = a.listed_clearances.*side.member;
        if (limit && view.reaches(rule.figure, *limit, Kind::length)) {
            fold.add(side_distance(view, side, *limit));
        }
    }
    return fold.result();
}

/// General distances for a heater whose plate the file does not tell. Of one that may be listed
/// only what meets them can be judged: its plate may ask for less.
Verdict around_general(const View& view, const Around& around, LeftBehind left) {
    if (!view.solid_fuel()) {
        return not_here("for solid fuel only");
    }
    if (view.fireplace()) {
        return not_here("an open fireplace is built in");
    }
    if (has_plate(view)) {
        return not_here("its plate gives the distances");
    }
    const Appliance& a = view.written.appliance;
    const bool unlisted = a.listed && !*a.listed;
    Fold fold{"no distance is required"};
    for (const HeaterSide& side : heater_sides) {
        const double bare_m = around.of(side);
        const Given& here = a.clearances.*side.member;
        if (bare_m <= 0.0 || (side.corner() && !here)) {
            continue;
        }
        const double left_m = bare_m * (a.clearances.shield ? left(view, side) : 1.0);
        Verdict v = side_distance(view, side, left_m);
        if (v.outcome == CheckOutcome::not_met && !unlisted) {
            v = unknown({a.listed ? "/appliance/listed_clearances/" + std::string{side.key}
                                  : "/appliance/listed"},
                        "heater to combustibles, " + std::string{side.words}
                            + ": as its plate says, else at least "
                            + view.show(left_m, Kind::length));
            v.kind = Kind::length;
            v.limit = left_m;
        }
        fold.add(std::move(v));
    }
    return fold.result();
}

Around all_round(double m, std::optional<double> front_m = {}) {
    return {.beside_m = m, .back_m = m, .above_m = m, .front_m = front_m.value_or(m)};
}

Verdict general_uk(const View& view, const catalog::Rule& rule) {
    return around_general(view, all_round(rule.figure), all_of_it);
}

Around beside_and_above(const catalog::Rule& rule) {
    return {.beside_m = rule.figure,
            .back_m = rule.figure,
            .above_m = rule.second,
            .front_m = rule.figure};
}

Verdict general_ca(const View& view, const catalog::Rule& rule) {
    return around_general(view, beside_and_above(rule), left_ca);
}

Verdict general_au(const View& view, const catalog::Rule& rule) {
    return around_general(view, beside_and_above(rule), left_au);
}

Verdict general_de(const View& view, const catalog::Rule& rule) {
    return around_general(view, all_round(rule.figure, rule.second), all_of_it);
}

/// Nearer than any shield lets a stove stand that is not listed.
Verdict stove_far_too_near(const View& view, const catalog::Rule& rule) {
    if (!view.solid_fuel() || view.heater().type != ApplianceType::stove) {
        return not_here("for stoves on solid fuel");
    }
    const Flag listed = is_listed(view);
    if (listed.value_or(false)) {
        return not_here("the heater is listed");
    }
    Fold fold{"no side of the heater has a distance in the file"};
    for (const HeaterSide& side : heater_sides) {
        if (side.above() || side.front() || !(view.written.appliance.clearances.*side.member)) {
            continue;
        }
        Verdict v = side_distance(view, side, rule.figure);
        if (v.outcome == CheckOutcome::not_met && !listed) {
            v = unknown({"/appliance/listed"},
                        "heater to combustibles, " + std::string{side.words}
                            + ": as its plate says, else never under "
                            + view.show(rule.figure, Kind::length));
        }
        fold.add(std::move(v));
    }
    return fold.result();
}

constexpr auto heater_distance_entries = std::to_array<Entry>({
    {"heater-clearance-unlisted", unlisted_bare},
    {"heater-clearance-shielded", unlisted_shielded},
    {"heater-clearance-listed", plate},
    {"heater-shield-not-below-listed-12", no_shield_below_12},
    {"au-shield-factor", factor_au},
    {"ca-shield-percent", share_ca},
    {"uk-heater-clearance", general_uk},
    {"ca-heater-clearance-unlisted", general_ca},
    {"au-heater-clearance-unlisted", general_au},
    {"de-heater-clearance", general_de},
    {"trade-heater-distance", stove_far_too_near},
});

} // namespace

std::span<const Entry> heater_distance_checks() {
    return heater_distance_entries;
}

} // namespace fluewright::checking
