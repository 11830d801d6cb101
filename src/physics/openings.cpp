#include "fluewright/physics/openings.hpp"

#include <cmath>

namespace fluewright::openings {
namespace {

/// Density of room air in the definitions of leakage area and tightness class.
constexpr double test_density_kg_m3 = 1.2;

constexpr double leakage_area_test_pa = 4.0;

} // namespace

double flow_kg_s(double area_m2, double difference_pa, double density_kg_m3) {
    const double fourth =
        std::sqrt(std::sqrt(difference_pa * difference_pa + linear_below_pa * linear_below_pa));
    return discharge * area_m2 * std::sqrt(2.0 * density_kg_m3) * difference_pa / fourth;
}

double flow_slope_kg_s_pa(double area_m2, double difference_pa, double density_kg_m3) {
    const double squared = difference_pa * difference_pa;
    const double smoothed = squared + linear_below_pa * linear_below_pa;
    return discharge * area_m2 * std::sqrt(2.0 * density_kg_m3) * (1.0 - 0.5 * squared / smoothed)
           / std::sqrt(std::sqrt(smoothed));
}

double area_m2(double flow_kg_s, double difference_pa, double density_kg_m3) {
    return flow_kg_s / (discharge * std::sqrt(2.0 * density_kg_m3 * difference_pa));
}

double leakage_m3_s(double coefficient_m3_s, double exponent, double difference_pa) {
    return std::copysign(coefficient_m3_s * std::pow(std::abs(difference_pa), exponent),
                         difference_pa);
}

double
leakage_kg_s(double coefficient_m3_s, double exponent, double difference_pa, double density_kg_m3) {
    return density_kg_m3 * std::pow(test_density_kg_m3 / density_kg_m3, 1.0 - exponent)
           * leakage_m3_s(coefficient_m3_s, exponent, difference_pa);
}

double coefficient_m3_s(const PressureTest& test, double exponent) {
    return test.volume_m3 * test.air_changes_1_s / std::pow(test.pressure_pa, exponent);
}

double coefficient_of_area_m3_s(double leakage_area_m2, double exponent) {
    return leakage_area_m2 * std::sqrt(2.0 * leakage_area_test_pa / test_density_kg_m3)
           / std::pow(leakage_area_test_pa, exponent);
}

double area_per_wall(double rate_m_s, double test_pa) {
    return rate_m_s / (discharge * std::sqrt(2.0 * test_pa / test_density_kg_m3));
}

} // namespace fluewright::openings
