#include "fluewright/model/states/states.hpp"

#include "door_open.hpp"
#include "fixed_fire.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "free_burn.hpp"
#include "house_state.hpp"
#include "model/warmup/kindling.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

constexpr std::size_t state_kinds = words_of(StateKind{}).size();

/// What the states of one weather that are solved already tell those behind them.
using SolvedBefore = std::span<const StateResult>;

const StateResult* find_state(SolvedBefore before, StateKind kind) {
    const auto found = std::find_if(
        before.begin(), before.end(), [&](const StateResult& state) { return state.kind == kind; });
    return found == before.end() ? nullptr : &*found;
}

/// No fire: the air in the flue has the temperature of the zone each part stands in.
void idle(const FlueModel& model, Detail detail, StateResult& state) {
    const Surroundings& around = model.surroundings();
    const Case& c = model.resolved();
    double column_pa = 0.0;
    for (const Section& section : c.sections) {
        column_pa += (around.outdoor_density_kg_m3
                      - around.density_kg_m3[static_cast<std::size_t>(section.zone)])
                     * constants::gravity_m_s2 * section.rise_m;
    }
    state.flow.buoyancy_pa = column_pa;
    state.flow.outlet_pressure_pa = around.top_pressure_pa - column_pa;
    state.flow.top_pressure_pa = around.top_pressure_pa;
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
        Station& s = state.stations[i];
        s.joint_pressure_pa = pressure_pa - around.pressure_pa(section.zone, height_m);
        if (i > 0) {
            height_m += section.rise_m;
            distance_m += section.length_m;
            pressure_pa += (around.outdoor_density_kg_m3 - around.density_kg_m3[zone])
                           * constants::gravity_m_s2 * section.rise_m;
        }
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

/// The run in the room that this state makes.
RunInRoom run_in(const FlueModel& model, StateKind kind, Search search) {
    return fire_of(kind) == Fire::burning ? RunInRoom::in_house(
               model, !model.resolved().house.outdoor_air || is_door_open(kind), search)
                                          : RunInRoom(model, search);
}

/// The profile of the fire before a door was opened: of what is solved already, or solved now and
/// kept in `own`.
std::span<const Station> profile_of(const FlueModel& model,
                                    StateKind kind,
                                    SolvedBefore before,
                                    Search search,
                                    std::vector<Station>& own) {
    const StateResult* known = find_state(before, kind);
    if (known != nullptr && !known->stations.empty()) {
        return known->stations;
    }
    StateResult fire;
    fire.kind = kind;
    RunInRoom run = run_in(model, kind, search);
    solve_fixed_fire(run, Detail::stations, fire);
    own = std::move(fire.stations);
    return own;
}

StateResult solve_one(const FlueModel& model,
                      StateKind kind,
                      Detail detail,
                      SolvedBefore before,
                      Search search,
                      RunInRoom::Memory* memory = nullptr) {
    const ApplianceCase& appliance = model.resolved().appliance;
    RunInRoom run = run_in(model, kind, search);
    if (memory != nullptr) {
        run.remember(*memory);
    }
    StateResult state;
    state.kind = kind;
    state.room.pressure_pa = model.surroundings().room_pressure_pa;
    switch (kind) {
    case StateKind::high_fire:
    case StateKind::low_fire:
        solve_fixed_fire(run, detail, state);
        break;
    case StateKind::free_burn:
        solve_free_burn(run, detail, find_state(before, StateKind::high_fire), state);
        break;
    case StateKind::door_open_high:
    case StateKind::door_open_embers: {
        std::vector<Station> own;
        solve_door_open(run,
                        open_since_s(appliance),
                        detail,
                        has_open_front(appliance)
                            ? std::span<const Station>{}
                            : profile_of(model, fire_before(kind), before, search, own),
                        state);
        break;
    }
    case StateKind::idle:
        idle(model, detail, state);
        state.cold = cold_start(model.resolved(), model.surroundings());
        break;
    case StateKind::cold_start:
        solve_kindling(model, detail, state);
        state.cold = cold_start(model.resolved(), model.surroundings());
        break;
    }
    state.marches = run.marches();
    if (memory != nullptr && fire_of(kind) == Fire::burning) {
        *memory = run.memory();
    }
    if (!state.flow.meets_top && state.status == Status::solved) {
        state.status = Status::no_answer;
    }
    state.room.taken_kg_s = room_air_kg_s(model.resolved(), state);
    if (model.surroundings().house.known()) {
        tell_house(model, state);
    }
    return state;
}

} // namespace

StateResult solve_state(const FlueModel& model, StateKind kind, Detail detail) {
    return solve_one(model, kind, detail, {}, Search::coupled);
}

StateResult solve_state_by_nesting(const FlueModel& model, StateKind kind, Detail detail) {
    return solve_one(model, kind, detail, {}, Search::nested);
}

std::vector<DoorMoment> open_door_moments(const FlueModel& model, const StateResult& state) {
    std::vector<Station> own;
    return door_moments(run_in(model, state.kind, Search::coupled),
                        profile_of(model, fire_before(state.kind), {}, Search::coupled, own),
                        state);
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
    kinds.push_back(StateKind::idle);
    kinds.push_back(StateKind::cold_start);
    return kinds;
}

Solution solve(const Case& resolved, Detail detail) {
    return solve(resolved, detail, states_of(resolved));
}

Solution solve(const Case& resolved, Detail detail, std::span<const StateKind> kinds) {
    Solution solution;
    const bool has_idle = std::any_of(
        kinds.begin(), kinds.end(), [](StateKind kind) { return fire_of(kind) == Fire::out; });
    solution.states.reserve(kinds.size() * resolved.weathers.size());
    const bool tended_damper = has_damper_for_strong_draft(resolved);
    std::array<RunInRoom::Memory, state_kinds> memories;
    std::optional<FlueModel> model;
    for (std::size_t weather = 0; weather < resolved.weathers.size(); ++weather) {
        const Surroundings burning_air = surroundings_of(resolved, weather, Fire::burning);
        model = model ? FlueModel(*model, burning_air) : FlueModel(resolved, burning_air);
        std::optional<FlueModel> idle;
        if (has_idle) {
            idle.emplace(*model, surroundings_of(resolved, weather, Fire::out));
        }
        const std::size_t first = solution.states.size();
        // A fire's profile serves the door that is opened on it.
        const bool keeps_profiles =
            resolved.appliance.has_door && !has_open_front(resolved.appliance);
        for (const StateKind kind : kinds) {
            const bool shares = kind != StateKind::free_burn || !tended_damper;
            const SolvedBefore before{solution.states.data() + first,
                                      solution.states.size() - first};
            solution.states.push_back(
                solve_one(fire_of(kind) == Fire::out ? *idle : *model,
                          kind,
                          keeps_profiles && has_closed_fire(kind) && kind != StateKind::free_burn
                              ? Detail::stations
                              : detail,
                          shares ? before : SolvedBefore{},
                          Search::coupled,
                          &memories[static_cast<std::size_t>(kind)]));
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
