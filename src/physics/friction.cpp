#include "fluewright/physics/friction.hpp"

#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/core/numeric/tenth_root.hpp"

#include <cmath>

namespace fluewright::friction {
namespace {

double power_16(double x) {
    const double x2 = x * x;
    const double x4 = x2 * x2;
    const double x8 = x4 * x4;
    return x8 * x8;
}

double power_12(double x) {
    const double x2 = x * x;
    const double x4 = x2 * x2;
    return x4 * x4 * x4;
}

} // namespace

double churchill_1977(double re, double relative_roughness) {
    constexpr double next_to_still = 1e-6; // below it powers of powers have no number
    const double moving_re = std::fmax(re, next_to_still);
    const double slowness = 7.0 / moving_re;
    const double inner = slowness / tenth_root(slowness) + 0.27 * relative_roughness;
    const double a = power_16(-2.457 * std::log(inner));
    const double b = power_16(37530.0 / moving_re);
    const double sum = a + b;
    const double turbulent = 1.0 / (sum * std::sqrt(sum));
    // The twelfth root as a chain of roots costs less than a general power.
    return 8.0 * std::sqrt(std::sqrt(cube_root(power_12(8.0 / moving_re) + turbulent)));
}

double colebrook_1939(double re, double relative_roughness) {
    // Newton on y = 1/sqrt(f); the function is nearly straight, four steps reach round-off.
    double y = 1.0 / std::sqrt(churchill_1977(re, relative_roughness));
    constexpr double two_over_ln_10 = 0.868588963806503655;
    for (int step = 0; step < 8; ++step) {
        const double inside = relative_roughness / 3.7 + 2.51 * y / re;
        const double value = y + two_over_ln_10 * std::log(inside);
        const double slope = 1.0 + two_over_ln_10 * (2.51 / re) / inside;
        y -= value / slope;
    }
    return 1.0 / (y * y);
}

} // namespace fluewright::friction
