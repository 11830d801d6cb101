#pragma once

#include "fluewright/model/march/march.hpp"

#include <span>

namespace fluewright {

/// Raises all pressures of a profile by the same.
inline void shift_stations(std::span<Station> stations, double by_pa) {
    for (Station& station : stations) {
        station.pressure_pa += by_pa;
        station.pressure_in_zone_pa += by_pa;
        station.joint_pressure_pa += by_pa;
    }
}

} // namespace fluewright
