#include "fluewright/core/constants.hpp"
#include "fluewright/model/march/wall_heat.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// Distances from pipe and chimney to what burns, bare and behind a shield.
namespace fluewright {

std::optional<double> shielded_clearance_m(Shield shield, double needed_m, bool above) {
    const catalog::ShieldClearance* row = catalog::find_shield(name(shield));
    if (row == nullptr) {
        return std::nullopt;
    }
    constexpr double inch_m = constants::inch_m;
    const std::array<double, 5> needed{
        6.0 * inch_m, 9.0 * inch_m, 12.0 * inch_m, 18.0 * inch_m, 36.0 * inch_m};
    const std::array<double, 5> left =
        above ? std::array{row->above_6_m,
                           row->above_9_m,
                           row->above_12_m,
                           row->above_18_m,
                           row->above_36_m}
              : std::array{
                  row->side_6_m, row->side_9_m, row->side_12_m, row->side_18_m, row->side_36_m};
    constexpr double rounding_m = 5e-4;
    for (std::size_t i = 0; i < needed.size(); ++i) {
        if (std::abs(needed_m - needed[i]) < rounding_m) {
            return left[i] > 0.0 ? std::optional{left[i]} : std::nullopt;
        }
        if (i > 0 && needed_m < needed[i] && needed_m > needed[i - 1]) {
            if (left[i] <= 0.0 || left[i - 1] <= 0.0) {
                return std::nullopt;
            }
            const double share = (needed_m - needed[i - 1]) / (needed[i] - needed[i - 1]);
            return left[i - 1] + share * (left[i] - left[i - 1]);
        }
    }
    return std::nullopt;
}

} // namespace fluewright

namespace fluewright::checking {
namespace {

/// Single-wall pipe of a solid-fuel heater whose label gives no distance.
std::vector<const Piece*> bare_pipe(const View& view) {
    std::vector<const Piece*> list;
    if (view.solid_fuel()) {
        for (const Piece* piece : view.connector()) {
            if (piece->has_length() && piece->is_single() && !piece->part->listed_clearance_m) {
                list.push_back(piece);
            }
        }
    }
    return list;
}

constexpr std::string_view no_bare =
    "no single-wall pipe of a solid-fuel heater without a listed distance";

/// The distance of a piece to what burns, as it stands, against the least.
Verdict distance(const View& view, const Piece& piece, double least_m) {
    const Given& there_m = piece.part->clearance_m;
    if (!there_m) {
        return unknown({piece.key("clearance")});
    }
    return at(
        view, piece, at_least(view, *there_m, least_m, Kind::length, "distance to what burns"));
}

Verdict single_wall(const View& view, const catalog::Rule& rule) {
    Fold fold{no_bare};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            fold.add(distance(view, *piece, rule.figure));
        }
    }
    return fold.result();
}

/// The code's row for gas hotter than a residential heater gives.
Verdict medium_heat(const View& view, const catalog::Rule& rule) {
    constexpr double low_heat_k = 811.15; // 1000 degF
    const bool hot =
        std::any_of(view.states().begin(), view.states().end(), [&](const StateResult& state) {
            return state.kind == StateKind::high_fire && state.gas_temperature_k > low_heat_k;
        });
    return hot ? single_wall(view, rule) : not_here("the gas is not that hot");
}

/// Factory-built chimney in an enclosure whose label gives no distance.
Verdict casing_au(const View& view, const catalog::Rule& rule) {
    Fold fold{"no factory-built chimney without a listed distance stands in an enclosure"};
    for (const Piece& piece : view.pieces) {
        if (piece.wall->kind != WallKind::insulated || !piece.has_length()
            || piece.section->zone != Zone::chase || piece.part->listed_clearance_m) {
            continue;
        }
        fold.add(piece.part->clearance_m ? at(view,
                                              piece,
                                              at_least(view,
                                                       *piece.part->clearance_m,
                                                       rule.figure,
                                                       Kind::length,
                                                       "distance round the casing"))
                                         : unknown({piece.key("clearance")}));
    }
    return fold.result();
}

Verdict shielded_us(const View& view, const catalog::Rule& rule) {
    const double bare_m = catalog::rule_of(RuleId::connector_clearance_single_wall).figure;
    Fold fold{"no bare pipe has a shield"};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            continue;
        }
        const bool above = piece->level();
        const auto left_m = shielded_clearance_m(*piece->part->shield, bare_m, above);
        const double limit_m = std::max(left_m.value_or(bare_m), above ? rule.second : rule.figure);
        fold.add(piece->part->clearance_m
                     ? at(view,
                          *piece,
                          at_least(view,
                                   *piece->part->clearance_m,
                                   limit_m,
                                   Kind::length,
                                   "distance to what burns behind "
                                       + std::string{name(*piece->part->shield)}))
                     : unknown({piece->key("clearance")}));
    }
    return fold.result();
}

/// A shield counts by the air behind it: with less it only gets as hot as the wall would.
Verdict shielded_ca(const View& view, const catalog::Rule& rule) {
    const double gap_m = catalog::rule_of(RuleId::ca_shield_percent).figure;
    const double bare_m = catalog::rule_of(RuleId::ca_flue_pipe_clearance).figure;
    Fold fold{"no bare pipe has a shield"};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            continue;
        }
        const Given& there_m = piece->part->shield_gap_m;
        if (!there_m) {
            fold.add(unknown({piece->key("shield_gap")}));
            continue;
        }
        const bool counts = reaches(*there_m, gap_m, Kind::length);
        fold.add(distance(view, *piece, counts ? rule.figure : bare_m));
    }
    return fold.result();
}

Verdict listed(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"no part has a listed distance in the file"};
    for (const Piece& piece : view.pieces) {
        if (piece.part->listed_clearance_m) {
            fold.add(distance(view, piece, *piece.part->listed_clearance_m));
        }
    }
    return fold.result();
}

/// Pipe and chimney whose distance only the label knows: with the label's figure this rule is
/// settled by `listed`, without it nothing can be said.
Verdict
by_label(const View& view, const catalog::Rule& /*rule*/, WallKind kind, std::string_view none) {
    Fold fold{none};
    for (const Piece& piece : view.pieces) {
        if (piece.wall->kind != kind || !piece.has_length()) {
            continue;
        }
        const Part& part = *piece.part;
        if (!part.listed_clearance_m) {
            fold.add(unknown({piece.key("listed_clearance")}));
        } else {
            fold.add(distance(view, piece, *part.listed_clearance_m));
        }
    }
    return fold.result();
}

Verdict double_wall(const View& view, const catalog::Rule& rule) {
    return by_label(view, rule, WallKind::double_wall, "there is no double-wall pipe");
}

Verdict factory_chimney(const View& view, const catalog::Rule& rule) {
    return by_label(view, rule, WallKind::insulated, "there is no factory-built chimney");
}

double outside_m(const Piece& piece) {
    return outside_diameter_m(*piece.wall, piece.section->diameter_m);
}

Verdict diameters_uk(const View& view, const catalog::Rule& rule) {
    Fold fold{no_bare};
    for (const Piece* piece : bare_pipe(view)) {
        if (!piece->part->shield) {
            fold.add(distance(view, *piece, rule.figure * outside_m(*piece)));
        }
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
        std::vector<std::string> missing;
        for (const auto& [given, key] : {std::pair{part.clearance_m, "clearance"},
                                         std::pair{part.shield_gap_m, "shield_gap"},
                                         std::pair{part.shield_reach_m, "shield_reach"}}) {
            if (!given) {
                missing.push_back(piece->key(key));
            }
        }
        if (!missing.empty()) {
            fold.add(unknown(std::move(missing)));
            continue;
        }
        const double needed_m = rule.figure * outside_m(*piece);
        const double to_shield_m = *part.clearance_m - *part.shield_gap_m;
        const bool met = reaches(to_shield_m, needed_m, Kind::length)
                         && reaches(*part.shield_reach_m, needed_m, Kind::length)
                         && reaches(*part.shield_gap_m, rule.second, Kind::length);
        Verdict v =
            decided(met,
                    "pipe to shield " + view.show(to_shield_m, Kind::length)
                        + ", shield to each side " + view.show(*part.shield_reach_m, Kind::length)
                        + ", gap " + view.show(*part.shield_gap_m, Kind::length) + "; "
                        + view.show(needed_m, Kind::length) + ", as much, and "
                        + view.show(rule.second, Kind::length) + " are asked");
        v.kind = Kind::length;
        v.figure = to_shield_m;
        v.limit = needed_m;
        fold.add(at(view, *piece, std::move(v)));
    }
    return fold.result();
}

Verdict shield_gap(const View& view, const catalog::Rule& rule) {
    Fold fold{"there is no ventilated shield"};
    const auto needs_gap = [](const Choice<Shield>& shield) {
        const catalog::ShieldClearance* row =
            shield ? catalog::find_shield(name(*shield)) : nullptr;
        return row != nullptr && row->ventilated == "yes";
    };
    for (const Piece& piece : view.pieces) {
        if (needs_gap(piece.part->shield)) {
            fold.add(piece.part->shield_gap_m ? at(view,
                                                   piece,
                                                   at_least(view,
                                                            *piece.part->shield_gap_m,
                                                            rule.figure,
                                                            Kind::length,
                                                            "gap behind the shield"))
                                              : unknown({piece.key("shield_gap")}));
        }
    }
    const Clearances& around = view.written.appliance.clearances;
    if (needs_gap(around.shield)) {
        Verdict v = around.shield_gap_m ? at_least(view,
                                                   *around.shield_gap_m,
                                                   rule.figure,
                                                   Kind::length,
                                                   "gap behind the heater's shield")
                                        : unknown({"/appliance/clearances/shield_gap"});
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
        if (!part.clearance_m || !part.shield_reach_m) {
            fold.add(unknown({piece->key(part.clearance_m ? "shield_reach" : "clearance")}));
            continue;
        }
        const double half_m =
            std::sqrt(std::max(0.0, bare_m * bare_m - *part.clearance_m * *part.clearance_m));
        fold.add(
            at(view,
               *piece,
               at_least(view, *part.shield_reach_m, half_m, Kind::length, "shield to each side")));
    }
    return fold.result();
}

/// Masonry beside wood: inside the house or wholly outdoors.
Verdict masonry(const View& view, const catalog::Rule& rule, bool outdoors) {
    Fold fold{outdoors ? "no masonry stands outdoors" : "no masonry stands indoors"};
    for (const Piece& piece : view.pieces) {
        const bool brick =
            piece.wall->kind == WallKind::masonry || piece.wall->kind == WallKind::liner;
        if (!brick || !piece.has_length() || (piece.section->zone == Zone::outdoors) != outdoors
            || piece.part->listed_clearance_m) {
            continue;
        }
        fold.add(
            piece.part->clearance_m ? at(
                view,
                piece,
                at_least(
                    view, *piece.part->clearance_m, rule.figure, Kind::length, "distance to wood"))
                                    : unknown({piece.key("clearance")}));
    }
    return fold.result();
}

Verdict masonry_inside(const View& view, const catalog::Rule& rule) {
    return masonry(view, rule, false);
}

Verdict masonry_outside(const View& view, const catalog::Rule& rule) {
    return masonry(view, rule, true);
}

Verdict chimney_de(const View& view, const catalog::Rule& rule) {
    Fold fold{"there is no chimney without a listed distance"};
    for (const Piece* piece : view.chimney()) {
        if (piece->has_length() && !piece->part->listed_clearance_m) {
            fold.add(distance(view, *piece, rule.figure));
        }
    }
    return fold.result();
}

Verdict pipe_de(const View& view, const catalog::Rule& rule) {
    Fold fold{"no pipe without a listed distance before the chimney"};
    for (const Piece* piece : view.connector()) {
        if (piece->has_length() && !piece->part->listed_clearance_m) {
            const double limit_m = piece->is_single() ? rule.figure : rule.second;
            fold.add(distance(view, *piece, limit_m));
        }
    }
    return fold.result();
}

constexpr auto entries = std::to_array<Entry>({
    {"connector-clearance-single-wall", single_wall},
    {"ca-flue-pipe-clearance", single_wall},
    {"connector-clearance-medium-heat", medium_heat, Needs::solution},
    {"au-casing-clearance", casing_au},
    {"connector-clearance-shielded", shielded_us},
    {"ca-flue-pipe-shielded", shielded_ca},
    {"connector-clearance-listed", listed},
    {"connector-clearance-double-wall", double_wall},
    {"factory-chimney-clearance", factory_chimney},
    {"uk-factory-chimney", factory_chimney},
    {"uk-pipe-clearance", diameters_uk},
    {"uk-pipe-shielded", shielded_uk},
    {"shield-air-gap", shield_gap},
    {"shield-size", shield_width},
    {"masonry-clearance-inside", masonry_inside},
    {"masonry-clearance-outside", masonry_outside},
    {"ca-masonry-clearance-inside", masonry_inside},
    {"ca-masonry-clearance-outside", masonry_outside},
    {"de-chimney-clearance", chimney_de},
    {"de-pipe-clearance", pipe_de},
});

} // namespace

std::span<const Entry> distance_checks() {
    return entries;
}

} // namespace fluewright::checking
