#include "model/march/run_in_room.hpp"
#include "trial.hpp"

#include <algorithm>
#include <cmath>

using namespace fluewright;
using namespace fluewright::property;

namespace {

bool finite(const Station& s) {
    return std::isfinite(s.gas_temperature_k) && std::isfinite(s.inner_wall_k)
           && std::isfinite(s.outer_wall_k) && std::isfinite(s.velocity_m_s)
           && std::isfinite(s.reynolds) && std::isfinite(s.flow_kg_s)
           && std::isfinite(s.pressure_pa) && std::isfinite(s.pressure_in_zone_pa);
}

bool finite(const MarchResult& m) {
    return std::isfinite(m.outlet_pressure_pa + m.top_pressure_pa + m.buoyancy_pa + m.friction_pa
                         + m.fittings_pa + m.acceleration_pa + m.heat_loss_w + m.enthalpy_out_w);
}

/// What is wrong with a state, or nothing.
std::string fault_of(const Case& resolved, const StateResult& state) {
    if (state.status == Status::no_answer) {
        return "no answer";
    }
    if (!std::isfinite(state.draft_pa + state.draft_needed_pa + state.capacity_kg_s
                       + state.gas_flow_kg_s + state.gas_temperature_k)
        || !finite(state.flow)) {
        return "a total is not finite";
    }
    if (!std::isfinite(state.door.top_edge_pa + state.door.face_velocity_m_s
                       + state.door.opening_share + state.door.box_temperature_k)
        || state.door.opening_share < 0.0) {
        return "the door has no meaning";
    }
    const bool has_profile = state.status == Status::solved || !state.stations.empty();
    if (has_profile && state.stations.empty()) {
        return "the profile is missing";
    }
    for (const Station& station : state.stations) {
        if (!finite(station)) {
            return "a station is not finite";
        }
        constexpr double slack_k = 0.01;
        // Walls that a fire with the door shut has warmed give that back.
        const double hottest_k = is_door_open(state.kind)
                                     ? std::max({state.gas_temperature_k,
                                                 resolved.appliance.high.gas_temperature_k,
                                                 resolved.appliance.low.gas_temperature_k})
                                     : state.gas_temperature_k;
        if (state.kind != StateKind::idle
            && (station.gas_temperature_k > hottest_k + 60.0 + slack_k
                || station.gas_temperature_k < 200.0)) {
            return "a gas temperature nothing can bring about";
        }
    }
    return {};
}

} // namespace

TEST_CASE("every state of every installation has finite answers") {
    for (std::uint64_t seed = 0; seed < many; ++seed) {
        const Trial t = trial(seed);
        const Solution solution = solve(t.resolved, Detail::stations);
        if (solution.states.size() != states_of(t.resolved).size() * t.resolved.weathers.size()) {
            fail(t, "states are missing");
        }
        for (const StateResult& state : solution.states) {
            if (const std::string fault = fault_of(t.resolved, state); !fault.empty()) {
                fail(t, fmt::format("{}, weather {}: {}", name(state.kind), state.weather, fault));
            }
        }
    }
    SUCCEED();
}

TEST_CASE("totals alone are the totals of the full profile") {
    for (std::uint64_t seed = 0; seed < some / 4; ++seed) {
        const Trial t = trial(seed);
        const Solution full = solve(t.resolved, Detail::stations);
        const Solution totals = solve(t.resolved, Detail::totals);
        for (std::size_t i = 0; i < full.states.size(); ++i) {
            if (full.states[i].draft_pa != totals.states[i].draft_pa
                || full.states[i].capacity_kg_s != totals.states[i].capacity_kg_s
                || !totals.states[i].stations.empty()) {
                fail(t, std::string{name(full.states[i].kind)});
            }
        }
    }
    SUCCEED();
}

TEST_CASE("the unit system changes nothing but the output") {
    for (std::uint64_t seed = 0; seed < some / 4; ++seed) {
        const Trial t = trial(seed);
        Installation us = t.written;
        us.units = FileUnits::us;
        us.us_quantities = 12;
        const Case as_us = resolved(us);
        if (as_us.units != UnitSystem::us) {
            fail(t, "not taken as US units");
        }
        const Solution a = solve(t.resolved, Detail::totals);
        const Solution b = solve(as_us, Detail::totals);
        for (std::size_t i = 0; i < a.states.size(); ++i) {
            if (a.states[i].draft_pa != b.states[i].draft_pa
                || a.states[i].gas_flow_kg_s != b.states[i].gas_flow_kg_s) {
                fail(t, std::string{name(a.states[i].kind)});
            }
        }
    }
    SUCCEED();
}

TEST_CASE("the open air control is a balance, and at its capacity the run has the required draft") {
    for (std::uint64_t seed = 0; seed < some; ++seed) {
        const Trial t = trial(seed);
        const ApplianceCase& appliance = t.resolved.appliance;
        for (const StateResult& state : solve(t.resolved, Detail::totals).states) {
            if (state.status != Status::solved) {
                continue;
            }
            if (state.kind == StateKind::free_burn
                && std::abs(state.margin_pa()) > 1e-4 * (1.0 + state.draft_needed_pa)) {
                fail(t,
                     fmt::format("margin {} of {} Pa", state.margin_pa(), state.draft_needed_pa));
            }
            if (state.kind != StateKind::free_burn || state.capacity_kg_s <= 0.0) {
                continue;
            }
            GasStream stream = stream_of(t.resolved, GasChoice::high_fire);
            stream.flow_kg_s = state.capacity_kg_s * appliance.high.gas_per_fuel_kg_kg;
            const FlueModel idle = burning(t.resolved, state.weather);
            RunInRoom run = RunInRoom::in_house(idle, !t.resolved.house.outdoor_air);
            const double draft =
                run.solve(stream, stream.flow_kg_s - state.capacity_kg_s).draft_pa();
            const double flux = stream.flow_kg_s / appliance.outlet_area_m2;
            const double head = 0.5 * flux * flux
                                * t.resolved.gas_high().products().gas_constant_j_kgk
                                * stream.temperature_k / t.resolved.air_pressure_pa;
            const double needed = std::max(appliance.high.draft_needed_pa, head);
            if (std::abs(draft - needed) > 1e-3 * (1.0 + needed)) {
                fail(t, fmt::format("draft {} Pa at capacity, needed {}", draft, needed));
            }
        }
    }
    SUCCEED();
}
