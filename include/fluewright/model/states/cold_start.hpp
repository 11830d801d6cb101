#pragma once

#include "fluewright/model/march/surroundings.hpp"

/// The flue before and just after lighting.   [theory eq. 28, 29]
namespace fluewright {

/// Who warms a flue gives up after that: what takes longer is told as out of reach. Judgement.
inline constexpr double longest_warming_s = 3600.0;

/// What it takes to turn an idle flue that does not draw.
struct ColdStart {
    double idle_draft_pa{}; ///< at the outlet, with the air in the flue as warm as its zones
    double idle_mean_k{};   ///< mean over height of that air
    /// Mean temperature of the air in the flue at which it begins to draw; 0 where none does.
    double turning_k{};
    double heat_j{};     ///< to bring air and inner wall there; 0 where it draws already
    double duration_s{}; ///< of the preheat; negative where no heat does it

    [[nodiscard]] bool takes_too_long() const { return duration_s > longest_warming_s; }
};

/// The idle flue, and a lumped estimate of the preheat.
///
///   rho_t = rho_o - (p_top - p_room) / (g H),   T_t = T_room rho_room / rho_t
///   P t = sum (m_air c + rho c s A) max(0, T_t - T),   s = min(first layer, sqrt(a t))
///
/// Notes    the heat counts as spread evenly over all that is colder than T_t, and none is lost
///          through the wall: the least time. `a` is the diffusivity of the first layer, to which
///          heat has reached s deep after t.
[[nodiscard]] ColdStart cold_start(const Case& resolved, const Surroundings& around);

} // namespace fluewright
