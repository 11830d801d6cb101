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

std::string one_or(double count, std::string_view one, std::string_view many) {
    return std::string{count < 1.5 ? one : many};
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

bool is_metal_chimney(const Piece& piece) {
    return piece.wall->kind == WallKind::insulated || piece.wall->kind == WallKind::double_wall;
}

void level_supports(const Job& job) {
    const double apart_m = catalog::default_of(DefaultId::level_support_apart_m).value;
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.level && stretch.kind != WallKind::masonry) {
            const double count = std::max(0.0, std::ceil(stretch.drawn_m / apart_m - 1e-6) - 1.0);
            add(job,
                {.what = one_or(count, "hanger or bracket", "hangers or brackets"),
                 .size = stretch.size,
                 .count = count,
                 .where = stretch.place,
                 .why = "one every " + job.view.show(apart_m, Kind::length) + " of level pipe",
                 .source = source_of(DefaultId::level_support_apart_m),
                 .diameter_m = stretch.diameter_m});
        }
    }
}

namespace {

/// What bears the chimney, by its route.
std::string support_of(const Job& job, const Piece& first, bool on_tee) {
    if (first.section->zone == Zone::outdoors) {
        if (!job.view.resolved.walls_outdoors) {
            return "roof support for the chimney";
        }
        return on_tee ? "wall support with a plate under the tee" : "wall support for the chimney";
    }
    return first.section->zone == Zone::attic   ? "attic support for the chimney"
           : first.section->zone == Zone::chase ? "floor support for the chimney"
                                                : "support box or ceiling support for the chimney";
}

/// How far a metal chimney stands over the roof: as the file says, else all of it outdoors where
/// the chimney goes up in the house; 0 where nobody can tell.
double above_roof_m(const Job& job) {
    if (const Given& told = job.view.written.site.roof.mouth_above_roof_m) {
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

void chimney_supports(const Job& job) {
    const double apart_m = catalog::default_of(DefaultId::wall_bands_apart_m).value;
    const auto chimney = job.view.chimney();
    const auto first = std::find_if(
        chimney.begin(), chimney.end(), [](const Piece* p) { return p->has_length(); });
    if (first == chimney.end() || !is_metal_chimney(**first)) {
        return;
    }
    // A tee at the foot of the chimney stands on the support itself.
    const Piece* foot = piece_of(job, (*first)->index - 1);
    const bool on_tee =
        foot != nullptr && foot->section->kind == PartKind::tee && is_metal_chimney(*foot);
    PartsLine support{.what = support_of(job, **first, on_tee),
                      .where = "under " + job.view.place_of(on_tee ? *foot : **first),
                      .why = "bears the chimney",
                      .source = std::string{trade_practice}};
    take_size(job, **first, support);
    add(job, std::move(support));
    double beside_wall_m = 0.0;
    for (const Piece* piece : chimney) {
        beside_wall_m += job.view.outdoors_below_roof(*piece) ? piece->section->length_m : 0.0;
    }
    // What stands over the roof has no wall to be held by.
    if (const Given& over = job.view.written.site.roof.mouth_above_roof_m) {
        beside_wall_m = std::max(0.0, beside_wall_m - *over);
    }
    const double bands = std::floor(beside_wall_m / apart_m);
    PartsLine held{.what = one_or(bands, "wall band", "wall bands"),
                   .count = bands,
                   .where = "the wall outdoors",
                   .why = "one every " + job.view.show(apart_m, Kind::length),
                   .source = source_of(DefaultId::wall_bands_apart_m)};
    take_size(job, **first, held);
    add(job, std::move(held));
    brace(job, **first);
}

void liner_extras(const Job& job) {
    for (const PipeStretch& stretch : job.list.stretches) {
        if (stretch.kind != WallKind::liner) {
            continue;
        }
        const Piece& first = *piece_of(job, stretch.parts.front());
        if (stretch.to_mouth) {
            PartsLine plate{.what = "top plate with clamp for the liner",
                            .where = "the top of the old chimney",
                            .why = "bears the liner and shuts the gap round it",
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
                 .why = "the wall named is an insulated liner (computed)"});
        }
    }
}

} // namespace fluewright::parts
