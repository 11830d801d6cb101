#include "situation.hpp"

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <array>

namespace fluewright::diagnosis {
namespace {

constexpr double reference_difference_k = 20.0;

struct DoingRow {
    StateKind state;
    double air_taken; ///< over what a high fire takes
    double suction;   ///< over that of a high fire: to a power by which a house leaks
};

/// Suction grows a little faster than in proportion to what the fire takes.
constexpr std::array<DoingRow, 7> rows{{
    {StateKind::high_fire, 1.0, 1.0},
    {StateKind::low_fire, 0.35, 0.3},
    {StateKind::free_burn, 1.1, 1.2},
    {StateKind::door_open_high, 1.4, 1.6},
    {StateKind::door_open_embers, 1.2, 1.3},
    {StateKind::cold_start, 0.5, 0.4},
    {StateKind::idle, 0.0, 0.0},
}};

/// What the file's house does to the room: found for the air the fire takes when nothing hinders
/// it, and then held, so that every march meets the same room.
void hold_room(const Case& c, const Situation& situation, Surroundings& air) {
    const double by_duct = c.house.outdoor_air ? 0.0 : 1.0;
    const double taken_kg_s = by_duct * rows[static_cast<std::size_t>(situation.doing)].air_taken
                              * (c.appliance.high.gas_flow_kg_s - c.appliance.high.burn_rate_kg_s);
    air.room_pressure_pa =
        air.house.room_pressure_pa(taken_kg_s, situation.fan_off ? Fans::off : Fans::running);
    air.house = HouseAir{};
}

} // namespace

Doing doing_of(StateKind state) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].state == state) {
            return static_cast<Doing>(i);
        }
    }
    return Doing::high_fire;
}

Surroundings surroundings_in(const Case& c, const AirEffects& effects, const Situation& situation) {
    const bool cold = situation.doing == Doing::idle || situation.doing == Doing::lighting;
    Surroundings air = surroundings_of(c, situation.weather, cold ? Fire::out : Fire::burning);
    if (air.house.known()) {
        hold_room(c, situation, air);
    }
    const double colder_k =
        c.room_temperature_k - c.weathers[situation.weather].outdoor_temperature_k;
    air.room_pressure_pa -=
        effects.house_at_20_k_pa * std::max(0.0, colder_k) / reference_difference_k;
    air.room_pressure_pa -=
        effects.starved_pa * rows[static_cast<std::size_t>(situation.doing)].suction;
    if (!situation.fan_off) {
        air.room_pressure_pa -= effects.fan_pa;
    }
    if (situation.window_open) {
        static const double relief = catalog::default_of(DefaultId::window_relief_share).value;
        air.room_pressure_pa -= relief * std::min(0.0, air.room_pressure_pa);
    }
    if (situation.windy) {
        air.top_pressure_pa += effects.wind_pa;
    }
    return air;
}

Doing usual_door_doing(const Case& c) {
    return c.appliance.type == ApplianceType::fireplace ? Doing::door_open_high
                                                        : Doing::door_open_embers;
}

std::string words(const Situation& situation, const Case& c) {
    std::string text{name(rows[static_cast<std::size_t>(situation.doing)].state)};
    if (c.weathers.size() > 1) {
        text += ", " + c.weathers[situation.weather].name;
    }
    text += situation.window_open ? ", window open" : "";
    text += situation.fan_off ? ", fans off" : "";
    text += situation.windy ? ", windy" : "";
    return text;
}

} // namespace fluewright::diagnosis
