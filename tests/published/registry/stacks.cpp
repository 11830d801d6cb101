#include "fluewright/core/numeric/root.hpp"
#include "fluewright/model/march/march.hpp"
#include "fluewright/physics/atmosphere.hpp"
#include "fluewright/physics/mixture.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

#include <cmath>

namespace published {
namespace {

using namespace fluewright;

constexpr double foot_m = 0.3048;
constexpr double inch_m = 0.0254;
constexpr double inch_of_water_pa = 248.6; ///< at 62 degF, as the handbook has it
constexpr double pound_per_hour_kg_s = 0.45359237 / 3600.0;
constexpr double outdoor_k = 288.706; ///< 60 degF
constexpr double gas_k = 533.15;      ///< 500 degF

/// A boiler stack that keeps its gas hot, filled with air: the handbook has no cooling and takes
/// the gas as air. Its size and its wall lie beyond what a file can say, so that they are set in
/// the case.
Case stack(double diameter_m, double height_m, double relative_roughness) {
    Installation written;
    written.site.air_pressure_pa = 14.7 * 6894.757;
    written.site.room.temperature_k = outdoor_k;
    written.site.room.pressure_pa = 0.0;
    written.site.weather.push_back(rebuilt::calm(outdoor_k));
    written.site.weather.back().relative_humidity = 0.0;
    written.appliance.type = ApplianceType::boiler;
    written.appliance.fuel.name = "bituminous coal";
    written.appliance.outlet.diameter_m = rebuilt::widest_in_a_file_m;
    written.appliance.heat_input_w = {1e6, 1e6};
    written.appliance.gas_temperature_k = {gas_k, gas_k};
    OwnWall warm;
    warm.id = "warm";
    warm.thermal_resistance_m2k_w = 10.0;
    written.walls.push_back(warm);
    Part straight = rebuilt::up(height_m, "warm");
    straight.zone = Zone::outdoors;
    written.run.push_back(straight);
    Case c = rebuilt::resolved(written);
    rebuilt::set_bore(c, diameter_m);
    for (WallBuild& wall : c.walls) {
        wall.fixed_resistance_m2k_w = wall.fixed_resistance_m2k_w > 0.0 ? 1e6 : 0.0;
    }
    const FlueGas air(mixture::dry_air, mixture::dry_air);
    c.gases.assign(2, air);
    if (relative_roughness > 0.0) {
        for (Section& section : c.sections) {
            section.roughness_m = relative_roughness * diameter_m;
        }
    }
    return c;
}

/// Darcy factor behind the handbook's dD = f W^2 C H / A^3 (inches of water, lb/s, feet).
double darcy_of(double handbook_f) {
    // With G = W/A: dp = f_D (H/D) G^2/(2 rho) and C/A = 4/D.
    const double density = 14.7 * 6894.757 / (287.055 * gas_k);
    const double flux_si = 0.45359237 / (foot_m * foot_m); // of 1 lb/(s ft2)
    return handbook_f * 4.0 * inch_of_water_pa * 2.0 * density / (flux_si * flux_si);
}

double roughness_for(double darcy) {
    return 3.7 * std::pow(10.0, -0.5 / std::sqrt(darcy));
}

double available_draft_inh2o(const Inputs& in) {
    const double diameter_m = in.number("diameter_in") * inch_m;
    const double f = in.number_or("handbook_f", 0.0);
    const Case c = stack(
        diameter_m, in.number("height_ft") * foot_m, f > 0.0 ? roughness_for(darcy_of(f)) : 0.0);
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    const MarchResult result = model.solve(
        {.flow_kg_s = in.number("horsepower") * in.number("gas_lb_per_hp_h") * pound_per_hour_kg_s,
         .temperature_k = gas_k});
    return model.draft_pa(result) / inch_of_water_pa;
}

/// The power at which friction and the velocity of the gas take a given share of the draft.
double horsepower(const Inputs& in) {
    const double diameter_m = in.number("diameter_in") * inch_m;
    const double share = in.number("share_lost");
    const Case c = stack(diameter_m, in.number("height_ft") * foot_m, 0.0);
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    const double area_m2 = c.sections.back().area_m2;
    const auto spare = [&](double flow_kg_s) {
        const MarchResult result = model.solve({.flow_kg_s = flow_kg_s, .temperature_k = gas_k});
        const double head_pa = 0.5 * result.top_velocity_m_s * flow_kg_s / area_m2;
        return share * result.buoyancy_pa - result.friction_pa - head_pa;
    };
    const Root root = find_root(
        spare, 0.1 * area_m2, 100.0 * area_m2, {.x_tolerance = 1e-6, .residual_tolerance = 1e-9});
    return root.x / (in.number("gas_lb_per_hp_h") * pound_per_hour_kg_s);
}

} // namespace

void add_stack_checks(Registry& registry) {
    registry["stack_available_draft"] = {
        "draft at the foot of the stack", "inH2O", available_draft_inh2o};
    registry["stack_horsepower"] = {"boiler power", "hp", horsepower};
}

} // namespace published
