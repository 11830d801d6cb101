#include "fluewright/physics/atmosphere.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/physics/air.hpp"
#include "registry.hpp"

namespace published {
namespace {

using namespace fluewright;

double kelvin(const Inputs& in, const std::string& name) {
    return in.number(name) + constants::celsius_zero_k;
}

/// Weight of the outside air column less that of the gas column, both of dry air: what handbooks
/// call theoretical draft.
double theoretical_draft_pa(const Inputs& in) {
    const double pressure_pa = in.number("pressure_pa");
    return constants::gravity_m_s2 * in.number("height_m")
           * (atmosphere::density_kg_m3(pressure_pa, in.number("outdoor_k"), 0.0)
              - air::density_kg_m3(in.number("gas_k"), pressure_pa));
}

} // namespace

void add_atmosphere_checks(Registry& registry) {
    registry["altitude_pressure"] = {"air pressure", "Pa", [](const Inputs& in) {
                                         return atmosphere::pressure_pa(in.number("altitude_m"));
                                     }};
    registry["altitude_factor"] = {
        "sea-level pressure over local pressure", "", [](const Inputs& in) {
            return atmosphere::pressure_pa(0.0) / atmosphere::pressure_pa(in.number("altitude_m"));
        }};
    registry["moist_air_density"] = {"density", "kg/m3", [](const Inputs& in) {
                                         return atmosphere::density_kg_m3(in.number("pressure_pa"),
                                                                          kelvin(in, "t_c"),
                                                                          in.number("humidity"));
                                     }};
    registry["humidity_ratio"] = {
        "vapour per dry air", "kg/kg", [](const Inputs& in) {
            return atmosphere::humidity_ratio_kg_kg(
                in.number("pressure_pa"), kelvin(in, "t_c"), in.number("humidity"));
        }};
    registry["theoretical_draft"] = {"draft", "Pa", theoretical_draft_pa};
}

} // namespace published
