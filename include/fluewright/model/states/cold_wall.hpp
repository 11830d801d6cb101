#pragma once

#include "fluewright/model/march/dew_points.hpp"
#include "fluewright/model/states/states.hpp"

/// Where a state has its coldest wall, and what its gas leaves there.
namespace fluewright {

/// The station with the coldest inner wall; null where no part of the run has a length. The first
/// station is the collar and has no wall.
[[nodiscard]] inline const Station* coldest_wall(const StateResult& state, const Case& resolved) {
    const Station* coldest = nullptr;
    for (const Station& station : state.stations) {
        const bool has_wall = resolved.sections[station.section].length_m > 0.0;
        if (has_wall && (coldest == nullptr || station.inner_wall_k < coldest->inner_wall_k)) {
            coldest = &station;
        }
    }
    return coldest;
}

/// Of the gas of a state with a fire, at its top.
[[nodiscard]] inline DewPoints dew_points_of(const StateResult& state, const Case& resolved) {
    const FlueGas& gas =
        state.kind == StateKind::low_fire ? resolved.gas_low() : resolved.gas_high();
    return dew_points_of(resolved, gas, state.flow.top_air_share, resolved.air_pressure_pa);
}

} // namespace fluewright
