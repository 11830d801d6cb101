#pragma once

/// Dry air at ordinary pressure, cheap forms for the outside of the flue.
namespace fluewright::air {

/// Viscosity [Pa s]: 1.55296e-6 T^1.5 / (T + 139.66).
/// Source: fit within 1.2 % to Lemmon and Jacobsen 2004, 280-1000 K   [conductivity-fits]
[[nodiscard]] double viscosity_pa_s(double temperature_k);

/// Conductivity [W/(m K)]: cubic fit within 0.21 % to the same reference, 280-1000 K.
[[nodiscard]] double conductivity_w_mk(double temperature_k);

/// Density of dry air [kg/m3].
[[nodiscard]] double density_kg_m3(double temperature_k, double pressure_pa);

/// Prandtl number taken as constant for air between 250 and 900 K (0.69 to 0.72).
inline constexpr double prandtl = 0.70;

/// Rayleigh number of air between a surface and its surroundings, at the film temperature.
///
///   Ra = g |T_s - T_a| L^3 Pr / (T_f nu^2)
[[nodiscard]] double
rayleigh(double surface_k, double ambient_k, double length_m, double pressure_pa);

} // namespace fluewright::air
