#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/physics/combustion.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

#include <stdexcept>

namespace published {
namespace {

using namespace fluewright;

constexpr double gram_kg = 1e-3;
constexpr double kilo = 1e3;
constexpr double mega = 1e6;

ApplianceType type_of(const std::string& name) {
    for (const catalog::ApplianceDefault& row : catalog::appliance_defaults()) {
        if (fluewright::name(row.type.value()) == name) {
            return row.type.value();
        }
    }
    throw std::runtime_error("no such appliance: " + name);
}

/// A figure of the tables, which a second entry is held against.
double default_of(const Inputs& in) {
    const catalog::Default* row = catalog::find_default(in.text("id"));
    if (row == nullptr) {
        throw std::runtime_error("no such default: " + in.text("id"));
    }
    return row->value;
}

double fitting_loss(const Inputs& in) {
    const catalog::Fitting* row = catalog::find_fitting(in.text("id"));
    if (row == nullptr) {
        throw std::runtime_error("no such fitting: " + in.text("id"));
    }
    return row->loss;
}

/// An appliance of which a file says next to nothing.
Case appliance(const Inputs& in) {
    Installation written;
    written.site.room.pressure_pa = 0.0;
    written.site.room.temperature_k = 293.15;
    written.site.room.relative_humidity = 0.5;
    written.site.altitude_m = 0.0;
    written.site.weather.push_back(rebuilt::calm(273.15));
    written.appliance.type = type_of(in.text("type"));
    written.appliance.fuel.name = in.text("fuel");
    written.appliance.outlet.diameter_m = 0.15;
    if (const double volume_l = in.number_or("firebox_l", 0.0); volume_l > 0.0) {
        written.appliance.firebox.volume_m3 = volume_l / kilo;
    }
    if (const double heat_kw = in.number_or("heat_input_kw", 0.0); heat_kw > 0.0) {
        written.appliance.heat_input_w.high = heat_kw * kilo;
    }
    if (const double side_m = in.number_or("door_m", 0.0); side_m > 0.0) {
        written.appliance.door.width_m = written.appliance.door.height_m = side_m;
    }
    written.run.push_back(rebuilt::up(5.0, "single-wall steel"));
    return rebuilt::resolved(written);
}

Check of_fire(const char* quantity, const char* unit, double (*read)(const Firing&)) {
    return {quantity, unit, [read](const Inputs& in) {
                const Case c = appliance(in);
                return read(in.text("fire") == "high" ? c.appliance.high : c.appliance.low);
            }};
}

Check of_appliance(const char* quantity, const char* unit, double (*read)(const ApplianceCase&)) {
    return {quantity, unit, [read](const Inputs& in) { return read(appliance(in).appliance); }};
}

} // namespace

void add_appliance_checks(Registry& registry) {
    registry["default_value"] = {"value", "", default_of};
    registry["fitting_loss"] = {"loss coefficient", "", fitting_loss};
    registry["appliance_gas_flow"] = of_fire(
        "mass flow", "g/s", [](const Firing& fire) { return fire.gas_flow_kg_s / gram_kg; });
    registry["appliance_gas_temperature"] =
        of_fire("gas temperature", "degC", [](const Firing& fire) {
            return fire.gas_temperature_k - constants::celsius_zero_k;
        });
    registry["appliance_heat_output"] =
        of_fire("heat", "kW", [](const Firing& fire) { return fire.heat_output_w / kilo; });
    registry["appliance_draft_needed"] =
        of_fire("draft", "Pa", [](const Firing& fire) { return fire.draft_needed_pa; });
    registry["appliance_lining_transfer"] = of_appliance(
        "heat per kelvin", "W/K", [](const ApplianceCase& a) { return a.lining.transfer_w_k; });
    registry["appliance_lining_heat"] = of_appliance(
        "heat per kelvin", "kJ/K", [](const ApplianceCase& a) { return a.lining.heat_j_k / kilo; });
    registry["fuel_gas"] = of_appliance("gas over fuel", "kg/kg", [](const ApplianceCase& a) {
        return combustion::burn(
                   a.analysis,
                   {.moisture = a.moisture, .air_ratio = 1.5, .air_humidity_kg_kg = 0.0})
            .gas_per_fuel_kg_kg;
    });
    registry["fuel_net_heat"] = of_appliance("heating value", "MJ/kg", [](const ApplianceCase& a) {
        return a.net_heating_value_j_kg / mega;
    });
}

} // namespace published
