#pragma once

/// The chimney equation of the ASHRAE Handbook (HVAC Systems and Equipment, chapter "Chimney, Vent,
/// and Fireplace Systems"), in SI. Known at second hand, from engineers' calculation sheets that
/// quote the chapter; what they do not show is from memory.   [theory eq. 52, 54]
namespace fluewright::handbook {

/// Theoretical draft [Pa].
///
///   Dt = 0.03413 B H (1/To - 1/Tm)
///
/// Source   ashrae-chimney, SI form, as quoted
/// Example  101325 Pa, 35 m, 288.15 K, 1253 K -> 323.5 Pa
/// Notes    the inch-pound form (0.2554) is 0.3 % higher
[[nodiscard]] double theoretical_draft_pa(double barometer_pa,
                                          double height_m,
                                          double outdoor_temperature_k,
                                          double mean_gas_temperature_k);

/// Density of the gas [kg/m3]: 1.325 B / Tm in inHg, degR and lb/ft3.
///
/// Source   ashrae-chimney, from memory
[[nodiscard]] double density_kg_m3(double barometer_pa, double mean_gas_temperature_k);

/// Coefficients of the flow of gas per gross heat input: M = a (b + c / CO2%) [kg/MJ].
struct FlowLine {
    double a;
    double b;
    double c;
};

/// Gas per gross heat input [kg/J]. `carbon_dioxide` is its share of the dry gas.
[[nodiscard]] double flow_per_heat_kg_j(const FlowLine& line, double carbon_dioxide);

/// Gas flow [kg/s]: w = I M.
[[nodiscard]] double mass_flow_kg_s(double heat_input_w, double flow_per_heat_kg_j);

/// Velocity [m/s]: w / (rho A).
[[nodiscard]] double velocity_m_s(double flow_kg_s, double density_kg_m3, double area_m2);

/// Resistance of a straight pipe: k = 0.4 L/di with L in feet and di in inches (0.3 to 0.5).
///
/// Source   ashrae-chimney, from memory
/// Notes    a Darcy friction factor of 0.0333
[[nodiscard]] double friction_k(double length_m, double diameter_m);

/// Pressure lost in flow [Pa]: k rho V^2 / 2.
[[nodiscard]] double flow_loss_pa(double k, double density_kg_m3, double velocity_m_s);

struct Capacity {
    double diameter_m;
    double flow_per_heat_kg_j;
    double loss_pa; ///< pressure the flow may use up
    double barometer_pa;
    double k;
    double mean_gas_temperature_k;
};

/// Input capacity [W]: the heat input whose gas uses up `loss_pa`. The mass balance of the above;
/// in inch-pound units it reads I = 4.13e5 (di^2/M) (dp B / (k Tm))^0.5 [Btu/h].
///
/// Source   ashrae-chimney, from memory; its constant comes out as 413435
[[nodiscard]] double input_capacity_w(const Capacity& chimney);

} // namespace fluewright::handbook
