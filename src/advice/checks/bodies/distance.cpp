#include "advice/checks/label.hpp"
#include "fluewright/model/march/wall_heat.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// Distances from pipe to what burns, bare and behind a shield.
namespace fluewright::checking {
namespace {

/// Single-wall pipe of a solid-fuel heater without a label that counts.
std::vector<const Piece*> bare_pipe(const View& view) {
    std::vector<const Piece*> list;
    if (view.solid_fuel()) {
        for (const Piece* piece : view.connector()) {
            if (piece->has_distance() && piece->is_single() && !goes_by_label(view, *piece)) {
                list.push_back(piece);
            }
        }
    }
    return list;
}

constexpr std::string_view no_bare =
    "no single-wall pipe of a solid-fuel heater without a listed distance";

/// What the US table leaves of the bare distance behind a shield that counts.
double reduced_us_m(const Piece& piece, Shield shield) {
    const catalog::Rule& shielded = catalog::rule_of(RuleId::connector_clearance_shielded);
    const double bare_m = catalog::rule_of(RuleId::connector_clearance_single_wall).figure;
    const bool above = piece.level();
    return std::max(shielded_clearance_m(shield, bare_m, above).value_or(bare_m),
                    above ? shielded.second : shielded.figure);
}

Verdict single_wall(const View& view, const catalog::Rule& rule) {
    Fold fold{no_bare};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            fold.add(to_what_burns(view, *piece, rule.figure));
        }
    }
    return fold.result();
}

Verdict single_wall_us(const View& view, const catalog::Rule& rule) {
    const double gap_m = catalog::rule_of(RuleId::shield_air_gap).figure;
    Fold fold{no_bare};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            fold.add(
                or_else(to_what_burns(view, *piece, rule.figure),
                        ", or " + view.show(reduced_us_m(*piece, Shield::sheet_steel), Kind::length)
                            + " with sheet steel and " + view.show(gap_m, Kind::length)
                            + " of air behind it"));
        }
    }
    return fold.result();
}

Verdict single_wall_ca(const View& view, const catalog::Rule& rule) {
    const double gap_m = catalog::rule_of(RuleId::ca_shield_percent).figure;
    const double shielded_m = catalog::rule_of(RuleId::ca_flue_pipe_shielded).figure;
    Fold fold{no_bare};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            fold.add(or_else(to_what_burns(view, *piece, rule.figure),
                             ", or " + view.show(shielded_m, Kind::length) + " with a shield and "
                                 + view.show(gap_m, Kind::length) + " of air behind it"));
        }
    }
    return fold.result();
}

/// The code's row for gas hotter than a residential heater gives.
Verdict medium_heat_pipe(const View& view, const catalog::Rule& rule) {
    constexpr double low_heat_k = 811.15; // 1000 degF
    const bool hot =
        std::any_of(view.states().begin(), view.states().end(), [&](const StateResult& state) {
            return state.kind == StateKind::high_fire && state.gas_temperature_k > low_heat_k;
        });
    return hot ? single_wall(view, rule) : not_here("the gas is not that hot");
}

/// A pipe behind a shield: `reduced_m` where the shield counts, `bare_m` where it does not.
struct Behind {
    double bare_m;
    double reduced_m;
    double gap_m; ///< air it needs behind it to count; 0: none
};

/// A shield counts by the air behind it: with less it only gets as hot as the wall would. Where the
/// file does not tell the gap, the distance may decide all the same.
Verdict behind_shield(const View& view, const Piece& piece, const Behind& behind) {
    const Part& part = *piece.part;
    const std::string what = "clearance to combustibles behind " + std::string{name(*part.shield)};
    if (behind.gap_m > 0.0 && !part.shield_gap_m) {
        const bool far =
            part.clearance_m && view.reaches(*part.clearance_m, behind.bare_m, Kind::length);
        const bool near =
            part.clearance_m && !view.reaches(*part.clearance_m, behind.reduced_m, Kind::length);
        if (!far && !near) {
            std::vector<std::string> missing{piece.key("shield_gap")};
            if (!part.clearance_m) {
                missing.insert(missing.begin(), piece.key("clearance"));
            }
            Verdict v =
                unknown(std::move(missing),
                        what + " at least " + view.show(behind.reduced_m, Kind::length) + " with "
                            + view.show(behind.gap_m, Kind::length) + " of air behind it, else "
                            + view.show(behind.bare_m, Kind::length));
            v.kind = Kind::length;
            v.limit = behind.reduced_m;
            return v;
        }
        return to_what_burns(view, piece, far ? behind.bare_m : behind.reduced_m, what);
    }
    const bool counts =
        behind.gap_m <= 0.0 || view.reaches(*part.shield_gap_m, behind.gap_m, Kind::length);
    return to_what_burns(view, piece, counts ? behind.reduced_m : behind.bare_m, what);
}

bool needs_air_behind(Shield shield) {
    const catalog::ShieldClearance* row = catalog::find_shield(name(shield));
    return row != nullptr && row->ventilated == "yes";
}

Verdict shielded_us(const View& view, const catalog::Rule& /*rule*/) {
    const double bare_m = catalog::rule_of(RuleId::connector_clearance_single_wall).figure;
    const double gap_m = catalog::rule_of(RuleId::shield_air_gap).figure;
    Fold fold{"no bare pipe has a shield"};
    for (const Piece* piece : bare_pipe(view)) {
        if (const auto& shield = piece->part->shield) {
            fold.add(behind_shield(view,
                                   *piece,
                                   {.bare_m = bare_m,
                                    .reduced_m = reduced_us_m(*piece, *shield),
                                    .gap_m = needs_air_behind(*shield) ? gap_m : 0.0}));
        }
    }
    return fold.result();
}

Verdict shielded_ca(const View& view, const catalog::Rule& rule) {
    const double gap_m = catalog::rule_of(RuleId::ca_shield_percent).figure;
    const double bare_m = catalog::rule_of(RuleId::ca_flue_pipe_clearance).figure;
    Fold fold{"no bare pipe has a shield"};
    for (const Piece* piece : bare_pipe(view)) {
        if (piece->part->shield) {
            fold.add(behind_shield(
                view, *piece, {.bare_m = bare_m, .reduced_m = rule.figure, .gap_m = gap_m}));
        }
    }
    return fold.result();
}

Verdict listed_distance(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"no part has a listed distance that counts in the file"};
    for (const Piece& piece : view.pieces) {
        if (goes_by_label(view, piece)) {
            fold.add(to_what_burns(view, piece, *piece.part->listed_clearance_m));
        }
    }
    return fold.result();
}

double outside_m(const Piece& piece) {
    return outside_diameter_m(*piece.wall, piece.section->diameter_m);
}

Verdict diameters_uk(const View& view, const catalog::Rule& rule) {
    const double shielded = catalog::rule_of(RuleId::uk_pipe_shielded).figure;
    Fold fold{no_bare};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            fold.add(or_else(to_what_burns(view, *piece, rule.figure * outside_m(*piece)),
                             ", or " + view.show(shielded * outside_m(*piece), Kind::length)
                                 + " to a shield that reaches as far to each side"));
        }
    }
    return fold.result();
}

/// Behind a shield the factor of shields for heaters is taken.
Verdict diameters_au(const View& view, const catalog::Rule& rule) {
    const double narrow_gap_m = 0.012;
    const double factor = catalog::rule_of(RuleId::au_shield_factor).figure;
    Fold fold{no_bare};
    for (const Piece* piece : bare_pipe(view)) {
        const double bare_m = rule.figure * outside_m(*piece);
        fold.add(piece->part->shield ? behind_shield(
                     view,
                     *piece,
                     {.bare_m = bare_m, .reduced_m = factor * bare_m, .gap_m = narrow_gap_m})
                                     : to_what_burns(view, *piece, bare_m));
    }
    return fold.result();
}

Verdict shielded_uk(const View& view, const catalog::Rule& rule) {
    Fold fold{"no bare pipe has a shield"};
    for (const Piece* piece : bare_pipe(view)) {
        const Part& part = *piece->part;
        if (!part.shield) {
            continue;
        }
        const double needed_m = rule.figure * outside_m(*piece);
        std::vector<std::string> missing;
        for (const auto& [given, key] : {std::pair{part.clearance_m, "clearance"},
                                         std::pair{part.shield_gap_m, "shield_gap"},
                                         std::pair{part.shield_reach_m, "shield_reach"}}) {
            if (!given) {
                missing.push_back(piece->key(key));
            }
        }
        if (!missing.empty()) {
            fold.add(unknown(std::move(missing),
                             "from pipe to shield, and shield to each side, at least "
                                 + view.show(needed_m, Kind::length) + ", with "
                                 + view.show(rule.second, Kind::length) + " of air behind it"));
            continue;
        }
        const double to_shield_m = *part.clearance_m - *part.shield_gap_m;
        const bool met = view.reaches(to_shield_m, needed_m, Kind::length)
                         && view.reaches(*part.shield_reach_m, needed_m, Kind::length)
                         && view.reaches(*part.shield_gap_m, rule.second, Kind::length);
        Verdict v =
            decided(met,
                    "pipe to shield " + view.show(to_shield_m, Kind::length)
                        + ", shield to each side " + view.show(*part.shield_reach_m, Kind::length)
                        + ", gap " + view.show(*part.shield_gap_m, Kind::length) + "; "
                        + view.show(needed_m, Kind::length) + ", as much, and "
                        + view.show(rule.second, Kind::length) + " are required");
        v.kind = Kind::length;
        v.figure = to_shield_m;
        v.limit = needed_m;
        fold.add(at(view, *piece, std::move(v)));
    }
    return fold.result();
}

/// Whether a piece stands so far off that no body asks for a shield: nothing relies on what is
/// there.
bool needs_no_shield(const View& view, const Piece& piece) {
    constexpr double most_for_bare_pipe_m = 18.0 * constants::inch_m;
    return piece.part->clearance_m
           && view.reaches(*piece.part->clearance_m, most_for_bare_pipe_m, Kind::length);
}

Verdict shield_gap(const View& view, const catalog::Rule& rule) {
    Fold fold{"there is no ventilated shield that a distance relies on"};
    const std::string what = "air gap behind the shield";
    for (const Piece& piece : view.pieces) {
        if (piece.part->shield && needs_air_behind(*piece.part->shield)
            && !needs_no_shield(view, piece)) {
            fold.add(at(view,
                        piece,
                        given_at_least(view,
                                       piece.part->shield_gap_m,
                                       rule.figure,
                                       Kind::length,
                                       what,
                                       piece.key("shield_gap"))));
        }
    }
    const Clearances& around = view.written.appliance.clearances;
    if (around.shield && needs_air_behind(*around.shield)) {
        Verdict v = given_at_least(view,
                                   around.shield_gap_m,
                                   rule.figure,
                                   Kind::length,
                                   what,
                                   "/appliance/clearances/shield_gap");
        v.place = "the heater";
        fold.add(std::move(v));
    }
    return fold.result();
}

/// Past the edge of the shield the slanted distance must be that asked without one.
Verdict shield_width(const View& view, const catalog::Rule& /*rule*/) {
    const double bare_m = catalog::rule_of(RuleId::connector_clearance_single_wall).figure;
    Fold fold{"no bare pipe has a shield"};
    for (const Piece* piece : bare_pipe(view)) {
        const Part& part = *piece->part;
        if (!part.shield) {
            continue;
        }
        if (!part.clearance_m) {
            fold.add(unknown({piece->key("clearance"), piece->key("shield_reach")},
                             "shield so wide that past its edge " + view.show(bare_m, Kind::length)
                                 + " are kept"));
            continue;
        }
        const double half_m =
            std::sqrt(std::max(0.0, bare_m * bare_m - *part.clearance_m * *part.clearance_m));
        fold.add(at(view,
                    *piece,
                    given_at_least(view,
                                   part.shield_reach_m,
                                   half_m,
                                   Kind::length,
                                   "shield to each side",
                                   piece->key("shield_reach"))));
    }
    return fold.result();
}

Verdict pipe_de(const View& view, const catalog::Rule& rule) {
    constexpr double wrapped_m = 0.02;
    Fold fold{"no pipe without a listed distance before the chimney"};
    for (const Piece* piece : view.connector()) {
        if (piece->has_distance() && !goes_by_label(view, *piece)) {
            const bool wrapped = view.reaches(piece->wall->insulation_m(), wrapped_m, Kind::length);
            fold.add(wrapped ? to_what_burns(view, *piece, rule.second)
                             : or_else(to_what_burns(view, *piece, rule.figure),
                                       ", or " + view.show(rule.second, Kind::length) + " with "
                                           + view.show(wrapped_m, Kind::length)
                                           + " of noncombustible insulation round it"));
        }
    }
    return fold.result();
}

/// Nearer than any body lets bare pipe stand: some ask for a length, others for diameters.
Verdict far_too_near(const View& view, const catalog::Rule& rule) {
    Fold fold{"no single-wall pipe of a solid-fuel heater without a shield"};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            const double least_m = std::min(rule.figure, rule.second * outside_m(*piece));
            fold.add(to_what_burns(view, *piece, least_m));
        }
    }
    return fold.result();
}

/// Bare pipe of a gas burner whose label does not count.
Verdict gas_pipe(const View& view, const catalog::Rule& rule) {
    Fold fold{"no single-wall pipe of a gas burner without a listed distance that counts"};
    for (const Piece& piece : view.pieces) {
        if (view.heater().fuel_group == FuelGroup::gas && piece.has_distance() && piece.is_single()
            && !goes_by_label(view, piece)) {
            fold.add(to_what_burns(view, piece, rule.figure));
        }
    }
    return fold.result();
}

constexpr auto pipe_distance_entries = std::to_array<Entry>({
    {"connector-clearance-single-wall", single_wall_us},
    {"ca-flue-pipe-clearance", single_wall_ca},
    {"connector-clearance-medium-heat", medium_heat_pipe, Needs::solution},
    {"connector-clearance-shielded", shielded_us},
    {"ca-flue-pipe-shielded", shielded_ca},
    {"connector-clearance-listed", listed_distance},
    {"uk-pipe-clearance", diameters_uk},
    {"uk-pipe-shielded", shielded_uk},
    {"au-pipe-clearance", diameters_au},
    {"shield-air-gap", shield_gap},
    {"shield-size", shield_width},
    {"de-pipe-clearance", pipe_de},
    {"trade-pipe-distance", far_too_near},
    {"trade-gas-pipe-distance", gas_pipe},
});

} // namespace

std::span<const Entry> distance_checks() {
    return pipe_distance_entries;
}

} // namespace fluewright::checking
