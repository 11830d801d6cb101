#include "fluewright/physics/combustion.hpp"

#include "registry.hpp"

namespace published {
namespace {

using namespace fluewright;

/// Dry analysis in mass per cent: c, h, o, n, s; gross_mj_kg where the check needs it.
combustion::FuelAnalysis fuel_of(const Inputs& in) {
    return {.carbon = in.number("c") / 100.0,
            .hydrogen = in.number("h") / 100.0,
            .oxygen = in.number_or("o", 0.0) / 100.0,
            .nitrogen = in.number_or("n", 0.0) / 100.0,
            .sulphur = in.number_or("s", 0.0) / 100.0,
            .gross_heating_value_dry_j_kg = in.number_or("gross_mj_kg", 0.0) * 1e6};
}

double moisture_of(const Inputs& in) {
    return in.number_or("moisture_pct", 0.0) / 100.0;
}

double air_ratio_of(const Inputs& in) {
    return combustion::air_ratio_for_carbon_dioxide(fuel_of(in), in.number("co2_pct") / 100.0);
}

combustion::Products products_of(const Inputs& in) {
    return combustion::burn(fuel_of(in),
                            {.moisture = moisture_of(in), .air_ratio = air_ratio_of(in)});
}

void add_fuel_checks(Registry& registry) {
    registry["stoichiometric_air"] = {"air over fuel as fired", "kg/kg", [](const Inputs& in) {
                                          return combustion::stoichiometric_air_kg_kg(
                                              fuel_of(in), moisture_of(in));
                                      }};
    registry["greatest_co2"] = {"greatest CO2 in dry gas", "%", [](const Inputs& in) {
                                    return 100.0 * combustion::greatest_carbon_dioxide(fuel_of(in));
                                }};
    registry["net_heating_value"] = {
        "net heating value", "MJ/kg", [](const Inputs& in) {
            return 1e-6 * combustion::net_heating_value_j_kg(fuel_of(in), moisture_of(in));
        }};
    registry["gross_heating_value_channiwala"] = {
        "gross heating value", "MJ/kg", [](const Inputs& in) {
            return 1e-6
                   * combustion::gross_heating_value_channiwala_2002_j_kg(fuel_of(in),
                                                                          in.number("ash") / 100.0);
        }};
}

void add_gas_amounts(Registry& registry) {
    registry["air_ratio"] = {"air over stoichiometric air", "", air_ratio_of};
    registry["oxygen_dry"] = {
        "O2 in dry gas", "%", [](const Inputs& in) { return 100.0 * products_of(in).oxygen_dry; }};
    registry["air_per_fuel"] = {"dry air over fuel as fired", "kg/kg", [](const Inputs& in) {
                                    return products_of(in).dry_air_per_fuel_kg_kg;
                                }};
    registry["gas_per_fuel"] = {"gas over fuel as fired", "kg/kg", [](const Inputs& in) {
                                    return products_of(in).gas_per_fuel_kg_kg;
                                }};
    registry["vapour_share"] = {"H2O in wet gas", "%", [](const Inputs& in) {
                                    return 100.0 * products_of(in).wet[at(Species::h2o)];
                                }};
    registry["gas_per_gross_heat"] = {
        "gas over gross heat of the fuel", "kg/MJ", [](const Inputs& in) {
            return 1e6 * products_of(in).gas_per_fuel_kg_kg
                   / combustion::gross_heating_value_j_kg(fuel_of(in), moisture_of(in));
        }};
}

} // namespace

void add_combustion_checks(Registry& registry) {
    add_fuel_checks(registry);
    add_gas_amounts(registry);
}

} // namespace published
