#pragma once

/// The equations of the European calculation for a chimney with one appliance (EN 13384-1), with
/// that standard's own coefficients. The standard itself was not seen: beginnings of pages of a
/// national copy give the arrangement, the rest is from memory. The full physics of this program
/// uses none of them but the floor of the Reynolds number and the water dew point.
/// [theory eq. 45 to 51]
namespace fluewright::european {

inline constexpr double gravity_m_s2 = 9.81;
inline constexpr double air_gas_constant_j_kgk = 288.0; ///< RL, moist air; from memory

/// PL, wind on a chimney top in an adverse zone [Pa]: inland, and near the coast. 0 elsewhere.
///
/// Source   EN 13384-1   [en13384-1, from memory]
inline constexpr double adverse_zone_inland_pa = 25.0;
inline constexpr double adverse_zone_coast_pa = 40.0;

/// Pressure of the outdoor air [Pa]: pL = p0 exp(-g z / (RL TL)), p0 = 97000 Pa for the least
/// draught.
///
/// Source   EN 13384-1   [en13384-1, from memory]
[[nodiscard]] double
air_pressure_pa(double sea_level_pressure_pa, double altitude_m, double outdoor_temperature_k);

/// Conductivity of flue gas [W/(m K)]: 0.0223 + 0.000065 t, t in degC.
///
/// Source   EN 13384-1   [en13384-1, from memory]
/// Notes    1.0 to 3.6 % below gas of wood at 8 % CO2 by the mixture rules, 27 to 527 degC
[[nodiscard]] double conductivity_w_mk(double temperature_k);

/// Viscosity of flue gas [Pa s]: 15e-6 + 47e-9 t - 20e-12 t^2, t in degC.
///
/// Source   EN 13384-1   [en13384-1, from memory]
/// Notes    4.6 to 6.2 % below the same reference
[[nodiscard]] double viscosity_pa_s(double temperature_k);

/// Reynolds number with which friction and heat transfer are taken: never below 2300.
[[nodiscard]] double floored_reynolds(double re);

/// Friction factor psi, solved to round-off.
///
///   1/sqrt(psi) = -2 log10( 2.51/(Re sqrt(psi)) + r/(3.71 Dh) )
///
/// Source   EN 13384-1   [en13384-1, from memory]
/// Range    Re from 2300; below, the value at 2300
[[nodiscard]] double friction_factor(double re, double relative_roughness);

struct InsideFlow {
    double re;
    double pr;
    double psi;        ///< friction factor of the rough wall
    double psi_smooth; ///< the same at r = 0
    double diameter_over_length;
};

/// Nusselt number [-].
///
///   Nu = (psi/psi_smooth)^0.67 0.0214 (Re^0.8 - 100) Pr^0.4 (1 + (Dh/Ltot)^0.67)
///
/// Source   EN 13384-1   [en13384-1, from memory]; the core is Gnielinski 1976   [gnielinski-1976]
/// Range    2300 <= Re < 1e7 (below: the value at 2300), psi/psi_smooth < 3, 0.6 < Pr < 1.5
[[nodiscard]] double nusselt(const InsideFlow& flow);

/// Thermal resistance of one layer on the inside surface of the flue [m2K/W].
///
///   y Dh/(2 lambda) ln(D_out/D_in),  y = 1 round, 1.1 square or rectangular up to 1 : 1.5
///
/// Source   EN 13384-1   [en13384-1, from memory]
[[nodiscard]] double layer_resistance_m2k_w(double flue_diameter_m,
                                            double inner_diameter_m,
                                            double outer_diameter_m,
                                            double conductivity_w_mk,
                                            double shape_factor);

struct WallTransfer {
    double inside_w_m2k;                 ///< alpha_i
    double resistance_m2k_w;             ///< 1/Lambda
    double inside_over_outside_diameter; ///< Dh/Dha
    double outside_w_m2k;                ///< alpha_a
    double warm_factor;                  ///< SH: 0.5 for pressures (wall not warm yet), 1 for walls
};

/// Overall coefficient on the inside surface [W/(m2 K)].
///
///   k = 1 / (1/alpha_i + SH (1/Lambda + Dh/(Dha alpha_a)))
///
/// Source   EN 13384-1: terms and SH seen, arrangement from memory   [en13384-1]
[[nodiscard]] double overall_coefficient_w_m2k(const WallTransfer& wall);

struct Cooling {
    double entry_k;   ///< Te
    double ambient_k; ///< Tu
    double number;    ///< K = U k L / (m cp)
};

/// Gas temperature at the end: To = Tu + (Te - Tu) exp(-K) [K].
[[nodiscard]] double outlet_temperature_k(const Cooling& cooling);

/// Mean gas temperature: Tm = Tu + (Te - Tu) (1 - exp(-K))/K [K]; Te where K is 0.
[[nodiscard]] double mean_temperature_k(const Cooling& cooling);

/// Inner wall at the chimney top: Tiob = Tob - (kob/alpha_i)(Tob - Tuo) [K].
///
/// Source   EN 13384-1   [en13384-1, from memory]
[[nodiscard]] double
inner_wall_k(double gas_k, double outdoor_k, double overall_w_m2k, double inside_w_m2k);

/// Zeta of a bend, v in the pipe: table over 10, 30, 45, 60 and 90 degrees, one column for a
/// straight of at least 30 diameters behind it and one for less.
///
/// Source   EN 13384-1 annex B   [en13384-1, from memory]
/// Notes    straight lines between the angles; beyond 90 degrees in proportion
[[nodiscard]] double bend_zeta(double angle_rad, double straight_behind_over_diameter);

/// Zeta of a tee whose gas all comes from the branch: 0.35 at 45 degrees, 1.2 at 90.
///
/// Source   as bend_zeta()
[[nodiscard]] double tee_zeta(double angle_rad);

/// Zeta of a sudden reduction, v in the small section; `area_ratio` is small over large.
///
/// Source   as bend_zeta();  Range  0.4 to 0.8 in the table; 0.5 at 0 and 0 at 1 complete it
[[nodiscard]] double sudden_reduction_zeta(double area_ratio);

/// Zeta of a sudden enlargement, v in the small section; `area_ratio` is small over large.
///
/// Source   as bend_zeta();  Range  0 to 0.8 in the table; 0 at 1 completes it
[[nodiscard]] double sudden_enlargement_zeta(double area_ratio);

} // namespace fluewright::european
