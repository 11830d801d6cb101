#pragma once

#include "fluewright/model/run/case.hpp"

/// What an open front asks of its flue: air through the whole opening, fast enough to keep smoke
/// in.
namespace fluewright {

[[nodiscard]] inline bool has_open_front(const ApplianceCase& appliance) {
    return appliance.type == ApplianceType::fireplace;
}

/// Mean velocity [m/s] of the air over an opening that keeps the smoke in, of a fire that gives
/// `fire_share` of the heat of high fire (0..1]. A plume draws air along with the cube root of its
/// heat; a weaker fire asks for that much less.   [theory eq. 76] [ashrae-chimney]
[[nodiscard]] double face_velocity_wanted_m_s(double fire_share);

/// Velocity heads in the outlet that are lost between the room and the gas in the outlet, and that
/// speed the gas up: 1 and that of the entry, 0.5 at a sharp edge; a throat narrower than the
/// outlet adds what its own velocity loses on entering and on widening behind it.
/// [theory eq. 77]
[[nodiscard]] double front_heads(const ApplianceCase& appliance);

/// Draft at the outlet [Pa] that brings the gas of a fire into it through the open front, less what
/// the gas between the top edge of the opening and the outlet lifts by itself. Of gas that is
/// `density_kg_m3` heavy in a room of `room_density_kg_m3`.   [theory eq. 77]
[[nodiscard]] double front_draft_needed_pa(const ApplianceCase& appliance,
                                           double gas_flow_kg_s,
                                           double density_kg_m3,
                                           double room_density_kg_m3);

/// The smallest flue area of the run [m2]; infinite with no flue.
[[nodiscard]] double least_flue_area_m2(const Case& resolved);

/// The smallest flue area of the run over that of the opening [-], as masons name it; 0 with no
/// flue.
[[nodiscard]] double flue_over_opening(const Case& resolved);

} // namespace fluewright
