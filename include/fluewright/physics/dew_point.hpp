#pragma once

/// Where the gas begins to wet the wall.
namespace fluewright::dew_point {

/// Temperature at which water vapour of this partial pressure condenses [K].
///
///   t = 4077.9 / (23.6448 - ln p) - 236.67     [degC, Pa]
///
/// Source   EN 13384-1, water dew point   [en13384-1, from memory; within 0.05 K of IAPWS-IF97
///          from 20 to 80 degC]
/// Range    600 Pa to 70 kPa
/// [theory eq. 3, 34]
[[nodiscard]] double water_k(double vapour_pressure_pa);

/// Saturation pressure of water [Pa]: the inverse of water_k().
[[nodiscard]] double saturation_pressure_pa(double temperature_k);

/// Temperature at which sulphuric acid condenses [K].
///
///   1000/T = 2.276 - 0.0294 ln p_w - 0.0858 ln p_s + 0.0062 ln p_w ln p_s   [K, mmHg]
///
/// Source   Verhoff and Banchero 1974, Chem. Eng. Prog. 70(8) 71   [verhoff1974]
/// Range    made for boiler gases, SO3 above 1 ppm; for wood smoke an extrapolation
/// [theory eq. 34]
[[nodiscard]] double acid_k(double vapour_pressure_pa, double sulphur_trioxide_pressure_pa);

} // namespace fluewright::dew_point
