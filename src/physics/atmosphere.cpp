#include "fluewright/physics/atmosphere.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/physics/dew_point.hpp"
#include "fluewright/physics/mixture.hpp"

#include <cmath>

namespace fluewright::atmosphere {
namespace {

constexpr double earth_radius_m = 6356766.0;
constexpr double lapse_k_m = 0.0065;
constexpr double sea_level_temperature_k = 288.15;
constexpr double exponent = 5.255876;
constexpr double vapour_over_air = constants::water_g_mol / constants::dry_air_g_mol;

} // namespace

double pressure_pa(double altitude_m) {
    const double geopotential_m = earth_radius_m * altitude_m / (earth_radius_m + altitude_m);
    return constants::standard_pressure_pa
           * std::pow(1.0 - lapse_k_m * geopotential_m / sea_level_temperature_k, exponent);
}

double altitude_m(double pressure_pa) {
    const double geopotential_m =
        sea_level_temperature_k / lapse_k_m
        * (1.0 - std::pow(pressure_pa / constants::standard_pressure_pa, 1.0 / exponent));
    return earth_radius_m * geopotential_m / (earth_radius_m - geopotential_m);
}

double density_kg_m3(double pressure_pa, double temperature_k, double humidity) {
    const double vapour_pa = humidity * dew_point::saturation_pressure_pa(temperature_k);
    const double dry_gas_constant = constants::gas_constant_j_molk / constants::dry_air_kg_mol;
    return (pressure_pa - (1.0 - vapour_over_air) * vapour_pa) / (dry_gas_constant * temperature_k);
}

double humidity_ratio_kg_kg(double pressure_pa, double temperature_k, double humidity) {
    const double vapour_pa = humidity * dew_point::saturation_pressure_pa(temperature_k);
    return vapour_over_air * vapour_pa / (pressure_pa - vapour_pa);
}

MoleFractions moist_air(double humidity_ratio_kg_kg) {
    const double vapour_moles = humidity_ratio_kg_kg / vapour_over_air;
    MoleFractions x{};
    double dry_sum = 0.0;
    for (const double share : mixture::dry_air) {
        dry_sum += share;
    }
    for (std::size_t i = 0; i < species_count; ++i) {
        x[i] = mixture::dry_air[i] / dry_sum / (1.0 + vapour_moles);
    }
    x[at(Species::h2o)] = vapour_moles / (1.0 + vapour_moles);
    return x;
}

} // namespace fluewright::atmosphere
