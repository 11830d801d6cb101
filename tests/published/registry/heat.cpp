#include "fluewright/core/constants.hpp"
#include "fluewright/physics/air_gap.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/expansion.hpp"
#include "fluewright/physics/flue_gas.hpp"
#include "fluewright/physics/gas_radiation.hpp"
#include "registry.hpp"

namespace published {
namespace {

using namespace fluewright;

double in_kelvin(const Inputs& in, const std::string& name) {
    return in.number(name) + constants::celsius_zero_k;
}

/// Rayleigh number from the Grashof number the tables print.
double rayleigh_of(const Inputs& in) {
    return in.number("gr") * in.number("pr");
}

void add_nusselt(Registry& registry) {
    const auto add = [&](const std::string& name, std::function<double(const Inputs&)> compute) {
        registry[name] = {"Nusselt number", "", std::move(compute)};
    };
    add("pipe_gnielinski", [](const Inputs& in) {
        return convection::pipe_gnielinski_1976(
            in.number("re"), in.number("pr"), in.number("friction"));
    });
    add("pipe_gnielinski_gas", [](const Inputs& in) {
        return convection::pipe_gnielinski_gas_1976(in.number("re"), in.number("pr"));
    });
    add("pipe_laminar", [](const Inputs& in) {
        return convection::pipe_laminar_hausen_1943(
            in.number("re") * in.number("pr") * in.number("diameter_m") / in.number("length_m"));
    });
    add("vertical_plate", [](const Inputs& in) {
        return convection::vertical_plate_churchill_1975(rayleigh_of(in), in.number("pr"));
    });
    add("horizontal_cylinder", [](const Inputs& in) {
        return convection::horizontal_cylinder_churchill_1975(rayleigh_of(in), in.number("pr"));
    });
    add("cross_wind", [](const Inputs& in) {
        return convection::cross_wind_churchill_1977(in.number("re"), in.number("pr"));
    });
    add("air_gap_nusselt", [](const Inputs& in) {
        return air_gap::nusselt(in.number("ra"), in.number("height_over_width"));
    });
}

/// Gap times its conductance: the conductivity of a solid that would insulate alike.
double gap_conductivity_mw_mk(const Inputs& in) {
    const air_gap::Gap gap{.width_m = in.number("width_mm") * 1e-3,
                           .height_m = in.number("height_m"),
                           .inner_radius_m = in.number("inner_radius_mm") * 1e-3,
                           .inner_emissivity = in.number("emissivity"),
                           .outer_emissivity = in.number("emissivity"),
                           .pressure_pa = in.number("pressure_pa")};
    return 1e3 * gap.width_m
           * air_gap::conductance_w_m2k(gap, in_kelvin(in, "hot_c"), in_kelvin(in, "cold_c"));
}

/// A gap so wide and thin of air that radiation to a black outer face is all that is left.
double radiation_coefficient(const Inputs& in) {
    const air_gap::Gap gap{.width_m = 1e6,
                           .height_m = 1e6,
                           .inner_radius_m = 1e15,
                           .inner_emissivity = in.number("emissivity"),
                           .outer_emissivity = 1.0,
                           .pressure_pa = 1e-12};
    return air_gap::conductance_w_m2k(gap, in_kelvin(in, "surface_c"), in_kelvin(in, "around_c"));
}

void add_walls(Registry& registry) {
    registry["air_gap_conductivity"] = {
        "equivalent conductivity", "mW/(m K)", gap_conductivity_mw_mk};
    registry["radiation_coefficient"] = {
        "radiation coefficient", "W/(m2 K)", radiation_coefficient};
    registry["expansion_carbon_steel"] = {
        "lengthening from 20 degC", "mm/m", [](const Inputs& in) {
            return 1e3 * expansion::carbon_steel(in_kelvin(in, "t_c"));
        }};
    registry["expansion_stainless_steel"] = {
        "lengthening from 20 degC", "mm/m", [](const Inputs& in) {
            return 1e3 * expansion::stainless_steel(in_kelvin(in, "t_c"));
        }};
}

gas_radiation::Path path_of(const Inputs& in) {
    return {.carbon_dioxide = in.number("x_co2"),
            .water_vapour = in.number("x_h2o"),
            .length_m = in.number("length_m"),
            .pressure_pa = in.number_or("pressure_pa", constants::standard_pressure_pa)};
}

void add_gas_radiation(Registry& registry) {
    registry["gas_emissivity"] = {"gas emissivity", "", [](const Inputs& in) {
                                      return gas_radiation::emissivity(path_of(in),
                                                                       in.number("t_k"));
                                  }};
    registry["gas_radiation_flux"] = {
        "heat flux to the wall", "W/m2", [](const Inputs& in) {
            const gas_radiation::Path path{.carbon_dioxide = in.number("x_co2"),
                                           .water_vapour = in.number("x_h2o"),
                                           .length_m = gas_radiation::beam_length_over_diameter
                                                       * in.number("diameter_m"),
                                           .pressure_pa = constants::standard_pressure_pa};
            return gas_radiation::flux_w_m2(
                path, in.number("emissivity"), in_kelvin(in, "gas_c"), in_kelvin(in, "wall_c"));
        }};
    registry["emission_fit_flux"] = {"heat flux to the wall", "W/m2", [](const Inputs& in) {
                                         const EmissionFit fit(in.number("x_co2"),
                                                               in.number("x_h2o"),
                                                               in.number("diameter_m"),
                                                               constants::standard_pressure_pa);
                                         return fit.flux_w_m2(in.number("emissivity"),
                                                              in_kelvin(in, "gas_c"),
                                                              in_kelvin(in, "wall_c"));
                                     }};
}

} // namespace

void add_heat_checks(Registry& registry) {
    add_nusselt(registry);
    add_walls(registry);
    add_gas_radiation(registry);
}

} // namespace published
