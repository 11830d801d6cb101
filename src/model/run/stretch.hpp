#pragma once

#include "fluewright/model/run/case.hpp"

namespace fluewright {

/// Decides, once for the whole program, which part is connector and which is chimney. What the pipe
/// is decides, not where it stands: factory-built chimney, masonry and liners are chimney; single-
/// and double-wall stovepipe is connector wherever it passes; a double-wall vent is the chimney of
/// a gas appliance, and one made for oil that of an oil burner. Fittings go with their own wall;
/// the tee in which the gas turns up into a chimney belongs to it, and a cap to what it stands on.
/// What the file says with `belongs_to` goes before all of this. Kind, wall kind, flow and length
/// of the parts must be there.
void decide_stretches(Run& run, std::span<const WallBuild> walls, FuelGroup fuel);

} // namespace fluewright
