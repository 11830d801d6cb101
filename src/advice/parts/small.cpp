#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "stretches.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::parts {
namespace {

using checking::Piece;

void add(const Job& job, std::string what, double count, std::string where, std::string unit = "") {
    if (count > 0.0) {
        job.list.lines.push_back({.what = std::move(what),
                                  .size = {},
                                  .count = count,
                                  .unit = std::move(unit),
                                  .weight_kg = 0.0,
                                  .where = std::move(where),
                                  .at_hand = false});
    }
}

/// Joints of single-wall pipe, and the screws in them.
struct SlipJoints {
    double count{};
    double screws{};
};

std::string one_or(double count, std::string_view one, std::string_view many) {
    return std::string{count < 1.5 ? one : many};
}

bool slips(const EndFacts& facts) {
    return facts.end == PipeEnd::plain || facts.end == PipeEnd::crimped
           || facts.end == PipeEnd::socket;
}

/// How many joints of a kind there are where two ends meet: an adapter makes one joint into two,
/// and each is held as the pipe on its side; a pipe that ends in a thimble is not held at all.
struct Held {
    double slips{};
    double locks{};
    double flanges{};
};

Held held(const Joint& joint) {
    const bool adapted = !joint.turned.adapter.empty();
    Held all;
    for (const EndFacts& facts : {joint.lower, joint.upper}) {
        const double share = adapted ? 1.0 : 0.5;
        all.slips += slips(facts) ? share : 0.0;
        all.locks += facts.end == PipeEnd::locking ? share : 0.0;
        all.flanges += facts.end == PipeEnd::flange ? share : 0.0;
    }
    const bool thimble = joint.lower.end == PipeEnd::open || joint.upper.end == PipeEnd::open;
    return thimble ? Held{} : all;
}

/// Caps lock or clamp on by themselves, and a flexible liner is clamped by its tee and top plate.
bool clamps_itself(const Piece& piece) {
    return piece.section->kind == PartKind::cap || piece.wall->kind == WallKind::liner;
}

const Piece* piece_of(const Job& job, int part) {
    for (const Piece& piece : job.view.pieces) {
        if (piece.index == part) {
            return &piece;
        }
    }
    return nullptr;
}

void fasteners(const Job& job) {
    const double usual = catalog::default_of(DefaultId::joint_fasteners).value;
    SlipJoints slip;
    double bands = 0.0;
    double gaskets = 0.0;
    for (const Joint& joint : job.list.joints.joints) {
        const Piece* above = piece_of(job, joint.above);
        if (above == nullptr || clamps_itself(*above)) {
            continue;
        }
        // Two straights the shop joins into one length share no joint.
        const bool one_stretch =
            std::any_of(job.list.stretches.begin(), job.list.stretches.end(), [&](const auto& s) {
                return std::count(s.parts.begin(), s.parts.end(), joint.above) > 0
                       && std::count(s.parts.begin(), s.parts.end(), joint.below) > 0;
            });
        if (one_stretch) {
            continue;
        }
        const Held here = held(joint);
        slip.count += here.slips;
        slip.screws += here.slips * above->part->screws.value_or(usual);
        bands += here.locks;
        gaskets += here.flanges;
    }
    for (const PipeStretch& stretch : job.list.stretches) {
        const double inner = std::max(0.0, static_cast<double>(stretch.pieces_m.size()) - 1.0);
        if (stretch.kind == WallKind::insulated || stretch.kind == WallKind::double_wall) {
            bands += inner;
        } else if (stretch.kind == WallKind::single) {
            const Part& first =
                job.view.written.run[static_cast<std::size_t>(stretch.parts.front())];
            slip.count += inner;
            slip.screws += inner * first.screws.value_or(usual);
        }
    }
    add(job, "sheet-metal screws, stainless or black", slip.screws, "joints of single-wall pipe");
    const bool hand_fed = is_fed_by_hand(job.view.heater());
    add(job,
        hand_fed ? "furnace cement" : "sealant made for this vent",
        slip.count * catalog::default_of(DefaultId::cement_per_joint_kg).value,
        "a thin coat in each of those joints",
        "kg");
    add(job,
        one_or(bands, "locking band", "locking bands"),
        bands,
        "joints of double-wall and factory-built pieces");
    add(job,
        one_or(gaskets, "flange gasket with bolts", "flange gaskets with bolts"),
        gaskets,
        "flanged joints");
}

void adapters(const Job& job) {
    for (const Joint& joint : job.list.joints.joints) {
        if (!joint.turned.adapter.empty()) {
            add(job, joint.turned.adapter, 1.0, joint.place);
        }
    }
}

void level_supports(const Job& job) {
    const double apart_m = catalog::default_of(DefaultId::level_support_apart_m).value;
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.level && stretch.kind != WallKind::masonry) {
            const double count = std::max(0.0, std::ceil(stretch.drawn_m / apart_m - 1e-6) - 1.0);
            add(job,
                one_or(count, "hanger or bracket", "hangers or brackets"),
                count,
                stretch.place);
        }
    }
}

bool metal_chimney(const Piece& piece) {
    return piece.wall->kind == WallKind::insulated || piece.wall->kind == WallKind::double_wall;
}

void chimney_supports(const Job& job) {
    const double apart_m = catalog::default_of(DefaultId::wall_bands_apart_m).value;
    const auto chimney = job.view.chimney();
    const auto first = std::find_if(
        chimney.begin(), chimney.end(), [](const Piece* p) { return p->has_length(); });
    if (first == chimney.end() || !metal_chimney(**first)) {
        return;
    }
    const bool outside = (*first)->section->zone == Zone::outdoors;
    // A tee at the foot of the chimney stands on the support itself.
    const Piece* foot = piece_of(job, (*first)->index - 1);
    const bool on_tee =
        foot != nullptr && foot->section->kind == PartKind::tee && metal_chimney(*foot);
    add(job,
        outside ? "wall support for the chimney" : "support box or ceiling support for the chimney",
        1.0,
        "under " + job.view.place_of(on_tee ? *foot : **first));
    double outdoors_m = 0.0;
    for (const Piece* piece : chimney) {
        outdoors_m += piece->section->zone == Zone::outdoors ? piece->section->length_m : 0.0;
    }
    const double bands = outside ? std::floor(outdoors_m / apart_m) : 0.0;
    add(job, one_or(bands, "wall band", "wall bands"), bands, "the wall outdoors");
}

/// What holds a liner at the top of the old chimney, and what is poured round it.
void liner_extras(const Job& job) {
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind != WallKind::liner) {
            continue;
        }
        if (stretch.to_mouth) {
            add(job, "top plate with clamp for the liner", 1.0, "the top of the old chimney");
        }
        const WallBuild& wall = *piece_of(job, stretch.parts.front())->wall;
        if (wall.layer_count > 2 && !wall.layers[1].air_gap) {
            const double inner_m = 0.5 * stretch.diameter_m + wall.layers[0].thickness_m;
            const double outer_m = inner_m + wall.layers[1].thickness_m;
            add(job,
                "loose insulation to pour round the liner",
                constants::pi * (outer_m * outer_m - inner_m * inner_m) * stretch.drawn_m
                    * wall.layers[1].density_kg_m3,
                stretch.place,
                "kg");
        }
    }
}

/// Where the run goes from one zone into the next.
void passages(const Job& job) {
    const Piece* before = nullptr;
    for (const Piece& piece : job.view.pieces) {
        if (!piece.has_length()) {
            continue;
        }
        const Zone zone = piece.section->zone;
        if (piece.part->passes == Passage::wall) {
            add(job, "wall thimble", 1.0, job.view.place_of(piece));
        }
        if (before != nullptr && zone != before->section->zone
            && piece.wall->kind != WallKind::masonry) {
            const bool through_wall = before->level() && before->part->passes != Passage::wall;
            if (zone == Zone::outdoors && through_wall) {
                add(job,
                    "wall thimble",
                    1.0,
                    "between " + job.view.place_of(*before) + " and outdoors");
            } else if (zone == Zone::outdoors && !before->level()) {
                add(job,
                    "roof flashing and storm collar",
                    1.0,
                    "under " + job.view.place_of(piece));
            } else if (zone == Zone::attic) {
                add(job,
                    "ceiling firestop and attic shield",
                    1.0,
                    "under " + job.view.place_of(piece));
            }
        }
        const bool into_brick = before != nullptr && piece.wall->kind == WallKind::masonry
                                && before->wall->kind != WallKind::masonry;
        if (into_brick) {
            add(job,
                "thimble for the masonry, cemented in",
                1.0,
                "between " + job.view.place_of(*before) + " and " + job.view.place_of(piece));
        }
        before = &piece;
    }
}

void cleanouts(const Job& job) {
    double plugs = 0.0;
    for (const Piece& piece : job.view.pieces) {
        plugs += piece.section->kind == PartKind::tee && piece.section->cleanout ? 1.0 : 0.0;
    }
    add(job,
        one_or(plugs, "cleanout plug or cap", "cleanout plugs or caps"),
        plugs,
        one_or(plugs, "the tee", "the tees"));
}

} // namespace

void small_lines(const Job& job) {
    adapters(job);
    fasteners(job);
    level_supports(job);
    chimney_supports(job);
    liner_extras(job);
    passages(job);
    cleanouts(job);
}

} // namespace fluewright::parts
