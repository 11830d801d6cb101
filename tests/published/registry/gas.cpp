#include "fluewright/core/constants.hpp"
#include "fluewright/physics/air.hpp"
#include "fluewright/physics/flue_gas.hpp"
#include "registry.hpp"

#include <array>
#include <stdexcept>
#include <string_view>

namespace published {
namespace {

using namespace fluewright;

constexpr std::array<std::string_view, species_count> species_names{
    "N2", "O2", "CO2", "H2O", "Ar", "SO2"};

Species species_of(const Inputs& in) {
    const std::string& name = in.text("species");
    for (std::size_t i = 0; i < species_count; ++i) {
        if (species_names[i] == name) {
            return static_cast<Species>(i);
        }
    }
    throw std::runtime_error("no such species: " + name);
}

double temperature_of(const Inputs& in) {
    return in.number("t_k");
}

/// Mole fractions from x_n2, x_o2 and so on; those not given are zero, all are scaled to sum to 1.
/// The row may say mixture=air instead.
MoleFractions mixture_of(const Inputs& in) {
    MoleFractions x{in.number_or("x_n2", 0.0),
                    in.number_or("x_o2", 0.0),
                    in.number_or("x_co2", 0.0),
                    in.number_or("x_h2o", 0.0),
                    in.number_or("x_ar", 0.0),
                    in.number_or("x_so2", 0.0)};
    double sum = 0.0;
    for (const double share : x) {
        sum += share;
    }
    if (sum == 0.0 && in.text("mixture") == "air") {
        return mixture::dry_air;
    }
    for (double& share : x) {
        share /= sum;
    }
    return x;
}

GasFit fit_of(const Inputs& in) {
    return FlueGas(mixture_of(in), mixture::dry_air).products();
}

double u_of(const Inputs& in) {
    return gas_fit_range.u_of(temperature_of(in));
}

void add_species(Registry& registry) {
    registry["species_cp"] = {"specific heat", "J/(mol K)", [](const Inputs& in) {
                                  return species::molar_cp_j_molk(species_of(in),
                                                                  temperature_of(in));
                              }};
    registry["species_enthalpy_rise"] = {"enthalpy above 298.15 K", "J/mol", [](const Inputs& in) {
                                             const Species s = species_of(in);
                                             return species::molar_enthalpy_j_mol(
                                                        s, temperature_of(in))
                                                    - species::molar_enthalpy_j_mol(s, 298.15);
                                         }};
    registry["species_heat_of_formation"] = {
        "heat of formation", "kJ/mol", [](const Inputs& in) {
            return 1e-3 * species::molar_enthalpy_j_mol(species_of(in), 298.15);
        }};
    registry["species_viscosity"] = {
        "viscosity", "uPa s", [](const Inputs& in) {
            return 1e6 * species::viscosity_pa_s(species_of(in), temperature_of(in));
        }};
    registry["species_conductivity"] = {
        "conductivity", "mW/(m K)", [](const Inputs& in) {
            return 1e3 * species::conductivity_w_mk(species_of(in), temperature_of(in));
        }};
}

void add_mixtures(Registry& registry) {
    registry["mixture_cp"] = {"specific heat", "J/(kg K)", [](const Inputs& in) {
                                  return mixture::specific_heat_j_kgk(mixture_of(in),
                                                                      temperature_of(in));
                              }};
    registry["mixture_viscosity"] = {
        "viscosity", "uPa s", [](const Inputs& in) {
            return 1e6 * mixture::viscosity_pa_s(mixture_of(in), temperature_of(in));
        }};
    registry["mixture_conductivity"] = {
        "conductivity", "mW/(m K)", [](const Inputs& in) {
            return 1e3 * mixture::conductivity_w_mk(mixture_of(in), temperature_of(in));
        }};
    registry["mixture_density"] = {
        "density", "kg/m3", [](const Inputs& in) {
            return in.number("pressure_pa") * mixture::molar_mass_kg_mol(mixture_of(in))
                   / (constants::gas_constant_j_molk * temperature_of(in));
        }};
}

void add_fits(Registry& registry) {
    registry["gas_fit_cp"] = {"specific heat", "J/(kg K)", [](const Inputs& in) {
                                  return fit_of(in).specific_heat_j_kgk(u_of(in));
                              }};
    registry["gas_fit_viscosity"] = {"viscosity", "uPa s", [](const Inputs& in) {
                                         return 1e6 * fit_of(in).viscosity_pa_s(u_of(in));
                                     }};
    registry["gas_fit_conductivity"] = {"conductivity", "mW/(m K)", [](const Inputs& in) {
                                            return 1e3 * fit_of(in).conductivity_w_mk(u_of(in));
                                        }};
    registry["gas_fit_density"] = {
        "density", "kg/m3", [](const Inputs& in) {
            return in.number("pressure_pa") / (fit_of(in).gas_constant_j_kgk * temperature_of(in));
        }};
}

void add_air(Registry& registry) {
    registry["air_viscosity"] = {"viscosity", "uPa s", [](const Inputs& in) {
                                     return 1e6 * air::viscosity_pa_s(temperature_of(in));
                                 }};
    registry["air_conductivity"] = {"conductivity", "mW/(m K)", [](const Inputs& in) {
                                        return 1e3 * air::conductivity_w_mk(temperature_of(in));
                                    }};
    registry["air_density"] = {"density", "kg/m3", [](const Inputs& in) {
                                   return air::density_kg_m3(temperature_of(in),
                                                             in.number("pressure_pa"));
                               }};
}

} // namespace

void add_gas_checks(Registry& registry) {
    add_species(registry);
    add_mixtures(registry);
    add_fits(registry);
    add_air(registry);
}

} // namespace published
