#include "fluewright/model/states/vent_limit.hpp"

#include <cmath>

namespace fluewright::vent_limit {
namespace {

/// Speed of sound over density times area 1 m2: flow over area over this is the Mach number.
double sound_flux_kg_m2s(const FlueModel& model, const GasStream& stream) {
    const FlueGas& gas = model.resolved().gases[static_cast<std::size_t>(stream.gas)];
    const GasFit fit = gas.diluted(stream.air_share);
    const double heat_j_kgk = fit.specific_heat_j_kgk(gas_fit_range.u_of(stream.temperature_k));
    const double adiabatic = heat_j_kgk / (heat_j_kgk - fit.gas_constant_j_kgk);
    return model.surroundings().air_pressure_pa
           * std::sqrt(adiabatic / (fit.gas_constant_j_kgk * stream.temperature_k));
}

} // namespace

double mach_of(const FlueModel& model, const GasStream& stream, const MarchResult& flow) {
    return flow.greatest_flux_kg_m2s / sound_flux_kg_m2s(model, stream);
}

bool holds(const FlueModel& model,
           const GasStream& stream,
           const MarchResult& flow,
           double draft_pa) {
    return flow.meets_top && draft_pa >= -overpressure_pa && mach_of(model, stream, flow) <= mach;
}

double fastest_kg_s(const FlueModel& model, const GasStream& stream) {
    return mach * model.resolved().appliance.outlet_area_m2 * sound_flux_kg_m2s(model, stream);
}

} // namespace fluewright::vent_limit
