#pragma once

#include "fluewright/model/states/states.hpp"

namespace fluewright {

/// The loading door wide open on a fire of `fire_share` of the high burn rate.
///
/// The box is well mixed: the fire's gas and heat, and the room air that the run draws through the
/// opening, which makes the gas cooler the more there is of it. Over the height of the opening the
/// room exceeds the box by  dp(y) = dp_top + (rho_room - rho_box) g y  (y down from the top edge);
/// air comes in where dp is positive, smoke goes out where it is negative. The common flow of run
/// and opening is a bracketed root.   [theory eq. 27]
void solve_door_open(const FlueModel& model, double fire_share, Detail detail, StateResult& state);

} // namespace fluewright
