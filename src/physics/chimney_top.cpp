#include "fluewright/physics/chimney_top.hpp"

#include "fluewright/core/constants.hpp"

#include <cmath>
#include <limits>

namespace fluewright::chimney_top {

double froude(const Outflow& outflow) {
    const double lightness =
        (outflow.outdoor_density_kg_m3 - outflow.gas_density_kg_m3) / outflow.gas_density_kg_m3;
    if (lightness <= 0.0) {
        return std::numeric_limits<double>::infinity();
    }
    return outflow.velocity_m_s
           / std::sqrt(constants::gravity_m_s2 * outflow.diameter_m * lightness);
}

} // namespace fluewright::chimney_top
