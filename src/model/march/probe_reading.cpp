#include "fluewright/model/march/probe_reading.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/physics/probe.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {

double wall_at_outlet_k(std::span<const Station> stations) {
    const auto wall = std::find_if(stations.begin(), stations.end(), [](const Station& s) {
        return s.inner_wall_start_k > 0.0;
    });
    return wall == stations.end() ? 0.0 : wall->inner_wall_start_k;
}

double probe_reading_k(
    const GasFit& gas, double gas_k, double wall_k, double velocity_m_s, double air_pressure_pa) {
    if (wall_k <= 0.0) {
        return gas_k;
    }
    const double stem_m = catalog::default_of(DefaultId::probe_stem_m).value;
    const double emissivity = catalog::default_of(DefaultId::probe_emissivity).value;
    const double u = gas_fit_range.u_of(gas_k);
    const double viscosity = gas.viscosity_pa_s(u);
    const double conductivity = gas.conductivity_w_mk(u);
    const double coefficient = probe::coefficient_w_m2k(
        stem_m,
        {.velocity_m_s = std::abs(velocity_m_s),
         .density_kg_m3 = air_pressure_pa / (gas.gas_constant_j_kgk * gas_k),
         .viscosity_pa_s = viscosity,
         .conductivity_w_mk = conductivity,
         .prandtl = gas.specific_heat_j_kgk(u) * viscosity / conductivity});
    return probe::reading_k(gas_k, wall_k, coefficient, emissivity);
}

} // namespace fluewright
