#pragma once

#include "fluewright/model/run/case.hpp"
#include "fluewright/model/run/run.hpp"

/// Which ends parts of a kind usually have, and how thick their sheet is.
namespace fluewright {

/// Fills the ends and the sheet of a part: as the file has them, else as such pipe is sold. Its
/// kind, wall kind and written part must be there.
///
/// Source  common practice   [practice]: thin stovepipe is crimped towards the heater, thick pipe
/// is
///         butted into sockets, double-wall and factory-built parts lock, masonry has a hole.
void fill_ends(RunPart& part, const WallBuild& wall);

/// The end of the collar: as the file has it, else a socket, and of a fireplace a hole.
[[nodiscard]] PartEnd collar_end(const Outlet& outlet, ApplianceType type);

} // namespace fluewright
