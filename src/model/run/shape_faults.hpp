#pragma once

#include "fluewright/core/fault.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/run/run.hpp"

namespace fluewright {

/// What cannot be built as it is written: a turn that does not lead from the straight before it
/// into the one behind it, two straights of different direction with no bend between, a chimney
/// top that is not outdoors. Each names both places.
void add_shape_faults(const Run& run, UnitSystem units, Faults& faults);

} // namespace fluewright
