#include "gas_vents.hpp"

#include "../outdoor_top.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/model/march/march.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/physics/dew_point.hpp"
#include "fluewright/physics/fittings.hpp"

#include <cmath>
#include <stdexcept>

namespace published::gas_vents {
namespace {

using namespace fluewright;

// What the tables leave open and no fit was made for.
constexpr double outdoor_k = listing_basis::outdoor_k;
constexpr double room_k = listing_basis::room_k;
constexpr double efficiency_fan = listing_basis::efficiency_fan_gross;
constexpr double carbon_dioxide_hood = listing_basis::carbon_dioxide_hood;
constexpr double gas_temperature_hood_k = listing_basis::gas_temperature_hood_k;
constexpr double inlet_loss_hood = 1.5; ///< inlet of a draft hood   [ashrae-chimney, from memory]
constexpr double cap_loss = listing_basis::cap_loss;
constexpr double lateral_slope = 1.0 / 48.0; ///< 1/4 in per ft
constexpr double handbook_friction_factor = listing_basis::friction_of_walls;
/// Longest connector of two that share a vent: 1.5 ft for each inch of its diameter.
constexpr double connector_length_over_diameter = 18.0;

Part straight(double length_m, bool level) {
    Part part;
    part.part = PartKind::straight;
    if (level) {
        part.across_m = length_m;
        part.slope = lateral_slope;
    } else {
        part.up_m = length_m;
    }
    return part;
}

Part loss_of(PartKind kind, double loss) {
    Part part;
    part.part = kind;
    part.loss = loss;
    return part;
}

Appliance appliance_of(const Cell& cell, const Constants& constants) {
    Appliance a;
    a.type = ApplianceType::draft_hood;
    a.fuel.name = "natural gas";
    a.outlet.diameter_m = cell.connector_diameter_m;
    a.heat_input_w = {1e4, 1e4}; // scale only: the flow is searched for
    a.efficiency = {efficiency_fan, efficiency_fan};
    const bool fan = cell.system == System::fan;
    const double dioxide = fan ? constants.carbon_dioxide_fan : carbon_dioxide_hood;
    a.carbon_dioxide = {dioxide, dioxide};
    a.gas_temperature_k = {gas_temperature_hood_k, gas_temperature_hood_k};
    a.draft_needed_pa = {0.0, 0.0};
    return a;
}

std::vector<Part> run_of(const Cell& cell, const Constants& constants) {
    std::vector<Part> run;
    // A fan gives the gas its velocity; a draft hood lets it start from rest.
    Part inlet = loss_of(PartKind::fitting, cell.system == System::fan ? 0.0 : inlet_loss_hood);
    inlet.wall = cell.connector;
    run.push_back(inlet);
    double risen_m = 0.0;
    const double lateral_m =
        cell.common ? connector_length_over_diameter * cell.connector_diameter_m : cell.lateral_m;
    if (lateral_m > 0.0) {
        run.push_back(loss_of(PartKind::elbow, constants.elbow_loss));
        run.push_back(straight(lateral_m, true));
        run.push_back(loss_of(PartKind::elbow, constants.elbow_loss));
        risen_m = lateral_m * lateral_slope;
    }
    Part upright = straight(cell.height_m - risen_m, false);
    upright.wall = cell.vent;
    upright.diameter_m = cell.vent_diameter_m;
    upright.zone = Zone::room;
    run.push_back(upright);
    run.push_back(loss_of(PartKind::cap, cap_loss));
    return run;
}

/// Relative roughness whose fully rough friction factor is `factor`.
double roughness_for(double factor) {
    return 3.7 * std::pow(10.0, -0.5 / std::sqrt(factor));
}

double gross_j_kg(const Case& c) {
    return combustion::gross_heating_value_j_kg(c.appliance.analysis, 0.0);
}

/// What efficiency leaves in the gas, above the room.
void heat_fan_gas(Case& c) {
    for (Firing* firing : {&c.appliance.high, &c.appliance.low}) {
        const GasFit& gas = c.gas_high().products();
        const double gross = gross_j_kg(c);
        const double vapour = gross - c.appliance.net_heating_value_j_kg;
        const double rise = ((1.0 - efficiency_fan) * gross - vapour) / firing->gas_per_fuel_kg_kg;
        firing->gas_temperature_k =
            gas.temperature_k(gas.enthalpy_j_kg(gas_fit_range.u_of(room_k)) + rise, 430.0);
    }
}

/// The connectors of two appliances as one conduit of both their areas, up to the tee in which they
/// meet.
void share_connectors(Case& c) {
    for (Section& s : c.sections) {
        if (s.kind == PartKind::straight && s.rise_m > 0.5 * s.length_m) {
            break;
        }
        if (s.kind == PartKind::increaser) {
            s.loss = fittings::tee_from_branch({.angle_rad = 0.5 * constants::pi,
                                                .area_ratio = 1.0 / common_over_connector_area,
                                                .branch_flow = 0.5});
        } else {
            s.area_m2 *= 2.0;
            s.perimeter_m *= 2.0;
        }
    }
    c.appliance.outlet_area_m2 *= 2.0;
}

/// The section at whose end the lateral is over.
std::size_t end_of_lateral(const Case& c) {
    std::size_t end = 0;
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        const Section& s = c.sections[i];
        if (s.length_m > 0.0 && s.rise_m < 0.5 * s.length_m) {
            end = i;
        }
    }
    return end;
}

double input_for(const Case& c, double flow_kg_s) {
    return flow_kg_s * gross_j_kg(c) / c.appliance.high.gas_per_fuel_kg_kg;
}

/// Root of `f` over decades of flow; f is positive below it.
template <class Function>
double flow_root(const Function& f, double guess_kg_s, double sign) {
    double low = guess_kg_s;
    double high = guess_kg_s;
    for (int i = 0; i < 200 && sign * f(low) <= 0.0; ++i) {
        low *= 0.8;
    }
    for (int i = 0; i < 200 && sign * f(high) >= 0.0; ++i) {
        high *= 1.25;
    }
    const Root root =
        find_root(f, low, high, {.x_tolerance = 1e-9 * guess_kg_s, .residual_tolerance = 1e-9});
    if (!root.converged()) {
        throw std::runtime_error("no flow balances");
    }
    return root.x;
}

} // namespace

Case case_of(const Cell& cell, const Constants& constants) {
    Installation written;
    written.site.air_pressure_pa = constants::standard_pressure_pa;
    written.site.room.temperature_k = room_k;
    written.site.room.pressure_pa = cell.room_pressure_pa;
    Weather weather;
    weather.outdoor_temperature_k = outdoor_k;
    weather.wind_m_s = 0.0;
    written.site.weather.push_back(weather);
    written.appliance = appliance_of(cell, constants);
    written.run = run_of(cell, constants);
    auto resolved = resolve(with_outdoor_top(written));
    if (!resolved) {
        throw std::runtime_error(resolved.error().front().message);
    }
    Case c = std::move(resolved.value());
    const bool draft_hood = cell.system == System::draft_hood;
    const bool masonry = c.walls[c.sections.back().wall].kind == WallKind::masonry;
    if (!draft_hood) {
        heat_fan_gas(c);
    }
    for (Section& s : c.sections) {
        if (s.kind == PartKind::elbow) {
            s.loss = constants.elbow_loss; // the tables do not couple their two elbows
        }
        if (draft_hood && cell.handbook_friction) {
            s.roughness_m = s.diameter_m
                            * roughness_for(masonry ? constants.friction_masonry_draft_hood
                                                    : handbook_friction_factor);
        }
    }
    if (cell.common) {
        share_connectors(c);
    }
    return c;
}

double greatest_input_w(const Cell& cell, const Constants& constants) {
    const Case c = case_of(cell, constants);
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    GasStream stream{.temperature_k = c.appliance.high.gas_temperature_k};
    const auto draft = [&](double flow_kg_s) {
        stream.flow_kg_s = flow_kg_s;
        return model.draft_pa(model.solve(stream));
    };
    const double area_m2 = constants::pi / 4.0 * cell.vent_diameter_m * cell.vent_diameter_m;
    constexpr double usual_mass_flux = 3.0;
    return input_for(c, flow_root(draft, usual_mass_flux * area_m2, 1.0));
}

double least_dry_input_w(const Cell& cell, const Constants& constants) {
    const Case c = case_of(cell, constants);
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    GasStream stream{.temperature_k = c.appliance.high.gas_temperature_k};
    std::vector<Station> stations(model.station_count());
    const std::size_t end = end_of_lateral(c);
    const double vapour_pa = c.gas_high().products().water_vapour * c.air_pressure_pa;
    const double dew_k = dew_point::water_k(vapour_pa);
    const auto above_dew = [&](double flow_kg_s) {
        stream.flow_kg_s = flow_kg_s;
        model.solve(stream, stations);
        return stations[end + 1].inner_wall_k - dew_k;
    };
    const double area_m2 = constants::pi / 4.0 * cell.vent_diameter_m * cell.vent_diameter_m;
    return input_for(c, flow_root(above_dew, area_m2, -1.0));
}

} // namespace published::gas_vents
