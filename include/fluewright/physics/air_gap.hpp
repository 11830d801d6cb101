#pragma once

/// Heat across a closed air gap between two coaxial walls.
namespace fluewright::air_gap {

struct Gap {
    double width_m;
    double height_m;         ///< of the closed cavity
    double inner_radius_m;   ///< of the hot face
    double inner_emissivity; ///< of the faces that see each other
    double outer_emissivity;
    double pressure_pa;
};

/// Nusselt number of convection in a tall vertical cavity, on the width.
///
///   Nu1 = 0.0673838 Ra^(1/3)               Ra > 5e4
///         0.028154 Ra^0.4134               1e4 < Ra <= 5e4
///         1 + 1.7596678e-10 Ra^2.2984755   Ra <= 1e4
///   Nu2 = 0.242 (Ra width/height)^0.272,   Nu = max(Nu1, Nu2)
///
/// Source   ISO 15099:2003, 5.3.3.5   [iso15099];  Range  Ra up to 2e6
[[nodiscard]] double nusselt(double ra, double height_over_width);

/// Conductance of the gap on the inner face [W/(m2 K)]: convection and radiation between concentric
/// cylinders.
///
///   h_r = sigma (T1^2 + T2^2)(T1 + T2) / (1/e1 + (r1/r2)(1/e2 - 1))
///
/// Source   ISO 15099:2003 for convection   [iso15099]; radiosity balance for radiation
///          [derivation]
/// [theory eq. 24]
[[nodiscard]] double conductance_w_m2k(const Gap& gap, double hot_face_k, double cold_face_k);

} // namespace fluewright::air_gap
