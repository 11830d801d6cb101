#pragma once

/// Heat carried between a surface and the gas along it: Nusselt numbers [-] and the few
/// coefficients that have no length of their own.
namespace fluewright::convection {

/// Turbulent flow in a smooth pipe, gas form.
///
///   Nu = 0.0214 (Re^0.8 - 100) Pr^0.4
///
/// Source   Gnielinski 1976, Int. Chem. Eng. 16 359-368   [gnielinski-1976]
/// Range    1e4 <= Re <= 5e6, 0.5 < Pr <= 1.5; the European chimney standard uses it from Re 2300
[[nodiscard]] double pipe_gnielinski_gas_1976(double re, double pr);

/// Turbulent flow in a pipe of friction factor f.
///
///   Nu = (f/8)(Re - 1000) Pr / (1 + 12.7 sqrt(f/8) (Pr^(2/3) - 1))
///
/// Source   Gnielinski 1976   [gnielinski-1976];  Range  3000 <= Re <= 5e6
[[nodiscard]] double pipe_gnielinski_1976(double re, double pr, double f_darcy);

/// Laminar flow that develops from the entry, mean over the length.
///
///   Nu = 3.66 + 0.0668 Gz / (1 + 0.04 Gz^(2/3)),   Gz = Re Pr D / L
///
/// Source   Hausen 1943   [hausen-1943];  Range  Re below 2300
[[nodiscard]] double pipe_laminar_hausen_1943(double graetz);

/// The European standard evaluates friction and Nusselt number no lower than here.
///
/// Source   EN 13384-1   [en13384-1, from memory]
inline constexpr double least_reynolds = 2300.0;

/// Reynolds number that never falls below least_reynolds and passes over without a corner:
/// (Re^8 + 2300^8)^(1/8).
///
/// Source   EN 13384-1 evaluates friction and Nusselt number at Re 2300 where Re is lower, which is
///          the least that can be defended for flow disturbed by elbows and opposed by its own
///          cooled layer   [en13384-1, from memory]; the rounding is ours
[[nodiscard]] double floored_reynolds(double re);

/// Nu over Pr^0.4 of pipe_gnielinski_gas_1976() at floored_reynolds(re): one power instead of three
/// roots and a power, for the march.
/// [theory eq. 21]
[[nodiscard]] double pipe_gnielinski_gas_floored(double re);

/// What the local entry factor adds, over what the mean one does.
inline constexpr double entry_scale = 1.0 / 3.0;

/// The local entry factor is held at its value this far behind a disturbance, where separation
/// makes the formula's infinity meaningless.
///
/// Source   judgement: a tenth of a diameter   [judgement]
inline constexpr double entry_start_over_diameter = 0.1;

/// Local entry factor at a distance x from the last disturbance.
///
///   mean over L: 1 + (D/L)^(2/3)   ->   local: 1 + (1/3)(D/x)^(2/3)
///
/// Source   Hausen's entry factor as used in the VDI Heat Atlas   [vdi-heat-atlas, from memory]
[[nodiscard]] double entry_factor_local(double diameter_over_distance);

/// Vertical plate, all Rayleigh numbers.
///
///   Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2
///
/// Source   Churchill and Chu 1975, Int. J. Heat Mass Transfer 18 1323   [churchill-chu-1975-plate]
[[nodiscard]] double vertical_plate_churchill_1975(double ra, double pr);

/// Horizontal cylinder.
///
///   Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2
///
/// Source   Churchill and Chu 1975, Int. J. Heat Mass Transfer 18 1049
/// [churchill-chu-1975-cylinder]
[[nodiscard]] double horizontal_cylinder_churchill_1975(double ra, double pr);

/// The two above at air::prandtl, without their powers of the Prandtl number.
/// [theory eq. 25]
[[nodiscard]] double vertical_plate_in_air(double ra);
[[nodiscard]] double horizontal_cylinder_in_air(double ra);

/// Nu over Ra^(1/3) on a tall vertical wall, where the coefficient no longer depends on height:
/// the limit of vertical_plate_churchill_1975().
[[nodiscard]] double tall_wall_factor(double pr);

/// tall_wall_factor(0.72), for flue gas.
inline constexpr double tall_wall_factor_gas = 0.10546832084258748;

/// Cylinder in cross wind.
///
///   Nu = 0.3 + 0.62 Re^0.5 Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^0.25 (1 + (Re/282000)^(5/8))^0.8
///
/// Source   Churchill and Bernstein 1977, J. Heat Transfer 99 300   [churchill-bernstein-1977]
[[nodiscard]] double cross_wind_churchill_1977(double re, double pr);

/// The same at air::prandtl, with roots in place of powers.
[[nodiscard]] double cross_wind_in_air(double re);

/// Forced convection and the free convection that opposes it: (a^3 + b^3)^(1/3). In turbulent flow
/// of a cooled layer against rising gas mixing is enhanced, so that the two add.
///
/// Source   Jackson, Cotton and Axcell 1989, Int. J. Heat and Fluid Flow 10 2: mixed convection in
///          vertical tubes; opposed flow has the greater coefficient at every strength of buoyancy
///          [jackson-1989, the abstract]. The cubic form of the sum is that of other blends;
///          judgement
/// [theory eq. 22]
[[nodiscard]] double blend(double forced, double natural);

/// What free convection that opposes a turbulent flow multiplies the Nusselt number of forced flow
/// by. Gas that is cooled as it rises is the mirror image of a liquid that is heated as it falls.
///
///   Nu / Nu_forced = (1 + 4500 Gr / (Re^2.625 Pr^0.5))^0.31
///
/// `buoyancy` is 4500 Gr / (Re^2.625 Pr^0.5), Gr over the diameter and without sign.
///
/// Source   Jackson and Hall's correlation for opposed flow   [jackson-1989, from memory]
/// Range    Re above 5000: pipes of stoves and furnaces lie below. Some 30 % above blend() there in
///          the whole inside coefficient, more at a low fire; the most that can be defended
[[nodiscard]] double opposed_factor(double buoyancy);

/// The power and the scale of opposed_factor().
inline constexpr double opposed_power = 0.31;
inline constexpr double opposed_scale = 4500.0;

/// 4500 / (Re^2.625 Pr^0.5) at floored_reynolds(re), with Gr still to come.
[[nodiscard]] double opposed_buoyancy_per_grashof(double re, double pr);

} // namespace fluewright::convection
