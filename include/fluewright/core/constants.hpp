#pragma once

#include <numbers>

/// Physical constants in SI. The molar gas constant is exact by the 2019 definition of the units.
namespace fluewright::constants {

inline constexpr double gas_constant_j_molk = 8.314462618;
inline constexpr double stefan_boltzmann_w_m2k4 = 5.670374419e-8;
inline constexpr double gravity_m_s2 = 9.80665; ///< standard gravity, ISO 80000-3
inline constexpr double celsius_zero_k = 273.15;
inline constexpr double standard_pressure_pa = 101325.0;
/// Latent heat of water at 25 degC: 44.004 kJ/mol over 18.01528 g/mol.
inline constexpr double water_latent_heat_25c_j_kg = 2.4426e6;
inline constexpr double pi = std::numbers::pi;
inline constexpr double foot_m = 0.3048; ///< the international foot, exact
inline constexpr double inch_m = 0.0254; ///< exact
/// Molar mass of dry air and of water.
///
/// Source   NASA TP-2002-211556, entry Air; atomic masses IUPAC   [nasa-cea]
inline constexpr double dry_air_g_mol = 28.9651;
inline constexpr double dry_air_kg_mol = dry_air_g_mol / 1000.0;
inline constexpr double water_g_mol = 18.01528;

} // namespace fluewright::constants
