#pragma once

#include "fluewright/model/states/states.hpp"
#include "model/march/run_in_room.hpp"

namespace fluewright {

/// A fire behind a shut door at its burn rate, or where the run cannot vent that, at the greatest
/// one it can. Where the draft is more than the appliance holds, whoever tends the fire turns the
/// damper that is there for it.
void solve_fixed_fire(RunInRoom& run, Detail detail, StateResult& state);

/// Whether the run has such a damper.
[[nodiscard]] bool has_damper_for_strong_draft(const Case& resolved);

/// Fills in what flows at one flow of the stream, the fire taking `air_kg_s`.
void fill_flow(RunInRoom& run,
               const GasStream& stream,
               double air_kg_s,
               double foretold_draft_pa,
               Detail detail,
               StateResult& state);

} // namespace fluewright
