#pragma once

#include "fluewright/model/march/march.hpp"
#include "fluewright/physics/flue_gas.hpp"

#include <span>

namespace fluewright {

/// Of the first wall behind the outlet, near its lower end: what a probe at the outlet sees; 0
/// where the run has none.
[[nodiscard]] double wall_at_outlet_k(std::span<const Station> stations);

/// What the bare stem of a flue thermometer shows in gas that flows along a wall [K]; its width and
/// emissivity are those of the catalog. 0 for the wall: none is near, and it shows the gas.
/// [theory eq. 73]
[[nodiscard]] double probe_reading_k(
    const GasFit& gas, double gas_k, double wall_k, double velocity_m_s, double air_pressure_pa);

} // namespace fluewright
