#include "fluewright/physics/european_chimney.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/physics/convection.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace fluewright::european {
namespace {

double celsius(double temperature_k) {
    return temperature_k - constants::celsius_zero_k;
}

struct Point {
    double x;
    double y;
};

/// Straight lines through the points; held at the ends.
template <std::size_t N>
double between(const std::array<Point, N>& points, double x) {
    for (std::size_t i = 1; i < N; ++i) {
        if (x <= points[i].x) {
            const Point& a = points[i - 1];
            const Point& b = points[i];
            return a.y + (b.y - a.y) * std::fmax(0.0, (x - a.x) / (b.x - a.x));
        }
    }
    return points[N - 1].y;
}

constexpr double long_straight_over_diameter = 30.0;
constexpr std::array<Point, 6> bend_long{
    {{0.0, 0.0}, {10.0, 0.1}, {30.0, 0.2}, {45.0, 0.3}, {60.0, 0.5}, {90.0, 1.2}}};
constexpr std::array<Point, 6> bend_short{
    {{0.0, 0.0}, {10.0, 0.1}, {30.0, 0.3}, {45.0, 0.4}, {60.0, 0.7}, {90.0, 1.6}}};
constexpr std::array<Point, 3> tee{{{0.0, 0.0}, {45.0, 0.35}, {90.0, 1.2}}};
constexpr std::array<Point, 5> reduction{
    {{0.0, 0.5}, {0.4, 0.33}, {0.6, 0.25}, {0.8, 0.15}, {1.0, 0.0}}};
constexpr std::array<Point, 6> enlargement{
    {{0.0, 1.0}, {0.2, 0.7}, {0.4, 0.4}, {0.6, 0.2}, {0.8, 0.1}, {1.0, 0.0}}};

double degrees(double angle_rad) {
    return angle_rad * 180.0 / constants::pi;
}

} // namespace

double
air_pressure_pa(double sea_level_pressure_pa, double altitude_m, double outdoor_temperature_k) {
    return sea_level_pressure_pa
           * std::exp(-gravity_m_s2 * altitude_m
                      / (air_gas_constant_j_kgk * outdoor_temperature_k));
}

double conductivity_w_mk(double temperature_k) {
    return 0.0223 + 0.000065 * celsius(temperature_k);
}

double viscosity_pa_s(double temperature_k) {
    const double t = celsius(temperature_k);
    return 15e-6 + (47e-9 - 20e-12 * t) * t;
}

double floored_reynolds(double re) {
    return std::fmax(re, convection::least_reynolds);
}

double friction_factor(double re, double relative_roughness) {
    const double held = floored_reynolds(re);
    double inverse_root = 5.0;
    for (int step = 0; step < 60; ++step) {
        const double next =
            -2.0 * std::log10(2.51 * inverse_root / held + relative_roughness / 3.71);
        const bool settled = std::abs(next - inverse_root) < 1e-14 * next;
        inverse_root = next;
        if (settled) {
            break;
        }
    }
    return 1.0 / (inverse_root * inverse_root);
}

double nusselt(const InsideFlow& flow) {
    const double entry = 1.0 + std::pow(flow.diameter_over_length, 0.67);
    return std::pow(flow.psi / flow.psi_smooth, 0.67)
           * convection::pipe_gnielinski_gas_1976(floored_reynolds(flow.re), flow.pr) * entry;
}

double layer_resistance_m2k_w(double flue_diameter_m,
                              double inner_diameter_m,
                              double outer_diameter_m,
                              double conductivity_w_mk,
                              double shape_factor) {
    return shape_factor * flue_diameter_m / (2.0 * conductivity_w_mk)
           * std::log(outer_diameter_m / inner_diameter_m);
}

double overall_coefficient_w_m2k(const WallTransfer& wall) {
    const double outside = wall.inside_over_outside_diameter / wall.outside_w_m2k;
    return 1.0 / (1.0 / wall.inside_w_m2k + wall.warm_factor * (wall.resistance_m2k_w + outside));
}

double outlet_temperature_k(const Cooling& cooling) {
    return cooling.ambient_k + (cooling.entry_k - cooling.ambient_k) * std::exp(-cooling.number);
}

double mean_temperature_k(const Cooling& cooling) {
    const double share =
        cooling.number == 0.0 ? 1.0 : -std::expm1(-cooling.number) / cooling.number;
    return cooling.ambient_k + (cooling.entry_k - cooling.ambient_k) * share;
}

double inner_wall_k(double gas_k, double outdoor_k, double overall_w_m2k, double inside_w_m2k) {
    return gas_k - overall_w_m2k / inside_w_m2k * (gas_k - outdoor_k);
}

double bend_zeta(double angle_rad, double straight_behind_over_diameter) {
    const auto& table =
        straight_behind_over_diameter >= long_straight_over_diameter ? bend_long : bend_short;
    const double angle = degrees(angle_rad);
    return between(table, angle) * std::fmax(1.0, angle / 90.0);
}

double tee_zeta(double angle_rad) {
    return between(tee, degrees(angle_rad));
}

double sudden_reduction_zeta(double area_ratio) {
    return between(reduction, area_ratio);
}

double sudden_enlargement_zeta(double area_ratio) {
    return between(enlargement, area_ratio);
}

} // namespace fluewright::european
