#pragma once

#include <array>
#include <cstddef>

/// The gases a flue carries. Mole fractions are held in this order everywhere.
namespace fluewright {

enum class Species : std::size_t { n2, o2, co2, h2o, ar, so2 };

inline constexpr std::size_t species_count = 6;

using MoleFractions = std::array<double, species_count>;

[[nodiscard]] constexpr std::size_t at(Species s) {
    return static_cast<std::size_t>(s);
}

namespace species {

/// Molar mass [kg/mol]. Source: NASA TP-2002-211556, data file entries   [nasa-cea].
inline constexpr MoleFractions molar_mass_kg_mol{
    28.0134e-3, 31.9988e-3, 44.0095e-3, 18.01528e-3, 39.948e-3, 64.0638e-3};

/// Molar specific heat at constant pressure [J/(mol K)].
///
///   cp/R = a1 T^-2 + a2 T^-1 + a3 + a4 T + a5 T^2 + a6 T^3 + a7 T^4
///
/// Source   NASA TP-2002-211556 (McBride, Zehe, Gordon 2002), nine-coefficient set   [nasa-cea]
/// Range    200 K to 6000 K; SO2 300 K to 6000 K
/// [theory eq. 8]
[[nodiscard]] double molar_cp_j_molk(Species s, double temperature_k);

/// Molar enthalpy with the heat of formation at 298.15 K [J/mol]; same source and range.
[[nodiscard]] double molar_enthalpy_j_mol(Species s, double temperature_k);

/// Viscosity of the pure gas [Pa s].
///
///   ln(mu / 1e-7 Pa s) = A ln T + B/T + C/T^2 + D
///
/// Source   NASA transport fits (Svehla), lower range   [nasa-transport]
/// Range    200 K to 1000 K (H2O from 373 K); within 0.6 % of the reference equations there
/// Notes    Used down to 230 K and up to 1500 K: the fits stay monotone, the error grows to 2 %.
[[nodiscard]] double viscosity_pa_s(Species s, double temperature_k);

/// Thermal conductivity of the pure gas [W/(m K)].
///
///   k [mW/mK] = c0 + c1 t + c2 t^2 + c3 t^3,  t = T/1000 K
///
/// Source   cubic fits, within 0.9 %, to the reference equations (Lemmon and Jacobsen 2004, Huber
///          et al. 2016, IAPWS 2011)   [conductivity-fits]
/// Range    280 K to 1000 K
/// Notes    Cubic fits are not carried beyond 1100 K: above it the value grows as T^0.75.
[[nodiscard]] double conductivity_w_mk(Species s, double temperature_k);

} // namespace species
} // namespace fluewright
