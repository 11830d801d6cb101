#include "fluewright/physics/probe.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/physics/convection.hpp"

#include <cmath>

namespace fluewright::probe {

double coefficient_w_m2k(double diameter_m, const CrossFlow& flow) {
    const double re = flow.density_kg_m3 * flow.velocity_m_s * diameter_m / flow.viscosity_pa_s;
    return convection::cross_wind_churchill_1977(re, flow.prandtl) * flow.conductivity_w_mk
           / diameter_m;
}

double reading_k(double gas_k, double wall_k, double coefficient_w_m2k, double emissivity) {
    // The balance falls with T and is hollow downwards: after its first step Newton comes from
    // above without overshooting.
    constexpr int most_steps = 50;
    constexpr double settled_k = 1e-6;
    const double glow = emissivity * constants::stefan_boltzmann_w_m2k4;
    const double wall_glow = glow * wall_k * wall_k * wall_k * wall_k;
    double stem_k = gas_k;
    for (int i = 0; i < most_steps; ++i) {
        const double cubed = glow * stem_k * stem_k * stem_k;
        const double miss = coefficient_w_m2k * (gas_k - stem_k) - cubed * stem_k + wall_glow;
        const double slope = coefficient_w_m2k + 4.0 * cubed;
        if (!(slope > 0.0)) {
            break;
        }
        const double step_k = miss / slope;
        stem_k += step_k;
        if (std::abs(step_k) < settled_k) {
            break;
        }
    }
    return stem_k;
}

} // namespace fluewright::probe
