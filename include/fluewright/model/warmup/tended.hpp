#pragma once

#include "fluewright/model/states/states.hpp"

/// What really burns where the draft does not suffice. A check asks what the run would have to
/// spare at a given burn rate; somebody with a gauge meets the fire that the draft allows.
namespace fluewright {

/// A fire held at the burn rate of high or low fire by its air control, as far as the draft
/// reaches. Where the draft falls short of what the appliance needs at that burn rate, flow and
/// burn rate fall to the flow at which both agree, the appliance's resistance going with the
/// square of the flow; the rise of the gas temperature over the room follows the power of the flow
/// that goes through both fires of the case.
///
/// Status   no_flow where no flow down to 15 % balances, at which a fire goes out: the figures are
///          those at that flow
/// [theory eq. 64]
[[nodiscard]] StateResult solve_tended(const FlueModel& model, GasChoice fire, Detail detail);

/// Gas temperature at the outlet at a part of a fire's flow, as solve_tended() takes it [K].
[[nodiscard]] double
tended_temperature_k(const FlueModel& model, GasChoice fire, double flow_share);

} // namespace fluewright
