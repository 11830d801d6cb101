#pragma once

#include "fluewright/model/run/case.hpp"
#include "fluewright/model/states/house_air.hpp"

namespace fluewright {

enum class Fire : std::uint8_t { burning, out };

/// The air round the flue in one weather. Pressures are relative to the outdoor air at the same
/// height; heights count from the outlet.
/// [theory eq. 4, 30]
struct Surroundings {
    double air_pressure_pa{}; ///< absolute, at the outlet
    double outdoor_density_kg_m3{};
    double room_pressure_pa{}; ///< at the height of the outlet
    double top_pressure_pa{};  ///< what wind does at the chimney top
    double wind_m_s{};
    std::array<double, zone_count> temperature_k{};
    std::array<double, zone_count> density_kg_m3{};
    HouseAir house; ///< known() where the room pressure is to be found with the flow

    /// Pressure of the air of a zone at a height, relative to outdoors there [Pa]. Only the room
    /// can differ: attic and chase are taken as open to the outdoors.
    [[nodiscard]] double pressure_pa(Zone zone, double height_m) const {
        return pressure_pa(zone, height_m, room_pressure_pa);
    }

    /// The same with the room at another pressure.
    [[nodiscard]] double pressure_pa(Zone zone, double height_m, double room_pa) const {
        return zone == Zone::room ? room_pa
                                        + (outdoor_density_kg_m3
                                           - density_kg_m3[static_cast<std::size_t>(Zone::room)])
                                              * constants::gravity_m_s2 * height_m
                                  : 0.0;
    }

    /// How much warmer than the room a heater with gas of this temperature makes what is round the
    /// pipe on its collar [K]. In the open the wind carries that off.   [theory eq. 74]
    [[nodiscard]] double warmer_at_collar_k(const Case& resolved, double gas_k) const;
};

/// The air in weather number `weather` of the case.
[[nodiscard]] Surroundings surroundings_of(const Case& resolved, std::size_t weather, Fire fire);

} // namespace fluewright
