#include "fluewright/physics/handbook_chimney.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/circle.hpp"

#include <cmath>

namespace fluewright::handbook {
namespace {

constexpr double draft_constant_k_m = 0.03413;
constexpr double density_constant_ip = 1.325; ///< lb/ft3, inHg, degR
constexpr double pound_kg = 0.45359237;
constexpr double inch_of_mercury_pa = 3386.389;
constexpr double rankine_per_kelvin = 1.8;
constexpr double megajoule_j = 1e6;
constexpr double friction_per_foot_over_inch = 0.4;

} // namespace

double theoretical_draft_pa(double barometer_pa,
                            double height_m,
                            double outdoor_temperature_k,
                            double mean_gas_temperature_k) {
    return draft_constant_k_m * barometer_pa * height_m
           * (1.0 / outdoor_temperature_k - 1.0 / mean_gas_temperature_k);
}

double density_kg_m3(double barometer_pa, double mean_gas_temperature_k) {
    constexpr double constant = density_constant_ip * pound_kg
                                / (constants::foot_m * constants::foot_m * constants::foot_m)
                                / (inch_of_mercury_pa * rankine_per_kelvin);
    return constant * barometer_pa / mean_gas_temperature_k;
}

double flow_per_heat_kg_j(const FlowLine& line, double carbon_dioxide) {
    return line.a * (line.b + line.c / (100.0 * carbon_dioxide)) / megajoule_j;
}

double mass_flow_kg_s(double heat_input_w, double flow_per_heat_kg_j) {
    return heat_input_w * flow_per_heat_kg_j;
}

double velocity_m_s(double flow_kg_s, double density_kg_m3, double area_m2) {
    return flow_kg_s / (density_kg_m3 * area_m2);
}

double friction_k(double length_m, double diameter_m) {
    return friction_per_foot_over_inch * (length_m / constants::foot_m)
           / (diameter_m / constants::inch_m);
}

double flow_loss_pa(double k, double density_kg_m3, double velocity_m_s) {
    return 0.5 * k * density_kg_m3 * velocity_m_s * velocity_m_s;
}

double input_capacity_w(const Capacity& chimney) {
    const double area_m2 = circle_area_m2(chimney.diameter_m);
    const double density = density_kg_m3(chimney.barometer_pa, chimney.mean_gas_temperature_k);
    const double flow_kg_s = area_m2 * std::sqrt(2.0 * density * chimney.loss_pa / chimney.k);
    return flow_kg_s / chimney.flow_per_heat_kg_j;
}

} // namespace fluewright::handbook
