#pragma once

#include "fluewright/model/states/states.hpp"
#include "model/march/run_in_room.hpp"

namespace fluewright {

/// The loading door wide open, `elapsed_s` after it was opened on a fire that had burned shut.
///
/// The box mixes the fire's gas and heat with the room air that the run draws through the opening,
/// which makes the gas cooler the more there is of it; its lining and the walls of the run still
/// hold the heat of the fire before. Over the height of the opening the room exceeds the box by
/// dp(y) = dp_top + (rho_room - rho_box) g y  (y down from the top edge); air comes in where dp is
/// positive, smoke goes out where it is negative. The common flow of run and opening is a bracketed
/// root.   [theory eq. 27]
///
/// How far the door may be opened has two published ends. A mean face velocity keeps smoke behind
/// an opening, since cold air comes in low and the gas leaves by an outlet above it; and in a box
/// that is mixed throughout smoke stays in while the room exceeds it up to the top edge.
///   [theory eq. 70]
///
/// `before` is the profile of the fire that burned with the door shut; of an open front nothing.
void solve_door_open(RunInRoom& run,
                     double elapsed_s,
                     Detail detail,
                     std::span<const Station> before,
                     StateResult& state);

/// How far the door of a solved state may be opened at each of door_moments_s.
[[nodiscard]] std::vector<DoorMoment>
door_moments(const RunInRoom& run, std::span<const Station> before, const StateResult& state);

/// That fire: before embers a low one.
[[nodiscard]] constexpr StateKind fire_before(StateKind opened) {
    return opened == StateKind::door_open_embers ? StateKind::low_fire : StateKind::high_fire;
}

} // namespace fluewright
