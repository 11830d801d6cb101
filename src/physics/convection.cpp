#include "fluewright/physics/convection.hpp"

#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/core/numeric/tenth_root.hpp"

#include <cmath>

namespace fluewright::convection {
namespace {

double square(double x) {
    return x * x;
}

double sixth_root(double x) {
    return std::sqrt(cube_root(x));
}

} // namespace

double pipe_gnielinski_gas_1976(double re, double pr) {
    return 0.0214 * (std::pow(re, 0.8) - 100.0) * std::pow(pr, 0.4);
}

double pipe_gnielinski_1976(double re, double pr, double f_darcy) {
    const double eighth = f_darcy / 8.0;
    return eighth * (re - 1000.0) * pr
           / (1.0 + 12.7 * std::sqrt(eighth) * (std::cbrt(pr * pr) - 1.0));
}

double pipe_laminar_hausen_1943(double graetz) {
    return 3.66 + 0.0668 * graetz / (1.0 + 0.04 * std::cbrt(graetz * graetz));
}

double floored_reynolds(double re) {
    const double ratio_4 = square(square(re / least_reynolds));
    return least_reynolds * std::sqrt(std::sqrt(std::sqrt(1.0 + ratio_4 * ratio_4)));
}

double pipe_gnielinski_gas_floored(double re) {
    constexpr double floor_to_08 = 489.0826636630202; // 2300^0.8
    const double ratio_4 = square(square(re / least_reynolds));
    return 0.0214 * (floor_to_08 * tenth_root(1.0 + ratio_4 * ratio_4) - 100.0);
}

double entry_factor_local(double diameter_over_distance) {
    return 1.0 + entry_scale * std::cbrt(square(diameter_over_distance));
}

double vertical_plate_churchill_1975(double ra, double pr) {
    const double prandtl = std::pow(1.0 + std::pow(0.492 / pr, 9.0 / 16.0), 8.0 / 27.0);
    return square(0.825 + 0.387 * sixth_root(ra) / prandtl);
}

double horizontal_cylinder_churchill_1975(double ra, double pr) {
    const double prandtl = std::pow(1.0 + std::pow(0.559 / pr, 9.0 / 16.0), 8.0 / 27.0);
    return square(0.60 + 0.387 * sixth_root(ra) / prandtl);
}

double vertical_plate_in_air(double ra) {
    constexpr double factor = 0.32407553881667833; // 0.387 / (1 + (0.492/0.70)^(9/16))^(8/27)
    return square(0.825 + factor * sixth_root(ra));
}

double horizontal_cylinder_in_air(double ra) {
    constexpr double factor = 0.320922444172626; // 0.387 / (1 + (0.559/0.70)^(9/16))^(8/27)
    return square(0.60 + factor * sixth_root(ra));
}

double tall_wall_factor(double pr) {
    return square(0.387) / std::pow(1.0 + std::pow(0.492 / pr, 9.0 / 16.0), 16.0 / 27.0);
}

double cross_wind_churchill_1977(double re, double pr) {
    const double prandtl = std::sqrt(std::sqrt(1.0 + std::pow(0.4 / pr, 2.0 / 3.0)));
    return 0.3
           + 0.62 * std::sqrt(re) * std::cbrt(pr) / prandtl
                 * std::pow(1.0 + std::pow(re / 282000.0, 0.625), 0.8);
}

double cross_wind_in_air(double re) {
    constexpr double factor = 0.48292004249407827; // 0.62 0.70^(1/3) / (1 + (0.4/0.70)^(2/3))^(1/4)
    const double share = re / 282000.0;
    const double root = std::sqrt(share);
    const double faster = 1.0 + root * std::sqrt(std::sqrt(root));
    return 0.3 + factor * std::sqrt(re) * faster / square(tenth_root(faster));
}

double blend(double forced, double natural) {
    return cube_root(forced * forced * forced + natural * natural * natural);
}

double opposed_factor(double buoyancy) {
    return std::pow(1.0 + buoyancy, opposed_power);
}

double opposed_buoyancy_per_grashof(double re, double pr) {
    return opposed_scale / (std::pow(floored_reynolds(re), 2.625) * std::sqrt(pr));
}

} // namespace fluewright::convection
