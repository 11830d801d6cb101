#include "fluewright/model/run/open_front.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {

double face_velocity_wanted_m_s(double fire_share) {
    static const double value = catalog::default_of(DefaultId::door_face_velocity_m_s).value;
    return value * std::cbrt(std::clamp(fire_share, 0.0, 1.0));
}

double front_heads(const ApplianceCase& appliance) {
    const double entry = appliance.door.entry_loss;
    const double throat_m2 = appliance.door.throat_m2;
    if (throat_m2 <= 0.0 || throat_m2 >= appliance.outlet_area_m2) {
        return 1.0 + entry;
    }
    const double faster = appliance.outlet_area_m2 / throat_m2;
    return 1.0 + entry * faster * faster + (faster - 1.0) * (faster - 1.0);
}

double front_draft_needed_pa(const ApplianceCase& appliance,
                             double gas_flow_kg_s,
                             double density_kg_m3,
                             double room_density_kg_m3) {
    const double flux = gas_flow_kg_s / appliance.outlet_area_m2;
    return front_heads(appliance) * 0.5 * flux * flux / density_kg_m3
           - (room_density_kg_m3 - density_kg_m3) * constants::gravity_m_s2
                 * appliance.door.top_below_outlet_m;
}

double least_flue_area_m2(const Case& resolved) {
    double least_m2 = std::numeric_limits<double>::infinity();
    for (const Section& section : resolved.sections) {
        if (section.length_m > 0.0) {
            least_m2 = std::min(least_m2, section.area_m2);
        }
    }
    return least_m2;
}

double flue_over_opening(const Case& resolved) {
    const DoorOpening& door = resolved.appliance.door;
    const double least_m2 = least_flue_area_m2(resolved);
    return std::isfinite(least_m2) ? least_m2 / (door.width_m * door.height_m) : 0.0;
}

} // namespace fluewright
