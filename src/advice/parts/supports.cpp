#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "small.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::parts {

using checking::Piece;

void add(const Job& job, PartsLine line) {
    if (line.count > 0.0) {
        job.list.lines.push_back(std::move(line));
    }
}

const Piece* piece_of(const Job& job, int part) {
    for (const Piece& piece : job.view.pieces) {
        if (piece.index == part) {
            return &piece;
        }
    }
    return nullptr;
}

std::string source_of(DefaultId id) {
    const catalog::Default& row = catalog::default_of(id);
    return row.source == "practice" ? std::string{trade_practice} : std::string{row.source};
}

void take_size(const Job& job, const Piece& piece, PartsLine& line) {
    line.size = bore_name(piece.run_part->bore, job.view.resolved.units);
    line.diameter_m = piece.run_part->bore.round() ? piece.run_part->bore.diameter_m : 0.0;
}

const Piece* tee_of_regulator(const Job& job, const Piece& regulator) {
    for (const int beside : {regulator.index - 1, regulator.index + 1}) {
        const Piece* piece = piece_of(job, beside);
        if (piece != nullptr && piece->section->kind == PartKind::tee
            && !piece->section->cleanout) {
            return piece;
        }
    }
    return nullptr;
}

bool takes_a_tee(const Job& job, const Piece& piece) {
    return piece.section->kind == PartKind::draft_regulator && piece.wall->kind != WallKind::masonry
           && tee_of_regulator(job, piece) == nullptr;
}

bool is_metal_chimney(const Piece& piece) {
    return piece.wall->kind == WallKind::insulated || piece.wall->kind == WallKind::double_wall;
}

void level_supports(const Job& job) {
    const double apart_m = catalog::default_of(DefaultId::level_support_apart_m).value;
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.level && stretch.kind != WallKind::masonry) {
            const double count = std::max(0.0, std::ceil(stretch.drawn_m / apart_m - 1e-6) - 1.0);
            add(job,
                {.what = "hanger or bracket",
                 .size = stretch.size,
                 .count = count,
                 .where = stretch.place,
                 .why = "one every " + job.view.show(apart_m, Kind::length) + " of horizontal pipe",
                 .source = source_of(DefaultId::level_support_apart_m),
                 .diameter_m = stretch.diameter_m});
        }
    }
}

namespace {

/// What bears the chimney, by its route.
std::string support_of(const Job& job, const Piece& first, bool on_tee, bool sideways) {
    if (first.section->zone == Zone::outdoors) {
        if (!sideways) {
            return "roof support for the chimney";
        }
        return on_tee ? "wall support with a plate under the tee" : "wall support for the chimney";
    }
    // Where pipe comes up from the room, the ceiling between bears it.
    const Piece* before = nullptr;
    for (const Piece& piece : job.view.pieces) {
        before = piece.has_length() && piece.index < first.index ? &piece : before;
    }
    const Zone zone = first.section->zone;
    const bool from_room = before != nullptr && before->section->zone == Zone::room;
    return zone == Zone::attic && !from_room   ? "attic support for the chimney"
           : zone == Zone::chase && !from_room ? "floor support for the chimney"
                                               : "support box or ceiling support for the chimney";
}

/// Metal vents and chimneys that something must bear: the chimney, else what a vent that counts as
/// connector has outside the room.
std::vector<const Piece*> borne(const Job& job) {
    std::vector<const Piece*> pieces = job.view.chimney();
    if (!pieces.empty()) {
        return pieces;
    }
    for (const Piece& piece : job.view.pieces) {
        if (is_metal_chimney(piece) && (!pieces.empty() || piece.section->zone != Zone::room)) {
            pieces.push_back(&piece);
        }
    }
    return pieces;
}

/// The first piece that what bears the chimney stands under: upright, and where the chimney begins
/// at the heater itself, the one that leaves the room, since no heater bears a chimney.
const Piece* first_borne(const Job& job, const std::vector<const Piece*>& chimney) {
    const auto stands = [](const Piece* piece) { return piece->has_length() && !piece->level(); };
    const auto first = std::find_if(chimney.begin(), chimney.end(), stands);
    if (first == chimney.end()) {
        return nullptr;
    }
    const bool on_heater =
        std::none_of(job.view.pieces.begin(), job.view.pieces.end(), [&](const Piece& piece) {
            return piece.has_length() && piece.index < (*first)->index;
        });
    const auto leaves = std::find_if(first, chimney.end(), [&](const Piece* piece) {
        return stands(piece) && piece->section->zone != (*first)->section->zone;
    });
    return on_heater && leaves != chimney.end() ? *leaves : *first;
}

/// Whether the run leaves the house through a wall and goes up beside it.
bool goes_out_sideways(const Job& job, const std::vector<const Piece*>& chimney) {
    const Piece* before = nullptr;
    for (const Piece& piece : job.view.pieces) {
        if (!piece.has_length()) {
            continue;
        }
        if (piece.section->zone == Zone::outdoors) {
            const bool level = before != nullptr && before->level();
            return job.view.resolved.walls_outdoors
                   || (level && !chimney.empty() && !chimney.front()->in_chimney);
        }
        before = &piece;
    }
    return false;
}

/// How far a metal chimney stands over the roof: as the file says, else all of it outdoors where
/// the chimney goes up in the house; 0 where nobody can tell.
double above_roof_m(const Job& job) {
    if (const Given& told = job.view.written.site.roof.top_above_roof_m) {
        return *told;
    }
    double outdoors_m = 0.0;
    for (const Piece* piece : job.view.chimney()) {
        outdoors_m += piece->section->zone == Zone::outdoors ? piece->section->length_m : 0.0;
    }
    return job.view.resolved.walls_outdoors ? 0.0 : outdoors_m;
}

void brace(const Job& job, const Piece& first) {
    const catalog::Rule* rule = catalog::find_rule("trade-brace");
    const double height_m = above_roof_m(job);
    if (rule == nullptr || job.view.reaches(rule->figure, height_m, Kind::length)) {
        return;
    }
    PartsLine line{.what = "roof brace",
                   .where = "the chimney above the roof",
                   .why = "it stands " + job.view.show(height_m, Kind::length)
                          + " above the roof, more than "
                          + job.view.show(rule->figure, Kind::length),
                   .source = std::string{rule->source}};
    take_size(job, first, line);
    add(job, std::move(line));
}

} // namespace

namespace {

/// Above a step to the side the chimney stands on nothing that its support bears.
void offset_supports(const Job& job, const Piece& first) {
    for (const PipeStretch& stretch : job.list.stretches) {
        const Piece& lowest = *piece_of(job, stretch.parts.front());
        if (lowest.index <= first.index || !is_metal_chimney(lowest) || stretch.level
            || lowest.run_part->lie != Lie::upright) {
            continue;
        }
        const Piece* below = piece_of(job, lowest.index - 1);
        if (below == nullptr || below->section->kind != PartKind::elbow) {
            continue;
        }
        PartsLine line{.what = "support for the chimney above a bend",
                       .where = "above " + job.view.place_of(*below),
                       .why = "carries the chimney above the offset",
                       .source = std::string{trade_practice}};
        take_size(job, lowest, line);
        add(job, std::move(line));
    }
}

/// Single-wall pipe that goes up outdoors beside a wall: nobody else bears it.
void pipe_brackets(const Job& job) {
    const double apart_m = catalog::default_of(DefaultId::wall_bands_apart_m).value;
    for (const PipeStretch& stretch : job.list.stretches) {
        const Piece& first = *piece_of(job, stretch.parts.front());
        const Piece* before = nullptr;
        for (const Piece& piece : job.view.pieces) {
            before = piece.has_length() && piece.index < first.index ? &piece : before;
        }
        if (!first.is_single() || stretch.level || first.section->zone != Zone::outdoors
            || before == nullptr || !before->level()) {
            continue;
        }
        PartsLine line{.what = "wall bracket for the pipe",
                       .count = 1.0 + std::floor(stretch.drawn_m / apart_m),
                       .where = stretch.place + ", outdoors",
                       .why = "one at its foot carries it, one every "
                              + job.view.show(apart_m, Kind::length) + " steadies it in the wind",
                       .source = source_of(DefaultId::wall_bands_apart_m)};
        take_size(job, first, line);
        add(job, std::move(line));
    }
}

} // namespace

void chimney_supports(const Job& job) {
    pipe_brackets(job);
    const double apart_m = catalog::default_of(DefaultId::wall_bands_apart_m).value;
    const std::vector<const Piece*> chimney = borne(job);
    const Piece* first = first_borne(job, chimney);
    if (first == nullptr || !is_metal_chimney(*first)) {
        return;
    }
    // A tee at the foot of the chimney stands on the support itself.
    const Piece* foot = piece_of(job, first->index - 1);
    const bool on_tee =
        foot != nullptr && foot->section->kind == PartKind::tee && is_metal_chimney(*foot);
    const bool sideways = goes_out_sideways(job, chimney);
    PartsLine support{.what = support_of(job, *first, on_tee, sideways),
                      .where = "under " + job.view.place_of(on_tee ? *foot : *first),
                      .why = "carries the chimney",
                      .source = std::string{trade_practice}};
    take_size(job, *first, support);
    add(job, std::move(support));
    offset_supports(job, *first);
    double beside_wall_m = 0.0;
    for (const Piece* piece : chimney) {
        const bool beside = piece->section->zone == Zone::outdoors && sideways && !piece->level();
        beside_wall_m += beside ? piece->section->length_m : 0.0;
    }
    // What stands over the roof has no wall to be held by.
    if (const Given& over = job.view.written.site.roof.top_above_roof_m) {
        beside_wall_m = std::max(0.0, beside_wall_m - *over);
    }
    const double bands = std::floor(beside_wall_m / apart_m);
    PartsLine held{.what = "wall band",
                   .count = bands,
                   .where = "the wall outdoors",
                   .why = "one every " + job.view.show(apart_m, Kind::length),
                   .source = source_of(DefaultId::wall_bands_apart_m)};
    take_size(job, *first, held);
    add(job, std::move(held));
    brace(job, *first);
}

void liner_extras(const Job& job) {
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind != WallKind::liner) {
            continue;
        }
        const Piece& first = *piece_of(job, stretch.parts.front());
        if (stretch.to_top) {
            PartsLine plate{.what = "top plate with clamp for the liner",
                            .where = "the top of the old chimney",
                            .why = "carries the liner and closes the gap around it",
                            .source = std::string{trade_practice}};
            take_size(job, first, plate);
            add(job, std::move(plate));
        }
        const Piece* below = piece_of(job, first.index - 1);
        const bool joined = below == nullptr || below->wall->kind != WallKind::liner;
        PartsLine connector{.what = "liner connector, clamped on",
                            .count = joined ? 1.0 : 0.0,
                            .where = "the lower end of " + stretch.place,
                            .why = "joins pipe and liner",
                            .source = std::string{trade_practice}};
        take_size(job, first, connector);
        add(job, std::move(connector));
        const double joints = std::max(0.0, static_cast<double>(stretch.pieces.size()) - 1.0);
        add(job,
            {.what = "stainless rivets",
             .count = joints * catalog::default_of(DefaultId::joint_fasteners).value,
             .where = "joints of the rigid liner",
             .why = "hold each joint, since nobody gets at them again",
             .source = source_of(DefaultId::joint_fasteners)});
        const WallBuild& wall = *first.wall;
        if (wall.layer_count > 2 && !wall.layers[1].air_gap) {
            const double inner_m = 0.5 * stretch.diameter_m + wall.layers[0].thickness_m;
            const double outer_m = inner_m + wall.layers[1].thickness_m;
            add(job,
                {.what = "loose insulation to pour round the liner",
                 .count = constants::pi * (outer_m * outer_m - inner_m * inner_m) * stretch.drawn_m
                          * wall.layers[1].density_kg_m3,
                 .unit = "kg",
                 .where = stretch.place,
                 .why = "round a bare liner; one sold insulated needs none (computed)"});
        }
    }
}

} // namespace fluewright::parts
