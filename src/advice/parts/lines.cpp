#include "box.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "small.hpp"
#include "stretches.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

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
    return format_quantity(length_m, Kind::length, job.view.resolved.units, 4);
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
                                  .at_hand = stock.at_hand.has_value(),
                                  .diameter_m = group.diameter_m,
                                  .length_m = stock.length_m,
                                  .pipe = true,
                                  .in_run = true,
                                  .telescopes = stock.telescopes()});
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

        struct Bought {
            StretchPiece piece;
            double count;
        };

        std::vector<Bought> bought;
        for (const StretchPiece& piece : stretch.pieces) {
            const auto same = std::find_if(bought.begin(), bought.end(), [&](const Bought& b) {
                return b.piece.at_hand == piece.at_hand && b.piece.telescopes == piece.telescopes
                       && (piece.telescopes || std::abs(b.piece.length_m - piece.length_m) < 1e-4)
                       && std::abs(b.piece.from_m - piece.from_m) < 1e-4;
            });
            if (same != bought.end()) {
                same->count += 1.0;
            } else {
                bought.push_back({piece, 1.0});
            }
        }
        for (const Bought& b : bought) {
            // How far it is drawn out stands with its stretch.
            const std::string what =
                (b.piece.telescopes ? ", telescoping to " : ", length of ")
                + shown(job, b.piece.telescopes ? b.piece.from_m : b.piece.length_m);
            list.lines.push_back({.what = stretch.wall + what,
                                  .size = stretch.size,
                                  .count = b.count,
                                  .unit = "",
                                  .weight_kg = mass * b.piece.from_m * b.count,
                                  .where = stretch.place,
                                  .at_hand = b.piece.at_hand,
                                  .diameter_m = stretch.diameter_m,
                                  .length_m = b.piece.from_m,
                                  .pipe = true,
                                  .in_run = true,
                                  .telescopes = b.piece.telescopes});
        }
    }
}

/// Pipe that the box does not reach for.
void pipe_short(const Job& job) {
    for (const PipeStretch& stretch : job.list.stretches) {
        if (job.from_box && stretch.off_m < 0.0) {
            job.list.lines.push_back({.what = stretch.wall + ", more pipe",
                                      .size = stretch.size,
                                      .count = -stretch.off_m,
                                      .unit = "m",
                                      .where = stretch.place,
                                      .why = "what is at hand does not reach; each joint takes its "
                                             "lap beside (computed)",
                                      .diameter_m = stretch.diameter_m});
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
    if (piece.section->kind == PartKind::tee || piece.section->kind == PartKind::draft_regulator) {
        return 1.5 * d + 3.0 * collar_m; // of a regulator, its tee
    }
    return piece.part->taper_length_m.value_or(0.1) + 2.0 * collar_m;
}

/// The bore that a part stands on.
const FlueBore& bore_below(const Job& job, const Piece& piece) {
    const Run& run = job.view.resolved.run;
    return piece.index > 0 ? run.parts[static_cast<std::size_t>(piece.index) - 1].bore
                           : run.collar.bore;
}

/// The size a fitting is bought by: of what changes the size both, that towards the heater first.
std::string size_of(const Job& job, const Piece& piece) {
    const UnitSystem units = job.view.resolved.units;
    const std::string size = bore_name(piece.run_part->bore, units);
    return piece.run_part->changes_size() ? bore_name(bore_below(job, piece), units) + " to " + size
                                          : size;
}

/// "oval-to-round " of a part that changes the shape as well as the size; else nothing.
std::string shape_change(const Job& job, const Piece& piece) {
    const FlueBore& above = piece.run_part->bore;
    const FlueBore& below = bore_below(job, piece);
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
        return "key damper";
    case PartKind::draft_regulator:
        return "draft regulator";
    case PartKind::draft_hood:
        return "draft hood";
    case PartKind::screen:
        return "screen";
    case PartKind::cap: {
        const Given& mesh = piece.part->mesh_m;
        return std::string{name(piece.part->build.value_or(Build::plain))} + " cap"
               + (mesh ? " with a screen of " + job.view.show(*mesh, Kind::length) : "");
    }
    default:
        return piece.part->fitting.value_or("fitting");
    }
}

std::optional<StockKind> stock_kind_of(PartKind kind) {
    switch (kind) {
    case PartKind::elbow:
        return StockKind::elbow;
    case PartKind::tee:
        return StockKind::tee;
    case PartKind::reducer:
        return StockKind::reducer;
    case PartKind::increaser:
        return StockKind::increaser;
    case PartKind::damper:
        return StockKind::damper;
    case PartKind::cap:
        return StockKind::cap;
    default:
        return std::nullopt;
    }
}

/// Whether a fitting of the run lies in the box; it is taken out.
bool from_box(const Job& job, const Piece& piece) {
    const auto kind = stock_kind_of(piece.section->kind);
    const FlueBore& bore = piece.run_part->bore;
    if (!kind || !bore.round()) {
        return false;
    }
    const bool any_wall = *kind == StockKind::cap || *kind == StockKind::damper;
    WantedFitting wanted{.kind = *kind,
                         .wall = any_wall ? std::string{} : piece.wall->name,
                         .diameter_m = bore.diameter_m,
                         .to_diameter_m = std::nullopt,
                         .angle_rad = std::nullopt,
                         .heater_end = piece.part->heater_end,
                         .chimney_end = piece.part->chimney_end};
    if (*kind == StockKind::elbow) {
        wanted.angle_rad = piece.section->turn_rad;
    }
    if (piece.run_part->changes_size()) {
        wanted.to_diameter_m = bore.diameter_m;
        wanted.diameter_m = bore_below(job, piece).diameter_m;
    }
    return take_fitting(job, wanted);
}

/// The tee that a draft regulator stands on and the run does not name.
void regulator_tee(const Job& job, const Piece& piece) {
    const FlueBore& bore = piece.run_part->bore;
    const WantedFitting wanted{.kind = StockKind::tee,
                               .wall = piece.wall->name,
                               .diameter_m = bore.diameter_m,
                               .to_diameter_m = std::nullopt,
                               .angle_rad = std::nullopt,
                               .heater_end = piece.part->heater_end,
                               .chimney_end = piece.part->chimney_end};
    job.list.lines.push_back(
        {.what = piece.wall->name + ", tee for the regulator",
         .size = bore_name(bore, job.view.resolved.units),
         .count = 1.0,
         .unit = "",
         .weight_kg = wall_mass_kg_m(*piece.wall, bore.diameter_m) * fitting_length_m(piece),
         .where = "under " + job.view.place_of(piece),
         .at_hand = bore.round() && take_fitting(job, wanted),
         .why = "the regulator stands on it; assumed, as the file does not name it",
         .source = std::string{trade_practice},
         .diameter_m = bore.round() ? bore.diameter_m : 0.0,
         .in_run = true});
}

/// What to know before a fitting is bought; empty words where nothing stands against it.
struct Caution {
    std::string words;
    std::string source;
};

/// Whether a finding about the lean of the chimney is about this elbow.
bool leans_too_far(const Job& job, const Finding& finding, const Piece& piece) {
    if (finding.matter->id != "chimney-leans-too-far" || piece.section->kind != PartKind::elbow
        || !piece.in_chimney) {
        return false;
    }
    // It names the worst elbow, and its limit is that of the others of that chimney, too.
    const Piece* worst = piece_of(job, finding.part);
    return finding.part == piece.index
           || (worst != nullptr && finding.limit && worst->wall == piece.wall
               && !job.view.reaches(*finding.limit, piece.section->turn_rad, Kind::angle));
}

Caution caution_of(const Job& job, const Piece& piece) {
    if (piece.section->kind == PartKind::draft_hood) {
        return {"comes with the heater; take no other than its maker names",
                std::string{trade_practice}};
    }
    for (const Finding& finding : job.findings) {
        if (leans_too_far(job, finding, piece)) {
            return {std::string{finding.matter->title} + ": " + finding.message + ' '
                        + std::string{finding.what_to_do()},
                    std::string{finding.sources.front().check->source}};
        }
    }
    return {};
}

void fittings(const Job& job) {
    for (const Piece& piece : job.view.pieces) {
        const PartKind kind = piece.section->kind;
        const bool open_end = kind == PartKind::cap && piece.part->build == Build::open;
        const bool brick = piece.wall->kind == WallKind::masonry && kind != PartKind::cap;
        if (piece.has_length() || kind == PartKind::obstruction || open_end || brick) {
            continue;
        }
        if (takes_a_tee(job, piece)) {
            regulator_tee(job, piece);
        }
        Caution caution = caution_of(job, piece);
        const bool piped = kind == PartKind::elbow || kind == PartKind::tee
                           || kind == PartKind::reducer || kind == PartKind::increaser;
        const double mass = wall_mass_kg_m(*piece.wall, piece.run_part->bore.diameter_m);
        job.list.lines.push_back(
            {.what = fitting_name(job, piece),
             .size = size_of(job, piece),
             .count = 1.0,
             .unit = "",
             .weight_kg = piped ? mass * fitting_length_m(piece) : 0.0,
             .where = job.view.place_of(piece),
             .at_hand = from_box(job, piece),
             .why = std::move(caution.words),
             .source = std::move(caution.source),
             .diameter_m = piece.run_part->bore.round() ? piece.run_part->bore.diameter_m : 0.0,
             .in_run = true});
    }
}

} // namespace

void price_lines(const Job& job) {
    PartsList& list = job.list;
    const auto& prices = job.prices.prices;
    if (std::none_of(prices.begin(), prices.end(), [](const PiecePrice& price) {
            return price.each || price.per_metre;
        })) {
        return; // a template with nothing put in yet prices nothing
    }
    list.currency = job.prices.currency;
    double sum = 0.0;
    for (PartsLine& line : list.lines) {
        if (line.at_hand) {
            continue;
        }
        std::optional<double> each;
        for (const PipeStretch& stretch : list.stretches) {
            if (line.pipe && !each && line.what.starts_with(stretch.wall)) {
                each = job.prices.of_length(
                    stretch.wall, line.diameter_m, line.length_m, line.telescopes);
            }
        }
        if (!line.pipe) {
            each = job.prices.of_part(line.what, line.diameter_m);
        }
        if (each) {
            line.price = *each * line.count;
            sum += *line.price;
        } else {
            ++list.unpriced;
        }
    }
    list.price = sum;
}

void pipe_lines(const Job& job) {
    pipe(job);
    pipe_short(job);
    fittings(job);
}

} // namespace parts
} // namespace fluewright
