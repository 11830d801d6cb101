#pragma once

#include "fluewright/model/states/states.hpp"

namespace fluewright {

/// The draft in the first minutes of kindling: gas of the kindling's temperature and flow in walls
/// still as cold as the air round them.
///
///   dT/dx = -h P (T - T_wall) / (m c)
///
/// Notes    forced flow is the only way of heat counted, at floored_reynolds() and without entry
///          effect, and the wall does not warm: an estimate for the time before it does
void solve_kindling(const FlueModel& model, Detail detail, StateResult& state);

} // namespace fluewright
