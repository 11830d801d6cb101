#include "house_state.hpp"

#include <algorithm>

namespace fluewright {
double room_air_kg_s(const Case& resolved, const StateResult& state) {
    if (fire_of(state.kind) == Fire::out) {
        return 0.0;
    }
    const bool by_duct = resolved.house.outdoor_air && !is_door_open(state.kind);
    const double fire = by_duct ? 0.0 : std::max(0.0, state.gas_flow_kg_s - state.burn_rate_kg_s);
    return fire + state.flow.leak_from_room_kg_s;
}

void tell_house(const FlueModel& model, StateResult& state) {
    const HouseAir& house = model.surroundings().house;
    state.room.idle_pressure_pa =
        model.surroundings().room_pressure_pa; // as surroundings_of() has it
    state.room.neutral_height_m = house.neutral_height_m(state.room.pressure_pa);
    state.room.pressure_without_fans_pa =
        house.has_fans() ? house.room_pressure_pa(state.room.taken_kg_s, Fans::off)
                         : state.room.pressure_pa;
}

} // namespace fluewright
