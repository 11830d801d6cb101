#pragma once

/// Loss coefficients K of what is not straight pipe: total pressure lost is K rho v^2 / 2. Each
/// comment says at which section v is taken.
namespace fluewright::fittings {

/// Smooth bend, v in the pipe. Interpolated between 15 and 90 degrees on radius_over_diameter.
///
/// Source   middle of Rennels, Miller, Crane and Ito at Re 2e4 in a pipe of relative roughness
///          0.0067, computed with the fluids library 1.0.22   [fluids-library]
/// Range    15 to 90 degrees (below: proportional to the angle; above: proportional up to 180),
///          radius over diameter 0.75 to 1.5, held at the ends
/// Notes    the methods differ by a factor of about two
[[nodiscard]] double bend_smooth(double angle_rad, double radius_over_diameter);

/// Gored (segmented, adjustable) elbow, v in the pipe.
///
///   degrees 0 15 30 45 60 90 -> K 0 0.10 0.20 0.30 0.45 0.60
///
/// Source   middle of duct tables (0.33 to 0.54), the chimney equation's 0.75 and the European
///          standard's 1.2 for 90 degrees: judgement   [judgement]
[[nodiscard]] double bend_gored(double angle_rad);

/// Single mitre, v in the pipe.
///
/// Source   Rennels as computed with the fluids library, 15/30/45/60/90 degrees 0.061/0.153/0.304/
///          0.530/1.202; a duct table gives 1.2 at 90   [fluids-library]
[[nodiscard]] double bend_mitered(double angle_rad);

/// Factor on a bend that is followed by another turn after `spacing_over_diameter` of straight.
///
/// Source   EN 13384-1 annex B: losses with a short straight after the bend (2 to 30 D) over those
///          with a long one: 1.0 at 10, 1.5 at 30, 1.33 at 45, 1.4 at 60, 1.33 at 90 degrees
///          [en13384-1, from memory]
/// Notes    1 from 30 D on; the full factor up to 2 D; straight line between, so nothing jumps.
[[nodiscard]] double bend_spacing_factor(double angle_rad, double spacing_over_diameter);

struct Junction {
    double angle_rad;   ///< between branch and main, a right angle for most tees
    double area_ratio;  ///< branch area over common area
    double branch_flow; ///< share of the common flow that comes from the branch, 0 to 1
};

/// Converging tee, from the branch to the common leg; v in the common leg.
///
///   K = -0.92 (1-q)^2 - q^2 (1.2 (cos t/a - 1) + 0.8 (1 - 1/a^2) - (1/a - 1) cos t) + (2-a)(1-q) q
///
/// Source   Gardel 1957, Bull. Tech. Suisse Romande 83   [gardel-1957, from memory]
[[nodiscard]] double tee_from_branch(const Junction& tee);

/// Converging tee, along the main to the common leg; v in the common leg.
///
///   K = 0.03 (1-q)^2 - q^2 (1 + 1.62 (cos t/a - 1) - 0.38 (1 - a)) + (2-a)(1-q) q
///
/// Source   as tee_from_branch()
[[nodiscard]] double tee_along_main(const Junction& tee);

/// Sudden enlargement, v in the small section; `area_ratio` is small over large.
///
///   K = (1 - small/large)^2
///
/// Source   Borda-Carnot; momentum balance   [derivation]
[[nodiscard]] double sudden_enlargement(double area_ratio);

/// Sudden contraction, v in the small section; `area_ratio` is small over large.
///
///   K = 0.5 (1 - small/large)
///
/// Source   common handbook form   [idelchik, from memory]
[[nodiscard]] double sudden_contraction(double area_ratio);

struct Cone {
    double small_diameter_m;
    double large_diameter_m;
    double length_m; ///< 0 for a sudden step
};

/// Conical increaser, v in the small section: the sudden enlargement times a factor of the included
/// angle: 2.6 sin(t/2) up to 45 degrees, 1 beyond.
///
/// Source   Crane TP-410, equation for gradual enlargement   [crane-410]
/// Notes    The branches meet at 45.2 degrees, not at 45; the lower of the two is taken, so that
///          nothing jumps. Likewise for reducer(), at 46.0 degrees.
[[nodiscard]] double increaser(const Cone& cone);

/// Conical reducer, v in the small section: the sudden contraction times 1.6 sin(t/2) up to 45
/// degrees and sqrt(sin(t/2)) beyond.
///
/// Source   Crane TP-410, equation for gradual contraction   [crane-410]
[[nodiscard]] double reducer(const Cone& cone);

/// Disc damper in a round pipe, v in the pipe; the angle is 0 when open.
///
/// Source   Weisbach's series for a disc valve, 5 to 70 degrees, log K interpolated
/// [pipe-fittings-list] Range    up to 70 degrees; beyond, or where a key damper leaves gas past
/// its edge, the opening
///          `free_area_shut` (share of the section) acts in parallel, so that K stays finite
[[nodiscard]] double disc_damper(double blade_angle_rad, double free_area_shut);

/// Sharp-edged obstruction that leaves `free_area` of the section open, v in the pipe.
///
///   K = (0.707 sqrt(1-f) + 1 - f)^2 / f^2
///
/// Source   Idelchik, orifice plate in a straight pipe   [idelchik, from memory]
/// Range    0 < free_area <= 1
[[nodiscard]] double obstruction(double free_area);

/// Screen of round wire that leaves `free_area` open, v in the pipe.
///
///   K = 1.3 (1-f) + (1/f - 1)^2
///
/// Source   Idelchik, wire gauze   [idelchik, from memory]
[[nodiscard]] double screen(double free_area);

} // namespace fluewright::fittings
