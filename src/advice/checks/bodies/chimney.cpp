#include "rule_check.hpp"

#include <algorithm>
#include <array>

/// The chimney itself: lining, cleanout, class, lean, cap, sharing.
namespace fluewright::checking {
namespace {

bool masonry(const Piece& piece) {
    return piece.wall->kind == WallKind::masonry || piece.wall->kind == WallKind::liner;
}

const Piece* first_of(const View& view, WallKind kind) {
    for (const Piece& piece : view.pieces) {
        if (piece.has_length() && piece.wall->kind == kind) {
            return &piece;
        }
    }
    return nullptr;
}

Verdict lined(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"there is no masonry chimney"};
    for (const Piece& piece : view.pieces) {
        if (piece.has_length() && masonry(piece)) {
            const bool bare = piece.is_unlined();
            fold.add(at(view, piece, decided(!bare, bare ? "it has no liner" : "it is lined")));
        }
    }
    return fold.result();
}

Verdict cleanout(const View& view, const catalog::Rule& /*rule*/) {
    if (view.fireplace()) {
        return not_here("a fireplace is cleaned through its opening");
    }
    const auto first = std::find_if(view.pieces.begin(), view.pieces.end(), [](const Piece& p) {
        return p.has_length() && masonry(p);
    });
    if (first == view.pieces.end()) {
        return not_here("there is no masonry chimney");
    }
    bool said = false;
    for (const Piece& piece : view.pieces) {
        const PartKind kind = piece.section->kind;
        if (kind == PartKind::tee || kind == PartKind::elbow) {
            if (piece.part->cleanout.value_or(false)) {
                return at(view, piece, decided(true, "it has a cleanout"));
            }
            said = said || piece.part->cleanout.has_value();
        }
    }
    return said ? decided(false, "no cleanout below the inlet")
                : unknown({first->index > 0
                               ? "/run/" + std::to_string(first->index - 1) + "/cleanout"
                               : std::string{"/run/0/cleanout"}},
                          "a cleanout below the inlet");
}

Verdict lean(const View& view, const catalog::Rule& rule, bool factory_only) {
    Fold fold{"the chimney has no elbow"};
    int count = 0;
    for (const Piece* piece : view.chimney()) {
        const bool of_kind = !factory_only || piece->wall->kind == WallKind::insulated;
        if (piece->section->kind == PartKind::elbow && of_kind) {
            ++count;
            fold.add(
                at(view,
                   *piece,
                   at_most(view, piece->section->turn_rad, rule.figure, Kind::angle, "it leans")));
        }
    }
    if (factory_only && count > static_cast<int>(rule.second)) {
        return decided(false, "the chimney has " + std::to_string(count) + " elbows");
    }
    return fold.result();
}

Verdict lean_factory(const View& view, const catalog::Rule& rule) {
    return lean(view, rule, true);
}

Verdict lean_any(const View& view, const catalog::Rule& rule) {
    return lean(view, rule, false);
}

Verdict bends_au(const View& view, const catalog::Rule& rule) {
    Fold fold{"the chimney has no elbow"};
    int count = 0;
    for (const Piece* piece : view.chimney()) {
        if (piece->section->turn_rad > 0.02) {
            ++count;
            fold.add(
                at(view,
                   *piece,
                   at_most(view, piece->section->turn_rad, rule.second, Kind::angle, "it turns")));
        }
    }
    return count > static_cast<int>(rule.figure)
               ? decided(false, "the chimney has " + std::to_string(count) + " bends")
               : fold.result();
}

Verdict rating(const View& view, const catalog::Rule& rule) {
    const Piece* chimney = first_of(view, WallKind::insulated);
    if (chimney == nullptr) {
        return not_here("there is no factory-built chimney");
    }
    double hottest_k = 0.0;
    for (const StateResult& state : view.states()) {
        if (state.kind == StateKind::high_fire) {
            hottest_k = std::max(hottest_k, state.gas_temperature_k);
        }
    }
    if (hottest_k <= 0.0) {
        return unknown({"/appliance/gas_temperature"});
    }
    return at(view,
              *chimney,
              at_most(view, hottest_k, rule.figure, Kind::temperature, "gas at the outlet"));
}

Verdict marked(const View& view, ChimneyRating wanted) {
    const Piece* chimney = first_of(view, WallKind::insulated);
    const ApplianceType type = view.heater().type;
    const bool closed = type == ApplianceType::stove || type == ApplianceType::furnace
                        || type == ApplianceType::boiler;
    if (chimney == nullptr) {
        return not_here("there is no factory-built chimney");
    }
    if (!view.solid_fuel() || !closed) {
        return not_here("for closed solid-fuel heaters");
    }
    const auto& mark = chimney->part->rating;
    return mark ? at(view,
                     *chimney,
                     decided(*mark == wanted, "it is marked: " + std::string{name(*mark)}))
                : unknown({chimney->key("rating")}, "chimney marked: " + std::string{name(wanted)});
}

Verdict type_ht(const View& view, const catalog::Rule& /*rule*/) {
    return marked(view, ChimneyRating::ht);
}

Verdict class_650(const View& view, const catalog::Rule& /*rule*/) {
    return marked(view, ChimneyRating::c650);
}

Verdict spark_screen(const View& view, const catalog::Rule& rule) {
    Fold fold{"there is no screen at the chimney top"};
    for (const Piece& piece : view.pieces) {
        const PartKind kind = piece.section->kind;
        if (kind == PartKind::screen && !piece.part->mesh_m) {
            fold.add(unknown({piece.key("mesh")},
                             "mesh of " + view.show(rule.figure, Kind::length) + " to "
                                 + view.show(rule.second, Kind::length)));
        } else if ((kind == PartKind::cap || kind == PartKind::screen) && piece.part->mesh_m) {
            const double mesh_m = *piece.part->mesh_m;
            fold.add(at(view,
                        piece,
                        !view.reaches(rule.second, mesh_m, Kind::length)
                            ? at_most(view, mesh_m, rule.second, Kind::length, "mesh")
                            : at_least(view, mesh_m, rule.figure, Kind::length, "mesh")));
        }
    }
    return fold.result();
}

Verdict cap_gap(const View& view, const catalog::Rule& rule) {
    for (const Piece& piece : view.pieces) {
        const bool flat = piece.section->kind == PartKind::cap
                          && piece.part->build.value_or(Build::plain) == Build::plain;
        if (flat) {
            return at(view,
                      piece,
                      given_at_least(view,
                                     piece.part->cap_gap_m,
                                     rule.figure * piece.section->built_diameter_m,
                                     Kind::length,
                                     "opening under the cap",
                                     piece.key("gap")));
        }
    }
    return not_here("there is no plain cap");
}

Verdict braced(const View& view, const catalog::Rule& rule) {
    const Roof& roof = view.written.site.roof;
    const bool metal = !view.pieces.empty() && !masonry(view.pieces.back());
    if (!metal) {
        return not_here("the chimney is masonry");
    }
    if (!roof.top_above_roof_m) {
        return unknown({"/site/roof/top_above_roof"},
                       "braced, where it is more than " + view.show(rule.figure, Kind::length)
                           + " above the roof");
    }
    if (view.reaches(rule.figure, *roof.top_above_roof_m, Kind::length)) {
        return not_here("it is low enough above the roof");
    }
    return roof.braced ? decided(*roof.braced, *roof.braced ? "it is braced" : "it is not braced")
                       : unknown({"/site/roof/braced"}, "the part above the roof braced");
}

constexpr auto chimney_entries = std::to_array<Entry>({
    {"masonry-must-be-lined", lined},
    {"uk-must-be-lined", lined},
    {"ca-must-be-lined", lined},
    {"au-must-be-lined", lined},
    {"de-must-be-lined", lined},
    {"trade-must-be-lined", lined},
    {"chimney-cleanout", cleanout},
    {"factory-chimney-offset", lean_factory},
    {"ca-flue-slope", lean_any},
    {"au-bends", bends_au},
    {"factory-chimney-rating", rating, Needs::solution},
    {"factory-chimney-type-ht", type_ht},
    {"ca-factory-chimney", class_650},
    {"spark-arrester", spark_screen},
    {"rain-cap-area", cap_gap},
    {"trade-brace", braced},
});

} // namespace

std::span<const Entry> chimney_checks() {
    return chimney_entries;
}

} // namespace fluewright::checking
