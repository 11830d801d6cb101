#include "rule_check.hpp"

#include <algorithm>
#include <array>

/// What the pipe before the chimney passes through, and where it must not stand.
namespace fluewright::checking {
namespace {

/// Whether the connector goes through one of `forbidden`; where no part says what it passes, only
/// the zone can tell.
Verdict passes_none(const View& view, std::span<const Passage> forbidden) {
    const auto pipes = view.connector();
    Fold fold{"there is no such pipe before the chimney"};
    for (const Piece* piece : pipes) {
        if (!piece->has_length()) {
            continue;
        }
        const Zone zone = piece->section->zone;
        if (zone == Zone::attic || zone == Zone::chase) {
            fold.add(
                at(view, *piece, decided(false, "it stands in the " + std::string{name(zone)})));
        } else if (piece->part->passes) {
            const bool bad = std::find(forbidden.begin(), forbidden.end(), *piece->part->passes)
                             != forbidden.end();
            fold.add(at(view,
                        *piece,
                        decided(!bad, "it passes: " + std::string{name(*piece->part->passes)})));
        } else {
            fold.add(unknown({piece->key("passes")}));
        }
    }
    return fold.result();
}

Verdict passes_no_floor(const View& view, const catalog::Rule& /*rule*/) {
    constexpr std::array forbidden{
        Passage::floor, Passage::ceiling, Passage::attic, Passage::closet, Passage::roof};
    return passes_none(view, forbidden);
}

Verdict stays_in_room(const View& view, const catalog::Rule& /*rule*/) {
    constexpr std::array forbidden{Passage::floor,
                                   Passage::ceiling,
                                   Passage::attic,
                                   Passage::closet,
                                   Passage::wall,
                                   Passage::roof};
    return passes_none(view, forbidden);
}

Verdict through_wall(const View& view, const catalog::Rule& /*rule*/) {
    Fold fold{"no pipe before the chimney passes a wall"};
    for (const Piece* piece : view.connector()) {
        if (!piece->has_length()) {
            continue;
        }
        if (!piece->part->passes) {
            fold.add(unknown({piece->key("passes")}));
        } else if (*piece->part->passes == Passage::wall) {
            fold.add(piece->part->pass_through
                         ? at(view,
                              *piece,
                              decided(*piece->part->pass_through != PassThrough::none,
                                      "through the wall by: "
                                          + std::string{name(*piece->part->pass_through)}))
                         : unknown({piece->key("pass_through")}));
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
            fold.add(part.clearance_m ? at(view,
                                           *piece,
                                           at_least(view,
                                                    *part.clearance_m,
                                                    rule.figure * piece->section->diameter_m,
                                                    Kind::length,
                                                    "distance in the wall"))
                                      : unknown({piece->key("clearance")}));
        } else if (piece->is_single() && piece->has_length() && !part.passes) {
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
            fold.add(
                at(view, piece, decided(!out, out ? "it stands outdoors" : "it stands indoors")));
        }
    }
    return fold.result();
}

constexpr auto passage_entries = std::to_array<Entry>({
    {"connector-no-floor-ceiling", passes_no_floor},
    {"ca-no-floor-ceiling", passes_no_floor},
    {"uk-pipe-stays-in-room", stays_in_room},
    {"connector-wall-pass-through", through_wall},
    {"connector-clearance-wall-pass", three_diameters_in_wall},
    {"connector-not-outside", none_outdoors},
});

} // namespace

std::span<const Entry> passage_checks() {
    return passage_entries;
}

} // namespace fluewright::checking
