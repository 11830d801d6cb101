#pragma once

#include "fluewright/model/states/states.hpp"

namespace fluewright {

/// Solves a state in a room whose pressure is known to the model.
using SolveInRoom = StateResult (*)(const FlueModel& model, StateKind kind, Detail detail);

/// Solves a burning state of a run that lets in air together with the house's balance: the fire
/// draws its air out of the room, which lowers the room's pressure, which takes from the draft.
/// [theory eq. 32]
[[nodiscard]] StateResult
solve_with_house(const FlueModel& model, StateKind kind, Detail detail, SolveInRoom solve_in_room);

/// Fills in what the house alone says of a state's room.
void tell_house(const FlueModel& model, StateResult& state);

/// Room air a solved state takes [kg/s]: through the fire, unless its air comes by a duct of its
/// own, and through joints and openings of the run.
[[nodiscard]] double room_air_kg_s(const Case& resolved, const StateResult& state);

} // namespace fluewright
