#include "fluewright/model/march/surroundings.hpp"

#include "fluewright/physics/atmosphere.hpp"
#include "fluewright/physics/warmed_pipe.hpp"

namespace fluewright {
namespace {

double between(double room_k, double outdoor_k, double share) {
    return room_k + share * (outdoor_k - room_k);
}

} // namespace

double Surroundings::warmer_at_collar_k(const Case& resolved, double gas_k) const {
    return is_open(resolved.shelter)
               ? 0.0
               : warmed_pipe::at_collar_k(resolved.appliance.warmed_pipe_share,
                                          gas_k,
                                          temperature_k[static_cast<std::size_t>(Zone::room)]);
}

Surroundings surroundings_of(const Case& c, std::size_t weather, Fire fire) {
    const WeatherCase& w = c.weathers[weather];
    const double room_k = w.room_temperature_k;
    const double outdoor_k = w.outdoor_temperature_k;
    Surroundings s{};
    s.air_pressure_pa = c.air_pressure_pa;
    s.outdoor_density_kg_m3 =
        atmosphere::density_kg_m3(c.air_pressure_pa, outdoor_k, w.relative_humidity);
    const std::optional<double>& room_pa =
        fire == Fire::burning ? c.room_pressure_burning_pa : c.room_pressure_idle_pa;
    s.room_pressure_pa = room_pa.value_or(0.0);
    s.wind_m_s = w.wind_m_s;
    s.temperature_k = {room_k,
                       c.attic_temperature_k > 0.0 ? c.attic_temperature_k
                                                   : between(room_k, outdoor_k, c.attic_share),
                       c.chase_temperature_k > 0.0 ? c.chase_temperature_k
                                                   : between(room_k, outdoor_k, c.chase_share),
                       outdoor_k};
    for (std::size_t zone = 0; zone < zone_count; ++zone) {
        const double humidity =
            zone == static_cast<std::size_t>(Zone::room) ? c.room_humidity : w.relative_humidity;
        const bool is_outdoor_air =
            zone == static_cast<std::size_t>(Zone::outdoors)
            || (is_open(c.shelter) && zone == static_cast<std::size_t>(Zone::room));
        s.density_kg_m3[zone] =
            is_outdoor_air
                ? s.outdoor_density_kg_m3
                : atmosphere::density_kg_m3(c.air_pressure_pa, s.temperature_k[zone], humidity);
    }
    const double wind_head_pa = 0.5 * s.outdoor_density_kg_m3 * w.wind_m_s * w.wind_m_s;
    s.top_pressure_pa = c.top_wind_coefficient * wind_head_pa;
    if (c.house.known && !room_pa) {
        s.house =
            HouseAir(c.house,
                     {.outdoor_density_kg_m3 = s.outdoor_density_kg_m3,
                      .room_density_kg_m3 = s.density_kg_m3[static_cast<std::size_t>(Zone::room)],
                      .wind_m_s = w.wind_m_s});
        s.room_pressure_pa = s.house.room_pressure_pa(0.0);
    }
    return s;
}

} // namespace fluewright
