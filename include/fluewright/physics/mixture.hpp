#pragma once

#include "fluewright/physics/species.hpp"

/// Properties of gas mixtures from those of their species.
namespace fluewright::mixture {

/// Molar mass [kg/mol] of mole fractions that sum to 1.
[[nodiscard]] double molar_mass_kg_mol(const MoleFractions& x);

/// Specific heat at constant pressure [J/(kg K)]: mole-weighted molar values.
[[nodiscard]] double specific_heat_j_kgk(const MoleFractions& x, double temperature_k);

/// Enthalpy above that at 298.15 K [J/kg].
[[nodiscard]] double enthalpy_j_kg(const MoleFractions& x, double temperature_k);

/// Viscosity [Pa s].
///
///   mu = sum_i x_i mu_i / sum_j x_j phi_ij
///   phi_ij = (1 + (mu_i/mu_j)^0.5 (M_j/M_i)^0.25)^2 / (8 (1 + M_i/M_j))^0.5
///
/// Source   Wilke 1950, J. Chem. Phys. 18 517   [wilke-1950]; theory eq. 9
[[nodiscard]] double viscosity_pa_s(const MoleFractions& x, double temperature_k);

/// Thermal conductivity [W/(m K)]: Wassiljewa's sum with Wilke's phi_ij as weights.
///
/// Source   Wassiljewa 1904 with the factor 1.0 of Mason and Saxena 1958   [mason-saxena-1958]
/// Notes    For air 1.5 to 1.8 % below the reference equation; the other published factor, 1.065,
///          is 3.6 % below.
[[nodiscard]] double conductivity_w_mk(const MoleFractions& x, double temperature_k);

/// Dry air: N2 78.084, O2 20.9476, Ar 0.9365, CO2 0.0319 mol %, M 28.9651 g/mol.
/// Source: NASA TP-2002-211556, entry Air   [nasa-cea]
inline constexpr MoleFractions dry_air{0.78084, 0.209476, 0.000319, 0.0, 0.009365, 0.0};

/// Mole fractions of a mixture of two gases by mass: `share` of `b`, the rest `a`.
[[nodiscard]] MoleFractions
mix_by_mass(const MoleFractions& a, const MoleFractions& b, double share);

} // namespace fluewright::mixture
