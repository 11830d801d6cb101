#include "fluewright/model/march/dew_points.hpp"

#include "fluewright/physics/dew_point.hpp"

#include <algorithm>

namespace fluewright {

DewPoints
dew_points_of(const Case& resolved, const FlueGas& gas, double air_share, double air_pressure_pa) {
    const GasFit mixed = gas.diluted(air_share);
    DewPoints dew;
    dew.vapour_pa = mixed.water_vapour * air_pressure_pa;
    dew.water_k = dew_point::water_k(dew.vapour_pa);
    const FuelGroup group = resolved.appliance.fuel_group;
    const double undiluted = gas.products().carbon_dioxide;
    if ((group != FuelGroup::coal && group != FuelGroup::oil) || undiluted <= 0.0) {
        return dew;
    }
    // Air holds next to none of either, so that both oxides thin out alike.
    const double left = mixed.carbon_dioxide / undiluted;
    const double trioxide_pa = gas.product_fractions()[static_cast<std::size_t>(Species::so2)]
                               * left * resolved.appliance.dew_point_acid_share * air_pressure_pa;
    if (trioxide_pa > 0.0) {
        dew.acid_k = std::max(dew_point::acid_k(dew.vapour_pa, trioxide_pa), dew.water_k);
    }
    return dew;
}

} // namespace fluewright
