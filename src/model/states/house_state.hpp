#pragma once

#include "fluewright/model/states/states.hpp"

namespace fluewright {

/// Fills in what the house alone says of a state's room.
void tell_house(const FlueModel& model, StateResult& state);

/// Room air a solved state takes [kg/s]: through the fire, unless its air comes by a duct of its
/// own, and through joints and openings of the run.
[[nodiscard]] double room_air_kg_s(const Case& resolved, const StateResult& state);

} // namespace fluewright
