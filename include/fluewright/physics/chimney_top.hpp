#pragma once

/// What happens where the gas leaves the chimney.
namespace fluewright::chimney_top {

/// What leaves the top, into which air.
struct Outflow {
    double velocity_m_s;
    double diameter_m; ///< hydraulic
    double gas_density_kg_m3;
    double outdoor_density_kg_m3;
};

/// Densimetric Froude number of the gas that leaves the top [-]: its speed over that of the heavy
/// air that would fall in beside it. Endless where the gas is no lighter than the air.
///
///   Fr = v / sqrt(g D (rho_out - rho_gas) / rho_gas)
///
/// Source   Jörg and Scorer 1967, Atmospheric Environment 1, 645-654   [jorg-scorer-1967, from
///          memory]
/// Range    gas at rest against still air; wind and a cowl change where it begins
/// Example  0.48 m/s, 0.15 m, 0.83 against 1.35 kg/m3 -> 0.50 (computed)
/// Notes    Below some value between 0.4 and 1 cold air falls in; which is a judgement, and a row
/// of
///          data/defaults.csv
/// [theory eq. 71]
[[nodiscard]] double froude(const Outflow& outflow);

} // namespace fluewright::chimney_top
