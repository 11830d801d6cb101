#pragma once

#include "fluewright/core/fault.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

namespace fluewright {

/// Makes an installation complete: looks up fuels, walls and fittings, works out flows and gas
/// temperatures, fills what was left out and notes each filled value in Case::assumptions.
///
/// Faults   all that check_installation() says, or else what only shows while it is worked out:
///          values that contradict each other or leave nothing to compute with, all in one go.
[[nodiscard]] Result<Case, Faults> resolve(const Installation& installation);

} // namespace fluewright
