#include "fluewright/physics/expansion.hpp"

#include "fluewright/core/constants.hpp"

namespace fluewright::expansion {

double carbon_steel(double temperature_k) {
    const double t = temperature_k - constants::celsius_zero_k;
    return 1.2e-5 * t + 0.4e-8 * t * t - 2.416e-4;
}

double stainless_steel(double temperature_k) {
    const double t = temperature_k - constants::celsius_zero_k;
    return (16.0 + t * (4.79e-3 - t * 1.243e-6)) * (t - 20.0) * 1e-6;
}

} // namespace fluewright::expansion
