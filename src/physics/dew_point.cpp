#include "fluewright/physics/dew_point.hpp"

#include "fluewright/core/constants.hpp"

#include <cmath>

namespace fluewright::dew_point {
namespace {

constexpr double slope_k = 4077.9;
constexpr double offset = 23.6448;
constexpr double shift_k = 236.67;
constexpr double pascal_per_mmhg = 133.322387415;

} // namespace

double water_k(double vapour_pressure_pa) {
    return constants::celsius_zero_k - shift_k + slope_k / (offset - std::log(vapour_pressure_pa));
}

double saturation_pressure_pa(double temperature_k) {
    return std::exp(offset - slope_k / (temperature_k - constants::celsius_zero_k + shift_k));
}

double acid_k(double vapour_pressure_pa, double sulphur_trioxide_pressure_pa) {
    const double ln_water = std::log(vapour_pressure_pa / pascal_per_mmhg);
    const double ln_acid = std::log(sulphur_trioxide_pressure_pa / pascal_per_mmhg);
    return 1000.0 / (2.276 - 0.0294 * ln_water - 0.0858 * ln_acid + 0.0062 * ln_water * ln_acid);
}

} // namespace fluewright::dew_point
