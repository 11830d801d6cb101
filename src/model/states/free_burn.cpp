#include "free_burn.hpp"

#include "fixed_fire.hpp"
#include "fluewright/model/states/vent_limit.hpp"
#include "model/march/flow_search.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// The least flow searched for a balance, of that where the search begins; of a fire that the run
/// cannot vent it begins lower, by steps.
constexpr double least_flow_share = 0.03;
constexpr double step_to_limit = 0.5;
constexpr double least_start_share = 1e-6;

} // namespace

void solve_free_burn(RunInRoom& run,
                     Detail detail,
                     const StateResult* at_high_fire,
                     StateResult& state) {
    const FlueModel& model = run.model();
    const Case& c = model.resolved();
    const Firing& high = c.appliance.high;
    GasStream stream{.gas = GasChoice::high_fire,
                     .air_share = 0.0,
                     .flow_kg_s = high.gas_flow_kg_s,
                     .temperature_k = gas_temperature_k(model, high)};
    const double air_share = std::max(0.0, 1.0 - 1.0 / high.gas_per_fuel_kg_kg);
    const auto point_of = [](double flow_kg_s, double draft_pa, const MarchResult& march) {
        return FlowPoint{.flow_kg_s = flow_kg_s,
                         .lift_pa = draft_pa + march.loss_pa(),
                         .loss_pa = march.loss_pa(),
                         .density_kg_m3 = 0.0};
    };
    const auto point_at = [&](double flow_kg_s, double foretold_pa) {
        stream.flow_kg_s = flow_kg_s;
        const RunInRoom::Answer answer = run.solve(
            stream, air_share * flow_kg_s, {}, {.draft_pa = foretold_pa, .is_one_of_many = true});
        return point_of(flow_kg_s, answer.draft_pa(), answer.flow);
    };
    const auto fill_at = [&](double flow_kg_s, double foretold_pa) {
        stream.flow_kg_s = flow_kg_s;
        fill_flow(run, stream, air_share * flow_kg_s, foretold_pa, detail, state);
        return point_of(flow_kg_s, state.draft_pa, state.flow);
    };
    // What the gas takes to gain its speed in the outlet: an appliance that asks for no draft still
    // asks for this.
    const double density_kg_m3 =
        model.surroundings().air_pressure_pa
        / (c.gas_high().products().gas_constant_j_kgk * stream.temperature_k);
    const auto head_pa = [&](double flow_kg_s) {
        const double flux = flow_kg_s / c.appliance.outlet_area_m2;
        return 0.5 * flux * flux / density_kg_m3;
    };
    // The appliance resists with the square of the flow; its needed draft at the nominal flow sets
    // the scale.
    const double needed_pa = std::max(high.draft_needed_pa, head_pa(high.gas_flow_kg_s));
    const auto resistance_pa = [&](double flow_kg_s) {
        const double ratio = flow_kg_s / high.gas_flow_kg_s;
        return needed_pa * ratio * ratio;
    };
    FlowPoint start =
        at_high_fire != nullptr
            ? point_of(at_high_fire->gas_flow_kg_s,
                       at_high_fire->room.pressure_pa - at_high_fire->flow.outlet_pressure_pa,
                       at_high_fire->flow)
            : point_at(high.gas_flow_kg_s, nothing_foretold_pa);
    // A fire that the run cannot vent by far is no place to begin at.
    while (start.left_pa() < -vent_limit::overpressure_pa
           && start.flow_kg_s > least_start_share * high.gas_flow_kg_s) {
        start = point_at(start.flow_kg_s * step_to_limit, nothing_foretold_pa);
    }
    // No lift that a flue can have speeds gas up to the limit of speed: a balance lies below.
    FlowSearch search(
        point_at,
        {.least_kg_s = least_flow_share * start.flow_kg_s,
         .greatest_kg_s = std::max(start.flow_kg_s, vent_limit::fastest_kg_s(model, stream)),
         .smooth = run.is_smooth(),
         .accepted_share = run.accepted_share(),
         .leaks = model.has_leaks(),
         .endless_lift_pa = model.uniform_lift_pa(density_kg_m3),
         .endless_density_kg_m3 = density_kg_m3});
    search.add(start);
    const std::optional<double> balance =
        search.settle([&](const FlowPoint& p) { return p.left_pa() - resistance_pa(p.flow_kg_s); },
                      start.flow_kg_s,
                      fill_at);
    const std::optional<double> capacity = search.greatest_balance(
        [&](const FlowPoint& p) {
            return p.left_pa() - std::max(high.draft_needed_pa, head_pa(p.flow_kg_s));
        },
        start.flow_kg_s);
    state.capacity_kg_s = capacity ? *capacity / high.gas_per_fuel_kg_kg : 0.0;
    if (!balance) {
        state.status = Status::no_flow;
        return;
    }
    state.burn_rate_kg_s = *balance / high.gas_per_fuel_kg_kg;
    state.draft_needed_pa = resistance_pa(*balance);
    if (state.status == Status::solved
        && !vent_limit::holds(model, stream, state.flow, state.draft_pa)) {
        state.status = Status::no_answer;
    }
}

} // namespace fluewright
