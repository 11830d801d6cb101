#include "fluewright/model/catalog.hpp"
#include "parts_stretches.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::parts {
namespace {

using rule_check::Piece;

bool is_single(const Piece& piece) {
    return piece.wall->kind == "single";
}

bool is_pipe(const Piece& piece) {
    const PartKind kind = piece.section->kind;
    return piece.has_length() || kind == PartKind::elbow || kind == PartKind::tee
           || kind == PartKind::reducer || kind == PartKind::increaser;
}

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

/// Joints of single-wall pipe: one under every piece and fitting of it, one more where it ends.
struct SlipJoints {
    double count{};
    double screws{};
};

SlipJoints slip_joints(const Job& job) {
    const double usual = catalog::default_of("joint_fasteners").value;
    SlipJoints all;
    for (const Piece& piece : job.view.pieces) {
        if (!is_single(piece) || !is_pipe(piece) || piece.has_length()) {
            continue;
        }
        all.count += 1.0;
        all.screws += piece.part->screws.value_or(usual);
    }
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind != "single") {
            continue;
        }
        const auto pieces = static_cast<double>(stretch.pieces_m.size());
        const Part& first = job.view.written.run[static_cast<std::size_t>(stretch.parts.front())];
        all.count += pieces;
        all.screws += pieces * first.screws.value_or(usual);
    }
    return all;
}

void fasteners(const Job& job) {
    const SlipJoints slip = slip_joints(job);
    add(job, "sheet-metal screws, stainless or black", slip.screws, "joints of single-wall pipe");
    add(job,
        "furnace cement",
        slip.count * catalog::default_of("cement_per_joint_kg").value,
        "a thin coat in each of those joints",
        "kg");
    double bands = 0.0;
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind == "insulated" || stretch.kind == "double") {
            bands += std::max(0.0, static_cast<double>(stretch.pieces_m.size()) - 1.0);
        }
    }
    add(job, "locking bands", bands, "joints of double-wall and factory-built pieces");
    double gaskets = 0.0;
    for (const Joint& joint : job.list.joints.joints) {
        gaskets +=
            joint.lower.end == PipeEnd::flange && joint.upper.end == PipeEnd::flange ? 1.0 : 0.0;
    }
    add(job, "flange gaskets with bolts", gaskets, "flanged joints");
}

void adapters(const Job& job) {
    for (const Joint& joint : job.list.joints.joints) {
        if (!joint.turn_round.empty() && joint.fit.bore == Bore::same) {
            continue; // the joints say which part to turn
        }
        if (!joint.fit.adapter.empty()) {
            add(job, joint.fit.adapter, 1.0, joint.place);
        } else if (joint.fit.mating == Mating::points_up) {
            job.list.assumed.push_back("turn the part round " + joint.place
                                       + ": its inserted end points to the chimney");
        }
    }
}

void level_supports(const Job& job) {
    const double apart_m = catalog::default_of("level_support_apart_m").value;
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.level && stretch.kind != "masonry") {
            add(job,
                "hangers or brackets",
                std::max(0.0, std::ceil(stretch.drawn_m / apart_m - 1e-6) - 1.0),
                stretch.place);
        }
    }
}

bool metal_chimney(const Piece& piece) {
    return piece.wall->kind == "insulated" || piece.wall->kind == "double";
}

void chimney_supports(const Job& job) {
    const double apart_m = catalog::default_of("wall_bands_apart_m").value;
    const auto chimney = job.view.chimney();
    const auto first = std::find_if(
        chimney.begin(), chimney.end(), [](const Piece* p) { return p->has_length(); });
    if (first == chimney.end() || !metal_chimney(**first)) {
        return;
    }
    const bool outside = (*first)->section->zone == Zone::outdoors;
    add(job,
        outside ? "wall support for the chimney" : "support box or ceiling support for the chimney",
        1.0,
        "under " + job.view.place_of(**first));
    double outdoors_m = 0.0;
    for (const Piece* piece : chimney) {
        outdoors_m += piece->section->zone == Zone::outdoors ? piece->section->length_m : 0.0;
    }
    add(job, "wall bands", outside ? std::floor(outdoors_m / apart_m) : 0.0, "the wall outdoors");
}

/// Where the run goes from one zone into the next.
void passages(const Job& job) {
    const Piece* before = nullptr;
    for (const Piece& piece : job.view.pieces) {
        if (!piece.has_length()) {
            continue;
        }
        const Zone zone = piece.section->zone;
        if (piece.part->passes == "wall") {
            add(job, "wall thimble", 1.0, job.view.place_of(piece));
        }
        if (before != nullptr && zone != before->section->zone && piece.wall->kind != "masonry") {
            const bool through_wall = before->level() && before->part->passes != "wall";
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
        const bool into_brick =
            before != nullptr && piece.wall->kind == "masonry" && before->wall->kind != "masonry";
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
    add(job, "cleanout plug or cap", plugs, "the tee");
}

} // namespace

void small_lines(const Job& job) {
    adapters(job);
    fasteners(job);
    level_supports(job);
    chimney_supports(job);
    passages(job);
    cleanouts(job);
}

} // namespace fluewright::parts
