#pragma once

#include "fluewright/core/constants.hpp"
#include "fluewright/core/quantity/quantity.hpp"

#include <cmath>

/// Heights of the chimney top as they are built.
namespace fluewright {

/// A chimney top is raised in steps of so much [m]: a foot, or a quarter of a metre (common
/// practice, no source).
[[nodiscard]] constexpr double height_step_m(UnitSystem units) {
    constexpr double metric_m = 0.25;
    return units == UnitSystem::us ? constants::foot_m : metric_m;
}

/// The next height in whole steps that is no lower [m].
[[nodiscard]] inline double built_height_m(double least_m, UnitSystem units) {
    constexpr double rounding = 1e-6; // of a step
    const double step_m = height_step_m(units);
    return std::ceil(least_m / step_m - rounding) * step_m;
}

} // namespace fluewright
