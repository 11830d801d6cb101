#include "fluewright/physics/dew_point.hpp"

#include "fluewright/core/constants.hpp"
#include "registry.hpp"

namespace published {

using namespace fluewright;

void add_dew_point_checks(Registry& registry) {
    registry["saturation_pressure"] = {"saturation pressure", "Pa", [](const Inputs& in) {
                                           return dew_point::saturation_pressure_pa(
                                               in.number("t_c") + constants::celsius_zero_k);
                                       }};
    registry["water_dew_point"] = {"water dew point", "degC", [](const Inputs& in) {
                                       return dew_point::water_k(in.number("vapour_pa"))
                                              - constants::celsius_zero_k;
                                   }};
    registry["acid_dew_point"] = {"acid dew point", "degC", [](const Inputs& in) {
                                      return dew_point::acid_k(in.number("vapour_pa"),
                                                               in.number("so3_pa"))
                                             - constants::celsius_zero_k;
                                  }};
}

} // namespace published
