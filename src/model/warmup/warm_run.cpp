#include "warm_run.hpp"

#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/dew_point.hpp"
#include "fluewright/physics/friction.hpp"
#include "fluewright/physics/openings.hpp"
#include "fluewright/physics/warmed_pipe.hpp"
#include "model/march/open_share.hpp"
#include "outlet_search.hpp"
#include "warm_passage.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double settled_k = 1e-5;
constexpr double settled_flow = 1e-7;
constexpr double settled_pa = 1e-4;
constexpr double near_enough_pa = 0.02;
constexpr int most_passes = 400;
constexpr double least_left_share = 1e-3; ///< joints leave this much of the flow

/// The least that flows up a flue with a fire below, of the flow at high fire: gas that is hot at
/// the outlet finds its way even where the flue as a whole does not draw yet.
constexpr double trickle_share = 0.03;

} // namespace

bool flows_as_made(const Case& resolved) {
    const bool hood_in_run =
        std::any_of(resolved.sections.begin(), resolved.sections.end(), [](const Section& s) {
            return s.kind == PartKind::draft_hood;
        });
    return !is_fed_by_hand(resolved.appliance)
           && (hood_in_run || keeps_its_flow(resolved.appliance));
}

void WarmRun::pass_fitting(const Section& s, Passage& p) const {
    const double density = around_.air_pressure_pa / (p.fit.gas_constant_j_kgk * p.temperature_k);
    const auto head = [&](double area_m2) {
        const double flux = p.flow_kg_s / area_m2;
        return 0.5 * flux * flux / density;
    };
    const double loss = p.turned ? std::max(s.loss, s.loss_when_strong) : s.loss;
    p.losses_pa += loss * head(s.area_m2) + head(s.area_m2) - head(p.area_m2);
    p.area_m2 = s.area_m2;
}

/// As the steady march has it, at the pressure that the passage begins with.   [theory eq. 19]
void WarmRun::pass_joint(const Section& s, Passage& p) const {
    const auto zone = static_cast<std::size_t>(s.zone);
    const double zone_pa = around_.pressure_pa(s.zone, p.height_m)
                           + (s.zone == Zone::room ? p.room_pa - around_.room_pressure_pa : 0.0);
    const double excess_pa = p.outlet_pa + p.buoyancy_pa - p.losses_pa - zone_pa;
    const double area_m2 = s.joint_leak_m2 + s.opening_m2 * open_share(s, excess_pa);
    const auto density = [&] {
        return around_.air_pressure_pa / (p.fit.gas_constant_j_kgk * p.temperature_k);
    };
    const auto head_pa = [&] {
        const double flux = p.flow_kg_s / p.area_m2;
        return 0.5 * flux * flux / density();
    };
    const double before_pa = head_pa();
    if (excess_pa >= 0.0) {
        const double most = std::max(0.0, p.flow_kg_s - least_left_share * p.started_kg_s);
        const double out = std::min(most, openings::flow_kg_s(area_m2, excess_pa, density()));
        p.flow_kg_s -= out;
        p.from_room_kg_s -= s.zone == Zone::room ? out : 0.0;
        p.losses_pa += head_pa() - before_pa;
        return;
    }
    const double in = openings::flow_kg_s(area_m2, -excess_pa, around_.density_kg_m3[zone]);
    const double air_enthalpy =
        p.gas->air().enthalpy_j_kg(gas_fit_range.u_of(around_.temperature_k[zone]));
    const double total = p.flow_kg_s + in;
    p.enthalpy_j_kg = (p.flow_kg_s * p.enthalpy_j_kg + in * air_enthalpy) / total;
    p.set_dilution((p.flow_kg_s * p.air_share + in) / total);
    p.flow_kg_s = total;
    p.from_room_kg_s += s.zone == Zone::room ? in : 0.0;
    p.temperature_k = p.fit.temperature_k(p.enthalpy_j_kg, p.temperature_k);
    p.losses_pa += 2.0 * (head_pa() - before_pa);
}

double WarmRun::room_pressure_pa(const FlowControl& control, const Passage& p) const {
    return control.room_by_house ? around_.house.room_pressure_pa(
               control.room_air_share * p.started_kg_s + p.from_room_kg_s)
                                 : control.room_pressure_pa;
}

/// The gas falls off exponentially towards the cell's wall, which has one temperature; what it
/// gives is in proportion to (gas entering - wall), so that the wall's implicit step holds it
/// exactly.
void WarmRun::pass_cell(const Cell& cell,
                        double step_s,
                        const std::vector<double>& start_k,
                        std::vector<double>& nodes_k,
                        Passage& p) const {
    const Section& s = case_->sections[cell.section];
    const StoringWall& wall = walls_[cell.wall];
    const EmissionFit& emission = emissions_[emission_of_section_[cell.section]];
    const std::span<double> nodes{&nodes_k[cell.first_node], wall.node_count()};
    const std::span<const double> start{&start_k[cell.first_node], wall.node_count()};
    const double inside_m2 = cell.length_m * s.perimeter_m;
    const double flux = p.flow_kg_s / s.area_m2;
    const double density_k = around_.air_pressure_pa / p.fit.gas_constant_j_kgk;
    const double entering_k = p.temperature_k;
    const double face_k = nodes[0];

    // Coefficients at the mean of the gas in the cell, by the wall of the last pass.
    double mean_k = entering_k;
    double coefficient = 0.0;
    double heat_rate = 0.0; ///< W/K of the whole cell against the entering gas
    for (int i = 0; i < 2; ++i) {
        const double u = gas_fit_range.u_of(mean_k);
        const double viscosity = p.fit.viscosity_pa_s(u);
        const double conductivity = p.fit.conductivity_w_mk(u);
        const double specific_heat = p.fit.specific_heat_j_kgk(u);
        const double difference_k = mean_k - face_k;
        const double forced =
            cell.entry * convection::pipe_gnielinski_gas_floored(flux * s.diameter_m / viscosity)
            * p.fit.conductivity_prandtl_w_mk(u) / s.diameter_m;
        // g rho^2 |dT| / (T mu^2): the Grashof number without its length.
        const double buoyant = constants::gravity_m_s2 * density_k * density_k
                               * std::abs(difference_k) / (viscosity * viscosity * cube(mean_k));
        const double prandtl = specific_heat * viscosity / conductivity;
        double carried = forced;
        if (case_->inside_heat == InsideHeat::disturbed) {
            carried = cube_root(cube(forced)
                                + cube(convection::tall_wall_factor_gas * conductivity) * buoyant
                                      * prandtl);
        } else if (case_->inside_heat == InsideHeat::opposed_upper) {
            carried *= convection::opposed_factor(buoyant * cube(s.diameter_m)
                                                  * convection::opposed_buoyancy_per_grashof(
                                                      flux * s.diameter_m / viscosity, prandtl));
        }
        const double radiating = 0.5 * (case_->walls[s.wall].inner_emissivity + 1.0) * p.thinner
                                 * constants::stefan_boltzmann_w_m2k4;
        const double emissivity = emission.emissivity(mean_k, p.log_path);
        double radiated = 4.0 * radiating * emissivity * cube(mean_k);
        if (std::abs(difference_k) > 1.0) {
            const double absorptivity = emission.absorptivity(mean_k, face_k, p.log_path);
            radiated = radiating
                       * (emissivity * mean_k * cube(mean_k) - absorptivity * face_k * cube(face_k))
                       / difference_k;
        }
        coefficient = carried + std::max(radiated, 0.0);
        const double capacity_w_k = p.flow_kg_s * specific_heat;
        const double units = coefficient * inside_m2 / capacity_w_k;
        heat_rate = -capacity_w_k * std::expm1(-units);
        mean_k = face_k + (entering_k - face_k) * heat_rate / (coefficient * inside_m2);
    }
    const double warmer_k =
        s.zone == Zone::room ? warmed_pipe::around_k(
            p.warmer_at_collar_k, cell.distance_m, mean_k - wall.place().ambient_k)
                             : 0.0;
    const double outer_before_k = nodes.back();
    const double face_before_k = nodes[0];
    const StoringWall::Heat heat = wall.step({.inside_w_m2k = heat_rate / inside_m2,
                                              .gas_k = entering_k,
                                              .outside_w_m2k = wall.outside_w_m2k(outer_before_k),
                                              .ambient_k = wall.place().ambient_k + warmer_k},
                                             step_s,
                                             start,
                                             nodes);
    p.change_k = std::max(
        {p.change_k, std::abs(nodes[0] - face_before_k), std::abs(nodes.back() - outer_before_k)});
    p.take_heat(heat.in_w_m2 * inside_m2);
    p.lost_w += heat.out_w_m2 * inside_m2;
    p.cells.push_back({.given_w = heat.in_w_m2 * inside_m2, .lost_w = heat.out_w_m2 * inside_m2});

    // Pressures by Simpson's rule over the exponential.
    const double middle_k =
        nodes[0]
        + std::copysign(
            std::sqrt(std::max((entering_k - nodes[0]) * (p.temperature_k - nodes[0]), 0.0)),
            entering_k - nodes[0]);
    const double density =
        density_k / 6.0 * (1.0 / entering_k + 4.0 / middle_k + 1.0 / p.temperature_k);
    const double thinning = 1.0
                            - around_.outdoor_density_kg_m3 * constants::gravity_m_s2
                                  * cell.height_m / around_.air_pressure_pa;
    const double re = flux * s.diameter_m / p.fit.viscosity_pa_s(gas_fit_range.u_of(middle_k));
    p.buoyancy_pa += (around_.outdoor_density_kg_m3 - density) * thinning * constants::gravity_m_s2
                     * cell.rise_m;
    p.losses_pa += 0.5 * flux * flux
                   * (friction::churchill_1977(re, s.roughness_m / s.diameter_m) * cell.length_m
                          / (s.diameter_m * density)
                      + 2.0 * (p.temperature_k - entering_k) / density_k);
}

/// The gas from outlet to chimney top.
void WarmRun::follow(const WarmGas& gas,
                     double step_s,
                     const std::vector<double>& start_k,
                     std::vector<double>& nodes_k,
                     Passage& p) const {
    if (leaks_) {
        p.set_dilution(gas.air_share);
    }
    p.flow_kg_s = p.started_kg_s;
    p.temperature_k = gas.temperature_k;
    p.enthalpy_j_kg = p.fit.enthalpy_j_kg(gas_fit_range.u_of(gas.temperature_k));
    p.area_m2 = case_->appliance.outlet_area_m2;
    p.buoyancy_pa = p.losses_pa = p.lost_w = p.given_w = p.change_k = 0.0;
    p.height_m = p.from_room_kg_s = 0.0;
    p.warmer_at_collar_k = around_.warmer_at_collar_k(*case_, gas.temperature_k);
    p.cells.clear();
    std::size_t next = 0;
    for (std::size_t i = 0; i < case_->sections.size(); ++i) {
        const Section& section = case_->sections[i];
        if (section.leaks()) {
            pass_joint(section, p);
        }
        pass_fitting(section, p);
        for (; next < cells_.size() && cells_[next].section == i; ++next) {
            pass_cell(cells_[next], step_s, start_k, nodes_k, p);
        }
        p.height_m += section.rise_m;
    }
}

WarmStage WarmRun::solve(const WarmGas& gas,
                         const FlowControl& control,
                         double step_s,
                         const std::vector<double>& start_k,
                         std::vector<double>& nodes_k) const {
    Passage p;
    p.gas = &case_->gas_high();
    p.set_dilution(gas.air_share);
    // A cold column holds a trickle down that a whole fire would carry: of two flows that balance,
    // the greater is the fire's, for whoever lights it does so with paper and small wood. A burner
    // has what the flue drew before; where joints leak, the search for their pressure needs a whole
    // flow to begin with.
    const bool whole = control.kindled || (leaks_ && control.tended);
    p.started_kg_s = whole ? control.asked_kg_s : gas.flow_kg_s;
    p.outlet_pa = gas.outlet_pa;
    WarmStage stage = settle(gas, control, step_s, start_k, nodes_k, p);
    if (control.tended && damper_for_strong_draft_
        && stage.draft_pa > case_->appliance.draft_greatest_pa) {
        p.turned = true;
        stage = settle(gas, control, step_s, start_k, nodes_k, p);
    }
    return stage;
}

WarmStage WarmRun::settle(const WarmGas& gas,
                          const FlowControl& control,
                          double step_s,
                          const std::vector<double>& start_k,
                          std::vector<double>& nodes_k,
                          Passage& p) const {
    const double trickle = trickle_share * case_->appliance.high.gas_flow_kg_s;
    p.started_kg_s = std::max(p.started_kg_s, trickle);
    p.room_pa = control.room_pressure_pa;
    OutletSearch search;
    WarmStage stage;
    for (int pass = 0; pass < most_passes; ++pass) {
        follow(gas, step_s, start_k, nodes_k, p);
        // A regulator's air moves the room, and the room the regulator: one is held while the other
        // is looked for.
        const double room_pa = room_pressure_pa(control, p);
        const bool room_has_moved = leaks_ && std::abs(room_pa - p.room_pa) > settled_pa;
        p.room_pa = leaks_ ? p.room_pa : room_pa;
        stage.flow_kg_s = p.started_kg_s;
        stage.outlet_pa = around_.top_pressure_pa - p.buoyancy_pa + p.losses_pa;
        stage.draft_pa = p.room_pa - stage.outlet_pa;
        // Losses and the appliance's resistance both grow with the flow squared, so that the flow
        // that balances follows from the draft there would be at rest. What joints let in flows
        // whatever the fire does.
        const double growth = p.losses_pa / (p.started_kg_s * p.flow_kg_s);
        const double at_rest_pa =
            stage.draft_pa + control.fan_pa + growth * p.started_kg_s * p.started_kg_s;
        const double resistance = control.resistance_pa_s2_kg2 + growth;
        stage.room_pa = p.room_pa;
        stage.lift_pa = at_rest_pa - control.fan_pa - p.room_pa;
        stage.run_resistance_pa_s2_kg2 = growth;
        stage.open_flow_kg_s = at_rest_pa > 0.0 && resistance > 0.0
                                   ? std::sqrt(at_rest_pa / resistance)
                                   : (at_rest_pa > 0.0 ? control.asked_kg_s : 0.0);
        const double next =
            control.pushed ? control.asked_kg_s
                           : std::max(std::min(control.asked_kg_s, stage.open_flow_kg_s), trickle);
        const double change = std::abs(next - p.started_kg_s);
        const double miss_pa = leaks_ ? stage.outlet_pa - p.outlet_pa : 0.0;
        const bool settled = change <= settled_flow * p.started_kg_s && p.change_k <= settled_k
                             && std::abs(miss_pa) <= settled_pa;
        stage.settled = settled && !room_has_moved;
        if (stage.settled) {
            break;
        }
        if (settled) {
            p.room_pa = room_pa;
            search.restart();
        }
        p.outlet_pa = search.next(p.outlet_pa, miss_pa);
        // A draft at a pressure that is not the flue's own says nothing about the flow.
        if (std::abs(miss_pa) <= near_enough_pa) {
            if (change > settled_flow * p.started_kg_s) {
                search.restart();
            }
            p.started_kg_s = next;
        }
    }
    stage.top_k = p.temperature_k;
    stage.cells = std::move(p.cells);
    stage.given_w = p.given_w;
    stage.lost_w = p.lost_w;
    stage.dew_point_k =
        dew_point::water_k(p.gas->diluted(gas.air_share).water_vapour * around_.air_pressure_pa);
    return stage;
}

} // namespace fluewright
