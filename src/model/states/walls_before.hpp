#pragma once

#include "fluewright/model/march/march.hpp"
#include "fluewright/model/run/case.hpp"

#include <span>
#include <vector>

namespace fluewright {

/// What the walls of the run hold `elapsed_s` after a fire has ended: those in balance with it, as
/// its march left them in `fire`, each as a layer that keeps its heat as far in as a change has
/// reached by then.   [theory eq. 68]
///
///   s = min(first layer, sqrt(pi a t)/2),  k = H / (exp(H t / (rho c s)) - 1)
///
/// Shapes   one entry for each section of the case; `fire` the outlet and the end of each section
/// Notes    k is what makes one implicit step as long as the whole time end where the exponential
///          fall of a lumped wall does, with a coefficient H of 12 W/m2K on both faces together.
///          At once nothing has cooled; a wall without mass holds nothing.
[[nodiscard]] std::vector<WallMemory>
walls_before(const Case& c, std::span<const Station> fire, double elapsed_s);

} // namespace fluewright
