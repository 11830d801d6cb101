#include "fluewright/advice/checks/joint_air.hpp"

#include "joint_pressure.hpp"

namespace fluewright {

JointAir joint_air(const Case& resolved, const StateResult& state, std::size_t section) {
    const Section& above = resolved.sections[section];
    const Station& below = state.stations[section];
    const Zone zone_below = resolved.sections[below.section].zone;
    const bool in_lower = section > 0 && above.kind != PartKind::cap
                          && checking::space_of(zone_below) < checking::space_of(above.zone);
    return in_lower ? JointAir{zone_below, below.pressure_in_zone_pa}
                    : JointAir{above.zone, state.stations[section + 1].joint_pressure_pa};
}

} // namespace fluewright
