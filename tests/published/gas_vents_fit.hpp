#pragma once

#include "gas_vents.hpp"
#include "registry.hpp"

namespace published::gas_vents {

/// The cell a row of the tables describes.
[[nodiscard]] Cell cell_of(const Inputs& in);

/// Greatest input [1000 Btu/h] of a row.
[[nodiscard]] double input_of(const Inputs& in, const Constants& constants);

/// The constants that bring the rows marked for fitting nearest to the tables: least squares of the
/// logarithm of computed over published.
[[nodiscard]] Constants fitted_constants();

} // namespace published::gas_vents
