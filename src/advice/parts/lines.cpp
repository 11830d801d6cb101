#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "stretches.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace fluewright {

double wall_mass_kg_m(const WallBuild& wall, double inside_diameter_m) {
    double inner_m = 0.5 * inside_diameter_m;
    double mass = 0.0;
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        const WallLayer& layer = wall.layers[i];
        const double outer_m = inner_m + layer.thickness_m;
        if (!layer.air_gap) {
            mass += constants::pi * (outer_m * outer_m - inner_m * inner_m) * layer.density_kg_m3;
        }
        inner_m = outer_m;
        if (wall.kind == WallKind::liner) {
            break; // the old chimney round it stands already
        }
    }
    return mass;
}

namespace parts {
namespace {

using checking::Piece;

const WallBuild& wall_of(const Job& job, const PipeStretch& stretch) {
    for (const Piece& piece : job.view.pieces) {
        if (piece.index == stretch.parts.front()) {
            return *piece.wall;
        }
    }
    return job.view.resolved.walls.front();
}

std::string shown(const Job& job, double length_m) {
    return job.view.show(length_m, Kind::length);
}

/// Lengths as bought: bars of the cut list, or whole pieces.
void pipe(const Job& job) {
    PartsList& list = job.list;
    for (const CutGroup& group : list.groups) {
        const auto stretch =
            std::find_if(list.stretches.begin(), list.stretches.end(), [&](const PipeStretch& s) {
                return s.wall == group.wall && s.size == group.size;
            });
        const double mass = wall_mass_kg_m(wall_of(job, *stretch), group.diameter_m);
        std::map<std::size_t, double> bars;
        for (const Bar& bar : group.plan.bars) {
            bars[bar.length] += 1.0;
        }
        for (const auto& [length, count] : bars) {
            const BarLength& stock = group.lengths[length];
            list.lines.push_back({.what = group.wall + ", length of " + shown(job, stock.length_m),
                                  .size = group.size,
                                  .count = count,
                                  .unit = "",
                                  .weight_kg = mass * stock.length_m * count,
                                  .where = "see the cuts",
                                  .at_hand = stock.at_hand.has_value()});
        }
    }
    for (const PipeStretch& stretch : list.stretches) {
        const bool cut = std::any_of(list.groups.begin(), list.groups.end(), [&](const auto& g) {
            return g.wall == stretch.wall && g.size == stretch.size;
        });
        if (cut || stretch.kind == WallKind::masonry) {
            continue;
        }
        const double mass = wall_mass_kg_m(wall_of(job, stretch), stretch.diameter_m);
        std::map<std::pair<bool, long>, double> counts;
        for (std::size_t i = 0; i < stretch.pieces_m.size(); ++i) {
            counts[{i < stretch.at_hand, std::lround(stretch.pieces_m[i] * 1e4)}] += 1.0;
        }
        for (const auto& [key, count] : counts) {
            const double length_m = static_cast<double>(key.second) * 1e-4;
            const bool telescopes =
                stretch.telescopes && std::abs(length_m - stretch.pieces_m.back()) < 1e-4;
            list.lines.push_back({.what = stretch.wall
                                          + (telescopes ? ", telescoping, set to " : ", length of ")
                                          + shown(job, length_m),
                                  .size = stretch.size,
                                  .count = count,
                                  .unit = "",
                                  .weight_kg = mass * length_m * count,
                                  .where = stretch.place,
                                  .at_hand = key.first});
            list.bought_m += key.first ? 0.0 : length_m * count;
        }
    }
}

/// Metal in a fitting, as an equal length of pipe.
double fitting_length_m(const Piece& piece) {
    const double collar_m = catalog::default_of(DefaultId::elbow_collar_m).value;
    const double d = piece.run_part->bore.diameter_m;
    if (piece.section->kind == PartKind::elbow) {
        return 0.75 * d * piece.section->turn_rad + 2.0 * collar_m;
    }
    if (piece.section->kind == PartKind::tee) {
        return 1.5 * d + 3.0 * collar_m;
    }
    return piece.part->taper_length_m.value_or(0.1) + 2.0 * collar_m;
}

/// "oval-to-round " of a part that changes the shape as well as the size; else nothing.
std::string shape_change(const Job& job, const Piece& piece) {
    const Run& run = job.view.resolved.run;
    const FlueBore& above = piece.run_part->bore;
    const FlueBore& below = piece.index > 0
                                ? run.parts[static_cast<std::size_t>(piece.index) - 1].bore
                                : run.collar.bore;
    const std::string_view from = shape_name(below.round(), below.oval);
    const std::string_view to = shape_name(above.round(), above.oval);
    return from == to ? "" : std::string{from} + "-to-" + std::string{to} + ' ';
}

std::string fitting_name(const Job& job, const Piece& piece) {
    const std::string wall = piece.wall->name;
    const std::string angle = job.view.show(piece.section->turn_rad, Kind::angle);
    switch (piece.section->kind) {
    case PartKind::elbow:
        return wall + ", elbow of " + angle;
    case PartKind::tee:
        return wall + (piece.section->cleanout ? ", tee with cleanout" : ", tee");
    case PartKind::reducer:
        return wall + ", " + shape_change(job, piece) + "reducer";
    case PartKind::increaser:
        return wall + ", " + shape_change(job, piece) + "increaser";
    case PartKind::damper:
        return "damper";
    case PartKind::screen:
        return "screen";
    case PartKind::cap:
        return std::string{name(piece.part->build.value_or(Build::plain))} + " cap";
    default:
        return piece.part->fitting.value_or("fitting");
    }
}

void fittings(const Job& job) {
    for (const Piece& piece : job.view.pieces) {
        const PartKind kind = piece.section->kind;
        const bool open_end = kind == PartKind::cap && piece.part->build == Build::open;
        const bool brick = piece.wall->kind == WallKind::masonry && kind != PartKind::cap;
        if (piece.has_length() || kind == PartKind::obstruction || open_end || brick) {
            continue;
        }
        const bool piped = kind == PartKind::elbow || kind == PartKind::tee
                           || kind == PartKind::reducer || kind == PartKind::increaser;
        const double mass = wall_mass_kg_m(*piece.wall, piece.run_part->bore.diameter_m);
        job.list.lines.push_back({.what = fitting_name(job, piece),
                                  .size = bore_name(piece.run_part->bore, job.view.resolved.units),
                                  .count = 1.0,
                                  .unit = "",
                                  .weight_kg = piped ? mass * fitting_length_m(piece) : 0.0,
                                  .where = job.view.place_of(piece),
                                  .at_hand = false});
    }
}

} // namespace

void pipe_lines(const Job& job) {
    pipe(job);
    fittings(job);
}

} // namespace parts
} // namespace fluewright
