#pragma once

#include "fluewright/model/run/case.hpp"

namespace fluewright {

/// Whether the smoke settles as creosote on a cool wall: that of wood in a closed heater.
[[nodiscard]] inline bool makes_tar(const ApplianceCase& appliance) {
    return appliance.fuel_group == FuelGroup::wood && appliance.type != ApplianceType::fireplace;
}

} // namespace fluewright
