#pragma once

#include "fluewright/physics/species.hpp"

/// The air around the flue.
namespace fluewright::atmosphere {

/// Air pressure at a height above sea level [Pa].
///
///   p = 101325 (1 - 0.0065 h / 288.15)^5.255876,   h = 6356766 z / (6356766 + z)
///
/// Source   US Standard Atmosphere 1976, troposphere   [us-atmosphere-1976]
/// Range    -500 m to 11000 m
/// [theory eq. 1]
[[nodiscard]] double pressure_pa(double altitude_m);

/// Height above sea level [m] at which the standard atmosphere has this pressure: the inverse of
/// pressure_pa().
[[nodiscard]] double altitude_m(double pressure_pa);

/// Density of moist air [kg/m3].
///
///   rho = p / (R_dry T) (1 - 0.378 e / p),   e = humidity times saturation pressure
///
/// Source   ideal gas mixture of dry air (R_dry = R / 28.9651 g/mol) and vapour; 0.378 = 1 - 0.622
///          [derivation]
/// [theory eq. 2]
[[nodiscard]] double density_kg_m3(double pressure_pa, double temperature_k, double humidity);

/// kg water vapour per kg dry air.
[[nodiscard]] double
humidity_ratio_kg_kg(double pressure_pa, double temperature_k, double humidity);

/// Mole fractions of moist air.
[[nodiscard]] MoleFractions moist_air(double humidity_ratio_kg_kg);

} // namespace fluewright::atmosphere
