#include "advice/checks/wall_system.hpp"
#include "rule_check.hpp"

#include <algorithm>
#include <array>

/// What the pipe before the chimney passes through, and where it must not stand.
namespace fluewright::checking {
namespace {

constexpr std::string_view no_pipe_here = "there is no such pipe before the chimney";

/// Whether an upright goes on in the open as stovepipe: there is a roof, or a ceiling and a roof,
/// between, whatever the file leaves out.
bool leads_up_through_roof(const View& view, const Piece& piece) {
    const auto next = static_cast<std::size_t>(&piece - view.pieces.data()) + 1;
    if (next >= view.pieces.size()) {
        return false;
    }
    const Piece& behind = view.pieces[next];
    return piece.section->zone == Zone::room && behind.section->zone == Zone::outdoors
           && piece.run_part->lie == Lie::upright && behind.run_part->lie == Lie::upright
           && !is_chimney_wall(behind.run_part->wall_kind);
}

/// Whether a piece goes through one of `forbidden`, where its zone or the file tells.
std::optional<Verdict>
told_passage(const View& view, const Piece& piece, std::span<const Passage> forbidden) {
    const Zone zone = piece.section->zone;
    if (zone == Zone::attic || zone == Zone::chase) {
        return at(view, piece, decided(false, "it is in the " + std::string{name(zone)}));
    }
    const Passage passes = piece.part->passes.value_or(Passage::nothing);
    if (passes == Passage::nothing && leads_up_through_roof(view, piece)) {
        return at(view, piece, decided(false, "it goes on outdoors: through the roof"));
    }
    if (!piece.part->passes) {
        return std::nullopt;
    }
    const bool bad = std::find(forbidden.begin(), forbidden.end(), passes) != forbidden.end();
    return at(view, piece, decided(!bad, "it passes: " + std::string{name(passes)}));
}

/// Whether `pipes` go through one of `forbidden`; where no part says what it passes, only the zone
/// can tell.
Verdict passes_none(const View& view,
                    const std::vector<const Piece*>& pipes,
                    std::span<const Passage> forbidden,
                    std::string_view asked) {
    Fold fold{no_pipe_here};
    for (const Piece* piece : pipes) {
        if (piece->has_passage()) {
            const std::optional<Verdict> told = told_passage(view, *piece, forbidden);
            fold.add(told ? *told : unknown({piece->key("passes")}, std::string{asked}));
        }
    }
    return fold.result();
}

constexpr std::string_view begins_before =
    "through no floor, ceiling, attic, closet or roof; a chimney begins before";

/// The single-wall pipe of a solid-fuel heater before the chimney.
std::vector<const Piece*> single_wall_pipe(const View& view) {
    std::vector<const Piece*> list;
    for (const Piece* piece : view.connector()) {
        if (view.solid_fuel() && piece->is_single() && piece->has_passage()) {
            list.push_back(piece);
        }
    }
    return list;
}

/// A vent listed for the fuel goes through them as its label says, with firestops of its own.
Verdict passes_no_floor(const View& view, const catalog::Rule& /*rule*/) {
    std::vector<const Piece*> pipes = view.connector();
    std::erase_if(pipes, [&](const Piece* piece) {
        return piece->wall->is_vent_for(view.heater().fuel_group);
    });
    return passes_none(view, pipes, floors_and_roofs, begins_before);
}

Verdict single_passes_no_floor(const View& view, const catalog::Rule& /*rule*/) {
    return passes_none(view, single_wall_pipe(view), floors_and_roofs, begins_before);
}

/// Whether single-wall pipe that the file says nothing of goes on beyond the room it is in: upward
/// into the next piece's zone, or past where ceilings are.
bool may_leave_room(const View& view, const Piece& piece, const Piece* next) {
    constexpr double highest_ceiling_m = 3.0; // judgement: a high room
    const RunPart& part = *piece.run_part;
    const bool indoors = part.zone.value == Zone::room;
    const bool goes_on = next != nullptr && next->run_part->zone.value != part.zone.value
                         && !leads_out_through_wall(part, *next->run_part);
    const bool high =
        part.rise_m > 0.0 && view.heater().outlet_height_m + part.top_height_m > highest_ceiling_m;
    return indoors && (goes_on || high);
}

/// As the trade asks it: of pipe that may leave the room, not of every length in sight.
Verdict single_stays_in_sight(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{no_pipe_here};
    const std::vector<const Piece*> pipes = single_wall_pipe(view);
    for (std::size_t i = 0; i < pipes.size(); ++i) {
        const Piece& piece = *pipes[i];
        const Piece* next = i + 1 < pipes.size() ? pipes[i + 1] : nullptr;
        if (const std::optional<Verdict> told = told_passage(view, piece, floors_and_roofs)) {
            fold.add(*told);
        } else if (may_leave_room(view, piece, next)) {
            fold.add(unknown({piece.key("passes")}, std::string{begins_before}));
        } else {
            fold.add(at(view, piece, decided(true, "nothing in the file leads it out of sight")));
        }
    }
    return fold.result();
}

Verdict stays_in_room(const View& view, const catalog::Rule& /*rule*/) {
    constexpr std::array forbidden{Passage::floor,
                                   Passage::ceiling,
                                   Passage::attic,
                                   Passage::closet,
                                   Passage::wall,
                                   Passage::roof};
    return passes_none(view,
                       view.connector(),
                       forbidden,
                       "through no floor, ceiling, roof space or wall; a chimney begins before");
}

bool through_burning_wall(const Piece& piece) {
    return piece.part->passes == Passage::wall
           && piece.part->pass_through != PassThrough::noncombustible_wall;
}

constexpr std::string_view systems_asked =
    "through a combustible wall only by a ventilated thimble, an insulated length, brick, or with "
    "the wood cut back";

/// What the way through a wall keeps to the wood; nothing where only its label tells, and the file
/// does not.
Given kept_in_wall_m(const Piece& piece, PassThrough way) {
    return way == PassThrough::listed_system ? piece.part->listed_clearance_m
                                             : Given{wall_system(way).kept_m};
}

/// How a piece goes through a wall; nothing where it says that it goes through none.
std::optional<Verdict> way_through(const View& view, const Piece& piece) {
    if (piece.part->passes != Passage::wall) {
        return std::nullopt;
    }
    const auto& way = piece.part->pass_through;
    return way ? at(view,
                    piece,
                    decided(*way != PassThrough::none,
                            "through the wall by: " + std::string{name(*way)}))
               : unknown({piece.key("pass_through")}, std::string{systems_asked});
}

Verdict through_wall(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"no pipe before the chimney passes a wall"};
    for (const Piece* piece : view.connector()) {
        if (!piece->has_passage()) {
            continue;
        }
        if (!piece->part->passes) {
            fold.add(unknown({piece->key("passes")}, std::string{systems_asked}));
        } else if (auto v = way_through(view, *piece)) {
            fold.add(*v);
        }
    }
    return fold.result();
}

/// Whether the wall between a level piece and the next stretch of the run outdoors is passed
/// without a word of it in the file, or against its word that nothing is passed.
bool passes_wall_unsaid(const View& view, const Piece& piece) {
    const auto next = std::find_if(view.pieces.begin(), view.pieces.end(), [&](const Piece& each) {
        return each.index > piece.index && each.has_length();
    });
    return !view.heater().pushed_by_fan && !passes_something(*piece.part)
           && next != view.pieces.end() && !passes_something(*next->part)
           && leads_out_through_wall(*piece.run_part, *next->run_part);
}

Verdict single_through_wall(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"no single-wall pipe passes a wall"};
    for (const Piece* piece : single_wall_pipe(view)) {
        if (auto v = way_through(view, *piece)) {
            fold.add(*v);
        } else if (piece->has_length() && passes_wall_unsaid(view, *piece)) {
            std::vector<std::string> missing{piece->key("pass_through")};
            if (piece->part->passes) {
                missing.insert(missing.begin(), piece->key("passes"));
            }
            fold.add(unknown(std::move(missing), std::string{systems_asked}));
        }
    }
    return fold.result();
}

Verdict measures_of_pass(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"no pipe goes through a combustible wall by a named system"};
    for (const Piece* piece : view.connector()) {
        const auto& way = piece->part->pass_through;
        if (!piece->has_passage() || !through_burning_wall(*piece) || !way
            || *way == PassThrough::none) {
            continue;
        }
        const Given kept_m = kept_in_wall_m(*piece, *way);
        fold.add(kept_m
                     ? at(view,
                          *piece,
                          given_at_least(view,
                                         piece->part->pass_through_clearance_m,
                                         *kept_m,
                                         Kind::length,
                                         "in the wall, with " + std::string{name(*way)}
                                             + ", to the wood",
                                         piece->key("pass_through_clearance")))
                     : unknown({piece->key("listed_clearance")}, "in the wall as the label says"));
    }
    return fold.result();
}

Verdict filling_in_wall(const View& view, const catalog::Rule& rule) {
    Fold fold{"no connector passes a combustible wall"};
    for (const Piece* piece : view.connector()) {
        if (piece->has_passage() && through_burning_wall(*piece)) {
            fold.add(at(view,
                        *piece,
                        given_at_least(view,
                                       piece->part->pass_through_clearance_m,
                                       rule.figure,
                                       Kind::length,
                                       "in the wall, noncombustible filling to the wood",
                                       piece->key("pass_through_clearance"))));
        }
    }
    return fold.result();
}

Verdict three_diameters_in_wall(const View& view, const catalog::Rule& rule) {
    Fold fold{"no single-wall pipe passes a wall without a listed pass-through"};
    for (const Piece* piece : view.connector()) {
        const Part& part = *piece->part;
        const bool bare = part.passes == Passage::wall && piece->is_single()
                          && (!part.pass_through || *part.pass_through == PassThrough::none
                              || *part.pass_through == PassThrough::wood_cut_back);
        if (bare) {
            fold.add(at(view,
                        *piece,
                        given_at_least(view,
                                       part.clearance_m,
                                       rule.figure * piece->section->built_diameter_m,
                                       Kind::length,
                                       "distance in the wall",
                                       piece->key("clearance"))));
        } else if (piece->is_single() && piece->has_passage() && !part.passes) {
            fold.add(unknown({piece->key("passes")}));
        }
    }
    return fold.result();
}

Verdict none_outdoors(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"the run has no single-wall pipe"};
    for (const Piece& piece : view.pieces) {
        if (piece.has_length() && piece.is_single()) {
            const bool out = piece.section->zone == Zone::outdoors;
            fold.add(at(view, piece, decided(!out, out ? "it is outdoors" : "it is indoors")));
        }
    }
    return fold.result();
}

/// The shield that keeps insulation off a factory-built chimney where it passes a ceiling or attic.
Verdict attic_shield(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"no factory-built chimney passes a ceiling or an attic in the file"};
    for (const Piece& piece : view.pieces) {
        const bool passes = piece.run_part->goes_through(Passage::attic).value_or(false)
                            || piece.run_part->goes_through(Passage::ceiling).value_or(false);
        if (piece.wall->kind != WallKind::insulated || !piece.has_passage() || !passes) {
            continue;
        }
        const Flag& shield = piece.part->attic_shield;
        fold.add(shield ? at(view,
                             piece,
                             decided(*shield,
                                     *shield ? "a shield keeps insulation off it"
                                             : "no shield keeps insulation off it"))
                        : unknown({piece.key("attic_shield")},
                                  "a steel shield where insulation could fall against it"));
    }
    return fold.result();
}

constexpr auto passage_entries = std::to_array<Entry>({
    {"connector-no-floor-ceiling", passes_no_floor},
    {"ca-no-floor-ceiling", passes_no_floor},
    {"au-no-floor-ceiling", single_passes_no_floor},
    {"de-no-floor-ceiling", passes_no_floor},
    {"trade-pipe-passes", single_stays_in_sight},
    {"trade-wall-pass", single_through_wall},
    {"uk-pipe-stays-in-room", stays_in_room},
    {"connector-wall-pass-through", through_wall},
    {"pass-through-measures", measures_of_pass},
    {"de-wall-pass", filling_in_wall},
    {"connector-clearance-wall-pass", three_diameters_in_wall},
    {"connector-not-outside", none_outdoors},
    {"insulation-shield", attic_shield},
    {"ca-attic-shield", attic_shield},
    {"trade-attic-shield", where_told<attic_shield>},
});

} // namespace

std::span<const Entry> passage_checks() {
    return passage_entries;
}

} // namespace fluewright::checking
