#pragma once

#include "fluewright/model/standards/method.hpp"

/// The European calculation for a chimney with one appliance, EN 13384-1.   [theory eq. 45
/// to 51]
namespace fluewright::european {

/// One stretch of connector or chimney: what is given.
struct Stretch {
    double flow_kg_s;
    double entry_k;               ///< Te (Tw for the connector)
    double ambient_k;             ///< Tu
    double air_pressure_pa;       ///< pL
    double outdoor_density_kg_m3; ///< rhoL
    double length_m;
    double rise_m;
    double entry_length_m; ///< Ltot, for the entry factor
    double diameter_m;     ///< Dh
    double area_m2;
    double perimeter_m;        ///< U
    double roughness_m;        ///< r
    double zeta;               ///< sum of zeta
    double outside_diameter_m; ///< Dha
    double resistance_m2k_w;   ///< 1/Lambda
    double outside_w_m2k;      ///< alpha_a
    double warm_factor;        ///< SH
};

/// What comes out of it, by the standard's symbols.
struct StretchTerms {
    double mean_k;              ///< Tm
    double outlet_k;            ///< To
    double specific_heat_j_kgk; ///< cp
    double conductivity_w_mk;
    double viscosity_pa_s;
    double prandtl;
    double density_kg_m3; ///< rhom
    double velocity_m_s;  ///< wm
    double reynolds;
    double psi;
    double psi_smooth;
    double nusselt;
    double inside_w_m2k;     ///< alpha_i
    double overall_w_m2k;    ///< k
    double cooling_number;   ///< K
    double draught_pa;       ///< PH
    double resistance_pa;    ///< PE
    double velocity_head_pa; ///< rhom wm^2/2, for PG
};

/// All terms at the stretch's own mean temperature, found by substitution. cp and R are those of
/// the gas; conductivity and viscosity the standard's.
[[nodiscard]] StretchTerms solve_stretch(const Stretch& stretch, const GasFit& gas);

/// 1/Lambda of a wall on the inside surface [m2K/W]: its layers at 200 degC, its air gaps at a mean
/// of 150 degC and 50 K across them by this program's own gap equation, or its stated resistance.
[[nodiscard]] double
wall_resistance_m2k_w(const WallBuild& wall, double inside_diameter_m, double shape_factor);

/// Flow of gas per net heat input: m = (fm1/CO2 + fm2) QF with CO2 in per cent of the dry gas.
struct FlowFactors {
    double fm1_g_pct_per_kw_s;
    double fm2_g_per_kw_s;
};

/// The factors from the fuel's analysis, burned in dry air: the line through air ratios 1.3
/// and 2.6. The form is exact but for the CO2 of the air itself: dry gas is proportional to carbon
/// over CO2. The standard's own table was not seen.
[[nodiscard]] FlowFactors flow_factors(const combustion::FuelAnalysis& fuel, double moisture);

/// The whole calculation at high and at low fire.
///
/// Source   EN 13384-1:2002+A2:2008   [en13384-1: arrangement looked up, most coefficients from
///          memory]
[[nodiscard]] MethodResult calculate(const Case& resolved);

} // namespace fluewright::european
