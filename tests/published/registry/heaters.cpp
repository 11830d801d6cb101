#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/model/march/probe_reading.hpp"
#include "fluewright/model/states/states.hpp"
#include "fluewright/physics/combustion.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

#include <cmath>

namespace published {
namespace {

using namespace fluewright;

constexpr double foot_m = 0.3048;
constexpr double six_inches_m = 0.1524;

/// Gas flow of a heater from what its maker declares: output, efficiency, CO2.
double declared_gas_g_s(const Inputs& in) {
    Installation written;
    written.appliance.type = ApplianceType::boiler;
    written.appliance.fuel.name = in.text("fuel");
    written.appliance.outlet.diameter_m = 0.13;
    const double output_w = 1e3 * in.number("output_kw");
    const double efficiency = in.number("efficiency_pct") / 100.0;
    const double dioxide = in.number("co2_pct") / 100.0;
    written.appliance.heat_output_w = {output_w, output_w};
    written.appliance.efficiency = {efficiency, efficiency};
    written.appliance.carbon_dioxide = {dioxide, dioxide};
    const double gas_k = in.number("gas_c") + constants::celsius_zero_k;
    written.appliance.gas_temperature_k = {gas_k, gas_k};
    written.run.push_back(rebuilt::up(4.0, "insulated 25 mm"));
    return 1e3 * rebuilt::resolved(written).appliance.high.gas_flow_kg_s;
}

/// A wood stove of ordinary size under a run of parts, with outdoors and room told.
Installation stove(double outdoor_k, double room_k, double gas_k, double gas_kg_s) {
    Installation written;
    written.site.room.temperature_k = room_k;
    written.site.room.pressure_pa = 0.0;
    written.site.weather.push_back(rebuilt::calm(outdoor_k));
    written.appliance.type = ApplianceType::stove;
    written.appliance.fuel.name = "wood";
    written.appliance.outlet.diameter_m = six_inches_m;
    written.appliance.gas_temperature_k = {gas_k, gas_k};
    written.appliance.gas_flow_kg_s = {gas_kg_s, gas_kg_s};
    return written;
}

StateResult high_fire(const Case& c) {
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    return solve_state(model, StateKind::high_fire, Detail::stations);
}

double fahrenheit(double kelvin) {
    return 1.8 * (kelvin - constants::celsius_zero_k) + 32.0;
}

/// Gas over surface in degrees Fahrenheit at a place on bare black pipe. The rules of the trade
/// compare two thermometers, so that the gas is as a bare probe shows it.
double gas_over_surface(const Inputs& in) {
    constexpr double room_k = 294.0;
    Installation written =
        stove(room_k, room_k, (in.number("gas_f") + 459.67) / 1.8, 1e-3 * in.number("gas_g_s"));
    written.run.push_back(rebuilt::up(in.number("height_in") * 0.0254, "single-wall steel"));
    written.run.push_back(rebuilt::up(3.0, "single-wall steel"));
    const Case made = rebuilt::resolved(written);
    const StateResult state = high_fire(made);
    const Station& place = state.stations[2];
    const double shown_k = probe_reading_k(made.gas_high().products(),
                                           place.gas_temperature_k,
                                           place.inner_wall_k,
                                           place.velocity_m_s,
                                           made.air_pressure_pa);
    return fahrenheit(shown_k) / fahrenheit(place.outer_wall_k);
}

/// The test chimney: bare pipe to 8.5 ft over the scale, insulated above, 15 ft in all, indoors.
double test_chimney_draft_pa(const Inputs& in) {
    constexpr double laboratory_k = 294.0;
    constexpr double outlet_m = 0.75;
    Installation written = stove(laboratory_k,
                                 laboratory_k,
                                 in.number("gas_c") + constants::celsius_zero_k,
                                 1e-3 * in.number("gas_g_s"));
    written.run.push_back(rebuilt::up(8.5 * foot_m - outlet_m, "single-wall steel"));
    written.run.push_back(rebuilt::up(6.5 * foot_m, "insulated 25 mm"));
    return high_fire(rebuilt::resolved(written)).draft_pa;
}

/// A stove under a chimney of `height_m` from the floor, with turns and a level run as told.
double layout_draft_pa(double height_m, int turns, double angle_rad, double level_m) {
    constexpr double outlet_m = 0.75;
    Installation written = stove(constants::celsius_zero_k, 294.0, 550.0, 8e-3);
    const double pipe_m = 1.2;
    written.run.push_back(rebuilt::up(0.5 * pipe_m, "single-wall steel"));
    Part elbow;
    elbow.part = PartKind::elbow;
    elbow.angle_rad = angle_rad;
    elbow.build = Build::gored;
    for (int i = 0; i < turns; ++i) {
        if (i == 1 && level_m > 0.0) {
            written.run.push_back(rebuilt::across(level_m, "single-wall steel"));
        }
        written.run.push_back(elbow);
    }
    written.run.push_back(rebuilt::up(0.5 * pipe_m, "single-wall steel"));
    Part chimney = rebuilt::up(height_m - outlet_m - pipe_m - level_m / 48.0, "insulated 25 mm");
    written.run.push_back(chimney);
    written.run.push_back(rebuilt::with_loss(PartKind::cap, 1.0));
    return high_fire(rebuilt::resolved(written)).draft_pa;
}

/// Height [ft] at which a layout draws as much as the straight flue of 14 ft.
double height_for_layout_ft(const Inputs& in) {
    constexpr double straight_ft = 14.0;
    const double wanted_pa = layout_draft_pa(straight_ft * foot_m, 0, 0.0, 0.0);
    const int turns = static_cast<int>(in.number("turns"));
    const double angle_rad = in.number("angle_deg") * 3.14159265358979 / 180.0;
    const double level_m = in.number_or("level_ft", 0.0) * foot_m;
    const Root root = find_root(
        [&](double height_m) {
            return layout_draft_pa(height_m, turns, angle_rad, level_m) - wanted_pa;
        },
        3.5,
        12.0,
        {.x_tolerance = 1e-6, .residual_tolerance = 1e-9});
    return root.x / foot_m;
}

/// Overall coefficient on the inside area at the middle of 2 m of pipe.
double overall_coefficient(const Inputs& in) {
    constexpr double room_k = 293.15;
    Installation written = stove(room_k,
                                 room_k,
                                 in.number("gas_c") + constants::celsius_zero_k,
                                 1e-3 * in.number("gas_g_s"));
    written.run.push_back(rebuilt::up(2.0, in.text("wall")));
    const Case c = rebuilt::resolved(written);
    const MarchResult result = high_fire(c).flow;
    const double inlet_k = in.number("gas_c") + constants::celsius_zero_k - room_k;
    const double outlet_k = result.top_temperature_k - room_k;
    const double mean_k = (inlet_k - outlet_k) / std::log(inlet_k / outlet_k);
    return result.heat_loss_w / (2.0 * c.sections.back().perimeter_m * mean_k);
}

} // namespace

void add_heater_checks(Registry& registry) {
    registry["declared_gas_flow"] = {"gas flow", "g/s", declared_gas_g_s};
    registry["gas_over_surface"] = {
        "gas by a bare probe over surface, both in degF", "", gas_over_surface};
    registry["test_chimney_draft"] = {"draft at the outlet", "Pa", test_chimney_draft_pa};
    registry["height_for_layout"] = {"height over the floor", "ft", height_for_layout_ft};
    registry["overall_coefficient"] = {
        "heat transmission on the inside area", "W/(m2 K)", overall_coefficient};
}

} // namespace published
