#pragma once

#include "fluewright/core/constants.hpp"

#include <cmath>

namespace fluewright {

/// Area of a circle.
[[nodiscard]] inline double circle_area_m2(double diameter_m) {
    return constants::pi / 4.0 * diameter_m * diameter_m;
}

/// Diameter of the circle of that area, 0 or more.
[[nodiscard]] inline double circle_diameter_m(double area_m2) {
    return std::sqrt(4.0 * area_m2 / constants::pi);
}

} // namespace fluewright
