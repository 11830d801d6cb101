#include "fluewright/model/states/states.hpp"

#include "door_open.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "fluewright/model/states/vent_limit.hpp"
#include "house_state.hpp"
#include "model/march/flow_search.hpp"
#include "model/warmup/kindling.hpp"
#include "room_law.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

/// The least flow searched for a balance, of that where the search begins; of a fire that the run
/// cannot vent it begins lower, by steps.
constexpr double least_flow_share = 0.03;
constexpr double step_to_limit = 0.5;
constexpr double least_start_share = 1e-6;

void fill_flow(const FlueModel& model, const GasStream& stream, Detail detail, StateResult& state) {
    if (detail == Detail::stations) {
        state.stations.resize(model.station_count());
    }
    state.flow = model.solve(stream, state.stations);
    state.gas_flow_kg_s = stream.flow_kg_s;
    state.gas_temperature_k = stream.temperature_k;
    state.draft_pa = model.draft_pa(state.flow);
    if (!state.flow.meets_mouth) {
        state.status = Status::no_answer;
    }
}

/// A fire at its burn rate, or where the run cannot vent that, at the greatest one it can.
class FixedFire {
public:
    FixedFire(const FlueModel& model, const RoomLaw& room, const Firing& firing, GasChoice gas)
        : model_(model), room_(room),
          firing_(firing), stream_{.gas = gas,
                                   .air_share = 0.0,
                                   .flow_kg_s = firing.gas_flow_kg_s,
                                   .temperature_k = gas_temperature_k(model, firing)} {}

    void fill(Detail detail, StateResult& state) {
        state.draft_needed_pa = firing_.draft_needed_pa;
        fill_at(1.0, detail, state);
        if (vent_limit::holds(model_, stream_, state.flow, state.draft_pa)) {
            return;
        }
        fill_at(greatest_share(), detail, state);
        // A march that does not end well within the limits is no matter of the burn rate.
        const bool at_limit =
            state.draft_pa <= -near_limit * vent_limit::overpressure_pa
            || vent_limit::mach_of(model_, stream_, state.flow) >= near_limit * vent_limit::mach;
        state.status = at_limit ? Status::cannot_vent : Status::no_answer;
        state.draft_pa = std::max(state.draft_pa, -vent_limit::overpressure_pa);
    }

private:
    static constexpr double near_limit = 0.5;

    /// The room against outdoors as this share of the fire's air leaves it.
    [[nodiscard]] double room_pa(double share) const {
        return room_.pressure_pa(share * (firing_.gas_flow_kg_s - firing_.burn_rate_kg_s));
    }

    [[nodiscard]] double greatest_share() {
        return vent_limit::greatest_share([&](double share) {
            stream_.flow_kg_s = share * firing_.gas_flow_kg_s;
            const MarchResult flow = model_.solve(stream_);
            const double draft_pa = room_pa(share) - flow.outlet_pressure_pa;
            return vent_limit::holds(model_, stream_, flow, draft_pa);
        });
    }

    void fill_at(double share, Detail detail, StateResult& state) {
        stream_.flow_kg_s = share * firing_.gas_flow_kg_s;
        state.burn_rate_kg_s = share * firing_.burn_rate_kg_s;
        if (room_.is_fixed()) {
            fill_flow(model_, stream_, detail, state);
        } else {
            fill_flow(FlueModel(model_, room_pa(share)), stream_, detail, state);
        }
    }

    const FlueModel& model_;
    const RoomLaw& room_;
    const Firing& firing_;
    GasStream stream_;
};

bool has_damper_for_strong_draft(const Case& c) {
    return std::any_of(c.sections.begin(), c.sections.end(), [](const Section& section) {
        return section.loss_when_strong > section.loss;
    });
}

/// Where the draft is more than the appliance holds, whoever tends the fire turns the damper.
void burning_held_back(const FlueModel& model,
                       const RoomLaw& room,
                       const Firing& firing,
                       GasChoice gas,
                       Detail detail,
                       StateResult& state) {
    FixedFire(model, room, firing, gas).fill(detail, state);
    const Case& c = model.resolved();
    if (state.draft_pa <= c.appliance.draft_greatest_pa || !has_damper_for_strong_draft(c)) {
        return;
    }
    Case turned = c;
    for (Section& section : turned.sections) {
        section.loss = std::max(section.loss, section.loss_when_strong);
    }
    const FlueModel turned_model(turned, model.surroundings());
    FixedFire(turned_model, room, firing, gas).fill(detail, state);
}

/// What the states of one weather that are solved already tell those behind them.
using SolvedBefore = std::span<const StateResult>;

const StateResult* find_state(SolvedBefore before, StateKind kind) {
    const auto found = std::find_if(
        before.begin(), before.end(), [&](const StateResult& state) { return state.kind == kind; });
    return found == before.end() ? nullptr : &*found;
}

/// The profile of a fire that is solved already at its burn rate. The gas flows as it is fired, so
/// that temperatures are the same whatever the pressure of the room.
std::span<const Station> profile_of(SolvedBefore before, StateKind kind) {
    const StateResult* state = find_state(before, kind);
    return state != nullptr && state->status == Status::solved
               ? std::span<const Station>{state->stations}
               : std::span<const Station>{};
}

/// `at_high_fire` is the high fire of the same model, where it is solved already: the first march
/// of the search.
void free_burn(const FlueModel& model,
               const RoomLaw& room,
               Detail detail,
               const StateResult* at_high_fire,
               StateResult& state) {
    const Case& c = model.resolved();
    const Firing& high = c.appliance.high;
    GasStream stream{.gas = GasChoice::high_fire,
                     .air_share = 0.0,
                     .flow_kg_s = high.gas_flow_kg_s,
                     .temperature_k = gas_temperature_k(model, high)};
    const double air_share = std::max(0.0, 1.0 - 1.0 / high.gas_per_fuel_kg_kg);
    const auto room_pa = [&](double flow_kg_s) { return room.pressure_pa(air_share * flow_kg_s); };
    const auto point_of = [&](double flow_kg_s, const MarchResult& march) {
        return FlowPoint{.flow_kg_s = flow_kg_s,
                         .lift_pa = room_pa(flow_kg_s) - march.outlet_pressure_pa + march.loss_pa(),
                         .loss_pa = march.loss_pa(),
                         .density_kg_m3 = 0.0};
    };
    const auto point_at = [&](double flow_kg_s) {
        stream.flow_kg_s = flow_kg_s;
        return point_of(flow_kg_s, model.solve(stream));
    };
    const auto fill_at = [&](double flow_kg_s) {
        stream.flow_kg_s = flow_kg_s;
        if (room.is_fixed()) {
            fill_flow(model, stream, detail, state);
        } else {
            fill_flow(FlueModel(model, room_pa(flow_kg_s)), stream, detail, state);
        }
        return point_of(flow_kg_s, state.flow);
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
    FlowPoint start = at_high_fire != nullptr
                          ? point_of(at_high_fire->gas_flow_kg_s, at_high_fire->flow)
                          : point_at(high.gas_flow_kg_s);
    // A fire that the run cannot vent by far is no place to begin at.
    while (start.left_pa() < -vent_limit::overpressure_pa
           && start.flow_kg_s > least_start_share * high.gas_flow_kg_s) {
        start = point_at(start.flow_kg_s * step_to_limit);
    }
    // No lift that a flue can have speeds gas up to the limit of speed: a balance lies below.
    FlowSearch search(
        point_at,
        {.least_kg_s = least_flow_share * start.flow_kg_s,
         .greatest_kg_s = std::max(start.flow_kg_s, vent_limit::fastest_kg_s(model, stream)),
         .smooth = !model.has_leaks(),
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

/// No fire: the air in the flue has the temperature of the zone each part stands in.
void standing(const FlueModel& model, Detail detail, StateResult& state) {
    const Surroundings& around = model.surroundings();
    const Case& c = model.resolved();
    double column_pa = 0.0;
    for (const Section& section : c.sections) {
        column_pa += (around.outdoor_density_kg_m3
                      - around.density_kg_m3[static_cast<std::size_t>(section.zone)])
                     * constants::gravity_m_s2 * section.rise_m;
    }
    state.flow.buoyancy_pa = column_pa;
    state.flow.outlet_pressure_pa = around.mouth_pressure_pa - column_pa;
    state.flow.mouth_pressure_pa = around.mouth_pressure_pa;
    state.draft_pa = model.draft_pa(state.flow);
    state.gas_temperature_k = around.temperature_k[static_cast<std::size_t>(Zone::room)];
    if (detail == Detail::totals) {
        return;
    }
    state.stations.resize(model.station_count());
    double height_m = 0.0;
    double distance_m = 0.0;
    double pressure_pa = state.flow.outlet_pressure_pa;
    for (std::size_t i = 0; i < state.stations.size(); ++i) {
        const Section& section = c.sections[i == 0 ? 0 : i - 1];
        const auto zone = static_cast<std::size_t>(section.zone);
        if (i > 0) {
            height_m += section.rise_m;
            distance_m += section.length_m;
            pressure_pa += (around.outdoor_density_kg_m3 - around.density_kg_m3[zone])
                           * constants::gravity_m_s2 * section.rise_m;
        }
        Station& s = state.stations[i];
        s.section = i == 0 ? 0 : i - 1;
        s.distance_m = distance_m;
        s.height_m = height_m;
        s.gas_temperature_k = s.inner_wall_k = s.outer_wall_k = around.temperature_k[zone];
        s.pressure_pa = pressure_pa;
        s.pressure_in_zone_pa = pressure_pa - around.pressure_pa(section.zone, height_m);
    }
}

/// An open front has no door to shut before.
double open_since_s(const ApplianceCase& appliance) {
    static const double reload_s = catalog::default_of(DefaultId::door_open_s).value;
    return has_open_front(appliance) ? std::numeric_limits<double>::infinity() : reload_s;
}

StateResult
solve_in_room(const FlueModel& model, StateKind kind, Detail detail, SolvedBefore before) {
    const ApplianceCase& appliance = model.resolved().appliance;
    const RoomLaw room(model, kind);
    StateResult state;
    state.kind = kind;
    switch (kind) {
    case StateKind::high_fire:
        burning_held_back(model, room, appliance.high, GasChoice::high_fire, detail, state);
        break;
    case StateKind::low_fire:
        burning_held_back(model, room, appliance.low, GasChoice::low_fire, detail, state);
        break;
    case StateKind::free_burn:
        free_burn(model, room, detail, find_state(before, StateKind::high_fire), state);
        break;
    case StateKind::door_open_high:
    case StateKind::door_open_embers:
        solve_door_open(model,
                        room,
                        open_since_s(appliance),
                        detail,
                        profile_of(before, fire_before(kind)),
                        state);
        break;
    case StateKind::standing:
        standing(model, detail, state);
        state.cold = cold_start(model.resolved(), model.surroundings());
        break;
    case StateKind::cold_start:
        solve_kindling(model, detail, state);
        state.cold = cold_start(model.resolved(), model.surroundings());
        break;
    }
    if (!state.flow.meets_mouth && state.status == Status::solved) {
        state.status = Status::no_answer;
    }
    state.room.taken_kg_s = room_air_kg_s(model.resolved(), state);
    state.room.pressure_pa = room.pressure_pa(state.room.taken_kg_s);
    return state;
}

StateResult solve_alone(const FlueModel& model, StateKind kind, Detail detail) {
    return solve_in_room(model, kind, detail, {});
}

/// In its room or with its house. Joints of a run in a house pass air by a room pressure that each
/// state has of its own, so that there what is solved before serves nothing.
StateResult solve_one(const FlueModel& model, StateKind kind, Detail detail, SolvedBefore before) {
    const bool in_house = model.surroundings().house.known();
    StateResult state = in_house && model.has_leaks() && fire_of(kind) == Fire::burning
                            ? solve_with_house(model, kind, detail, solve_alone)
                            : solve_in_room(model, kind, detail, before);
    if (in_house) {
        tell_house(model, state);
    }
    return state;
}

} // namespace

StateResult solve_state(const FlueModel& model, StateKind kind, Detail detail) {
    return solve_one(model, kind, detail, {});
}

bool burns_freely(const ApplianceCase& appliance) {
    return is_fed_by_hand(appliance) && !has_open_front(appliance);
}

std::vector<StateKind> states_of(const Case& resolved) {
    std::vector<StateKind> kinds{StateKind::high_fire};
    if (resolved.appliance.has_low_fire) {
        kinds.push_back(StateKind::low_fire);
    }
    if (burns_freely(resolved.appliance)) {
        kinds.push_back(StateKind::free_burn);
    }
    if (resolved.appliance.has_door) {
        kinds.push_back(StateKind::door_open_high);
        kinds.push_back(StateKind::door_open_embers);
    }
    kinds.push_back(StateKind::standing);
    kinds.push_back(StateKind::cold_start);
    return kinds;
}

Solution solve(const Case& resolved, Detail detail) {
    Solution solution;
    const std::vector<StateKind> kinds = states_of(resolved);
    solution.states.reserve(kinds.size() * resolved.weathers.size());
    const bool tended_damper = has_damper_for_strong_draft(resolved);
    std::optional<FlueModel> model;
    for (std::size_t weather = 0; weather < resolved.weathers.size(); ++weather) {
        const Surroundings burning_air = surroundings_of(resolved, weather, Fire::burning);
        model = model ? FlueModel(*model, burning_air) : FlueModel(resolved, burning_air);
        const FlueModel idle(*model, surroundings_of(resolved, weather, Fire::out));
        const std::size_t first = solution.states.size();
        // A fire's profile serves the door that is opened on it.
        const bool keeps_profiles = resolved.appliance.has_door && !model->has_leaks();
        for (const StateKind kind : kinds) {
            const bool shares = kind == StateKind::free_burn ? !tended_damper : keeps_profiles;
            const SolvedBefore before{solution.states.data() + first,
                                      solution.states.size() - first};
            solution.states.push_back(
                solve_one(fire_of(kind) == Fire::out ? idle : *model,
                          kind,
                          keeps_profiles && has_closed_fire(kind) && kind != StateKind::free_burn
                              ? Detail::stations
                              : detail,
                          shares ? before : SolvedBefore{}));
            solution.states.back().weather = weather;
        }
        if (detail == Detail::totals) {
            for (std::size_t i = first; i < solution.states.size(); ++i) {
                solution.states[i].stations = {};
            }
        }
    }
    return solution;
}

} // namespace fluewright
