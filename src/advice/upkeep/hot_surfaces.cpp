#include "fluewright/advice/upkeep/hot_surfaces.hpp"

#include "advice/checks/view.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/march/surroundings.hpp"
#include "fluewright/model/march/wall_heat.hpp"
#include "fluewright/physics/wall_beside_pipe.hpp"

#include <algorithm>

namespace fluewright {
namespace {

void rate(HotSurface& hot, const checking::Piece& piece) {
    if (piece.part->rated_surface_temperature_k) {
        hot.rating_k = piece.part->rated_surface_temperature_k;
        hot.rating_of = "as stated";
        return;
    }
    const std::string& metal = piece.wall->inner_material;
    const bool zinc = metal == "galvanized steel";
    const bool painted = metal == "carbon steel" && piece.wall->kind == WallKind::single;
    if (!zinc && !painted) {
        return;
    }
    const catalog::Default& row =
        catalog::default_of(zinc ? DefaultId::galvanized_limit_k : DefaultId::paint_rating_k);
    hot.rating_k = row.value;
    hot.rating_assumed = true;
    hot.rating_of = zinc ? "zinc" : "stove paint, usual rating";
    hot.source = row.source;
}

void estimate_wall(HotSurface& hot, const checking::Piece& piece, const Case& c) {
    if (!piece.part->clearance_m || piece.section->zone == Zone::outdoors) {
        return;
    }
    hot.distance_m = piece.part->clearance_m;
    const wall_beside_pipe::HotPipe pipe{outside_diameter_m(*piece.wall, piece.section->diameter_m),
                                         hot.surface_k,
                                         piece.wall->outer_emissivity,
                                         *hot.distance_m};
    const wall_beside_pipe::Room room{c.room_temperature_k, c.air_pressure_pa};
    hot.bare_wall_k = wall_beside_pipe::bare_wall_k(pipe, room);
    hot.wall_k = hot.bare_wall_k;
    const double gap_m = piece.part->shield_gap_m.value_or(0.0);
    if (piece.part->shield && gap_m > 0.0 && gap_m < *hot.distance_m) {
        hot.shielded = true;
        // New sheet reflects; after some years in a workshop it no longer does.
        constexpr double aged_sheet = 0.8;
        hot.wall_k = wall_beside_pipe::shielded_wall_k(pipe, {gap_m, aged_sheet}, room).wall_k;
    }
}

} // namespace

std::optional<SurfaceRange>
surface_range(const Case& resolved, const StateResult& state, const Section& section) {
    for (std::size_t i = 1; i < state.stations.size(); ++i) {
        const Station& end = state.stations[i];
        if (&resolved.sections[end.section] != &section || section.length_m <= 0.0) {
            continue;
        }
        const Surroundings air = surroundings_of(resolved, state.weather, Fire::burning);
        const double around_k = air.temperature_k[static_cast<std::size_t>(section.zone)];
        const double share =
            (end.outer_wall_k - around_k) / std::max(1.0, end.gas_temperature_k - around_k);
        const double begin_k =
            around_k + share * (state.stations[i - 1].gas_temperature_k - around_k);
        return SurfaceRange{std::max(begin_k, end.outer_wall_k),
                            std::min(begin_k, end.outer_wall_k)};
    }
    return std::nullopt;
}

double mean_wall_k(const Case& resolved, const StateResult& state, std::size_t station) {
    const Station& end = state.stations[station];
    const Section& section = resolved.sections[end.section];
    const Surroundings air = surroundings_of(resolved, state.weather, Fire::burning);
    const double around_k = air.temperature_k[static_cast<std::size_t>(section.zone)];
    const double share =
        (end.inner_wall_k - around_k) / std::max(1.0, end.gas_temperature_k - around_k);
    const double gas_k =
        0.5 * (state.stations[station - 1].gas_temperature_k + end.gas_temperature_k);
    return around_k + share * (gas_k - around_k);
}

HotSurfaces
hot_surfaces(const Installation& written, const Case& resolved, const Solution& solution) {
    HotSurfaces all;
    all.wall_limit_k = catalog::default_of(DefaultId::combustible_surface_limit_k).value;
    const checking::View view{written, resolved, &solution};
    for (const checking::Piece& piece : view.pieces) {
        double hottest_k = 0.0;
        for (const StateResult& state : solution.states) {
            if (state.kind == StateKind::high_fire) {
                const auto range = surface_range(resolved, state, *piece.section);
                hottest_k = range ? std::max(hottest_k, range->hottest_k) : hottest_k;
            }
        }
        if (hottest_k <= 0.0) {
            continue;
        }
        HotSurface hot;
        hot.part = piece.index;
        hot.place = view.place_of(piece);
        hot.surface_k = hottest_k;
        rate(hot, piece);
        estimate_wall(hot, piece, resolved);
        all.parts.push_back(std::move(hot));
    }
    return all;
}

} // namespace fluewright
