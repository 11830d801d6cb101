#pragma once

#include "fluewright/model/states/states.hpp"
#include "model/march/run_in_room.hpp"

namespace fluewright {

/// The fire with its controls wide open: it burns as much as the draft brings air for.
/// `at_high_fire` is the high fire of the same run, where it is solved already: the first march of
/// the search.
void solve_free_burn(RunInRoom& run,
                     Detail detail,
                     const StateResult* at_high_fire,
                     StateResult& state);

} // namespace fluewright
