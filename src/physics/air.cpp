#include "fluewright/physics/air.hpp"

#include "fluewright/core/constants.hpp"

#include <cmath>

namespace fluewright::air {
namespace {

constexpr double gas_constant_j_kgk = constants::gas_constant_j_molk / constants::dry_air_kg_mol;

} // namespace

double viscosity_pa_s(double temperature_k) {
    return 1.55296e-6 * temperature_k * std::sqrt(temperature_k) / (temperature_k + 139.66);
}

double conductivity_w_mk(double temperature_k) {
    const double t = temperature_k / 1000.0;
    return 1e-3 * (1.3818 + t * (94.6998 + t * (-42.0716 + t * 13.6950)));
}

double density_kg_m3(double temperature_k, double pressure_pa) {
    return pressure_pa / (gas_constant_j_kgk * temperature_k);
}

double rayleigh(double surface_k, double ambient_k, double length_m, double pressure_pa) {
    const double film_k = 0.5 * (surface_k + ambient_k);
    const double nu = viscosity_pa_s(film_k) / density_kg_m3(film_k, pressure_pa);
    return constants::gravity_m_s2 * std::abs(surface_k - ambient_k) * length_m * length_m
           * length_m * prandtl / (film_k * nu * nu);
}

} // namespace fluewright::air
