#pragma once

/// How warm a wall gets beside a hot upright pipe, bare and behind a thin shield with a ventilated
/// gap. An estimate on the warm side: the pipe counts as endless, the wall gives no heat to what
/// lies behind it.
namespace fluewright::wall_beside_pipe {

struct HotPipe {
    double outside_diameter_m;
    double surface_k;
    double emissivity;
    double distance_m; ///< from the pipe's surface to the wall's face
};

struct Shield {
    double gap_m;      ///< between shield and wall; the pipe's distance counts to the wall
    double emissivity; ///< of both faces
};

struct Room {
    double temperature_k; ///< of its air and its other walls
    double air_pressure_pa;
};

/// View of the pipe from the nearest point of the wall: r / (r + distance).
///
/// Source  exact for a small plate that faces the axis of an endless cylinder   [view-factors, from
///         memory]
/// [theory eq. 37]
[[nodiscard]] double view_factor(double outside_diameter_m, double distance_m);

/// Face of a bare wall [K], from the balance
///
///   F e_p e_w s (Tp^4 - Tw^4) = (1 - F) e_w s (Tw^4 - Tr^4) + h (Tw - Tr)
///
/// with h of a tall wall in free convection   [churchill-chu-1975-plate].
[[nodiscard]] double bare_wall_k(const HotPipe& pipe, const Room& room);

struct Shielded {
    double shield_k;
    double wall_k;
};

/// Shield and wall behind it. The shield loses by convection on both faces and radiates to the room
/// and to the wall; the wall loses to the air that rises in the gap, which enters at the room's
/// temperature.
///
///   F' e_p e_s s (Tp^4 - Ts^4) = (1 - F') e_s s (Ts^4 - Tr^4) + 2 h (Ts - Tr) + q
///   q = s (Ts^4 - Tw^4) / (1/e_s + 1/e_w - 1) = h (Tw - Tr)
[[nodiscard]] Shielded shielded_wall_k(const HotPipe& pipe, const Shield& shield, const Room& room);

/// Painted or bare wood, plaster, paper   [camera-emissivity].
inline constexpr double wall_emissivity = 0.90;

} // namespace fluewright::wall_beside_pipe
