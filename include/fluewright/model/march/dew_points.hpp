#pragma once

#include "fluewright/model/run/case.hpp"

/// Where the gas of a case begins to wet the wall: water, and for oil and coal the acid before it.
namespace fluewright {

/// Dew points of a gas.
struct DewPoints {
    double vapour_pa{}; ///< partial pressure of its water
    double water_k{};
    double acid_k{}; ///< of sulfuric acid, never below water_k; 0 where there is none to speak of
};

/// Of the gas of a fire that `air_share` of room air (kg per kg mixture) has joined, at an air
/// pressure [Pa]. Wood, pellets and gas have no acid dew point: their sulfur is too little for the
/// formula to mean anything.
/// [theory eq. 34]
[[nodiscard]] DewPoints
dew_points_of(const Case& resolved, const FlueGas& gas, double air_share, double air_pressure_pa);

} // namespace fluewright
