#pragma once

/// Air and gas through cracks, inlets and the leaks of a building.   [theory eq. 19]
namespace fluewright::openings {

/// Discharge coefficient of cracks and plain openings.
///
/// Source   plain opening 0.6   [openings-2023]
inline constexpr double discharge = 0.6;

/// Discharge coefficient of an open door with hot gas behind it.
///
/// Source   doorways of full size: 0.68 [nakaya-1986], 0.69 [bryant-2011]; inflow of 0.70 +- 0.03
///          integrated from measured profiles [steckler-1982]
/// Notes    a loading door is smaller than any of these and hangs on a hinge: an extrapolation
inline constexpr double door_discharge = 0.69;

/// Below this pressure difference a crack is taken to pass air in proportion to it: the square-root
/// law would have an infinite slope at zero, which no slit of finite depth has.
inline constexpr double linear_below_pa = 1e-3;

/// Mass flow through an opening [kg/s], with the sign of `difference_pa`.
///
///   m = 0.6 A sqrt(2 rho |dp|)
///
/// Source   Bernoulli with a discharge coefficient   [openings-2023]
/// Notes    |dp|^(1/2) is taken as |dp| / (dp^2 + e^2)^(1/4) with e = linear_below_pa: within 3e-7
///          of the law from 1 Pa upwards
[[nodiscard]] double flow_kg_s(double area_m2, double difference_pa, double density_kg_m3);

/// Its derivative by the difference [kg/s per Pa].
[[nodiscard]] double flow_slope_kg_s_pa(double area_m2, double difference_pa, double density_kg_m3);

/// Area that passes `flow_kg_s` at a pressure difference above zero [m2].   [theory eq. 33]
[[nodiscard]] double area_m2(double flow_kg_s, double difference_pa, double density_kg_m3);

/// Volume flow through the leaks of a building [m3/s], with the sign of `difference_pa`.
///
///   Q = C |dp|^n
///
/// Source   power law of leakage, n 0.6 to 0.8 for houses   [walker-wilson-1990]
[[nodiscard]] double leakage_m3_s(double coefficient_m3_s, double exponent, double difference_pa);

/// Mass flow through the same leaks [kg/s], for air of any density.
///
///   m = rho C (1.2 / rho)^(1-n) |dp|^n
///
/// Source   density correction of pressure tests; that of viscosity, (mu_0/mu)^(2n-1), is left out:
///          1 % for 10 K   [derivation]
/// Notes    at n = 1/2 this is the orifice law
[[nodiscard]] double
leakage_kg_s(double coefficient_m3_s, double exponent, double difference_pa, double density_kg_m3);

struct PressureTest {
    double volume_m3;
    double air_changes_1_s; ///< at `pressure_pa`
    double pressure_pa{50.0};
};

/// C of leakage_m3_s() from a pressure test [m3/(s Pa^n)].
[[nodiscard]] double coefficient_m3_s(const PressureTest& test, double exponent);

/// C from the effective leakage area: that of a hole with discharge coefficient 1 which passes the
/// same flow at 4 Pa.
///
/// Source   definition of the effective leakage area of a building   [derivation]
[[nodiscard]] double coefficient_of_area_m3_s(double leakage_area_m2, double exponent);

/// Leakage area per area of wall [m2/m2] of a chimney that leaks as much as its tightness class
/// allows: `rate_m_s` (m3/s for each m2 of inner wall) at `test_pa`.
[[nodiscard]] double area_per_wall(double rate_m_s, double test_pa);

} // namespace fluewright::openings
