#pragma once

#include "fluewright/model/run/case.hpp"

namespace fluewright {

/// Whether the smoke settles as creosote on a cool wall: that of wood held back in a closed heater.
/// An open hearth and a charge that burns at once with all its air leave soot and ash.
[[nodiscard]] inline bool makes_tar(const ApplianceCase& appliance) {
    return appliance.fuel_group == FuelGroup::wood && appliance.type != ApplianceType::fireplace
           && appliance.type != ApplianceType::masonry_heater;
}

} // namespace fluewright
