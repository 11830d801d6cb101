#include "fixed_fire.hpp"

#include "fluewright/model/states/vent_limit.hpp"

#include <algorithm>

namespace fluewright {
namespace {

class FixedFire {
public:
    FixedFire(RunInRoom& run, StateKind kind)
        : run_(run), firing_(kind == StateKind::low_fire ? run.model().resolved().appliance.low
                                                         : run.model().resolved().appliance.high),
          stream_{.gas = kind == StateKind::low_fire ? GasChoice::low_fire : GasChoice::high_fire,
                  .air_share = 0.0,
                  .flow_kg_s = firing_.gas_flow_kg_s,
                  .temperature_k = gas_temperature_k(run.model(), firing_)} {}

    void fill(Detail detail, StateResult& state) {
        const FlueModel& model = run_.model();
        state.draft_needed_pa = firing_.draft_needed_pa;
        fill_at(1.0, detail, state);
        if (vent_limit::holds(model, stream_, state.flow, state.draft_pa)) {
            return;
        }
        fill_at(greatest_share(), detail, state);
        // A march that does not end well within the limits is no matter of the burn rate.
        const bool at_limit =
            state.draft_pa <= -near_limit * vent_limit::overpressure_pa
            || vent_limit::mach_of(model, stream_, state.flow) >= near_limit * vent_limit::mach;
        state.status = at_limit ? Status::cannot_vent : Status::no_answer;
        state.draft_pa = std::max(state.draft_pa, -vent_limit::overpressure_pa);
    }

private:
    static constexpr double near_limit = 0.5;

    [[nodiscard]] double air_kg_s(double share) const {
        return share * (firing_.gas_flow_kg_s - firing_.burn_rate_kg_s);
    }

    [[nodiscard]] double greatest_share() {
        return vent_limit::greatest_share([&](double share) {
            stream_.flow_kg_s = share * firing_.gas_flow_kg_s;
            const RunInRoom::Answer answer = run_.solve(stream_, air_kg_s(share));
            return vent_limit::holds(run_.model(), stream_, answer.flow, answer.draft_pa());
        });
    }

    void fill_at(double share, Detail detail, StateResult& state) {
        stream_.flow_kg_s = share * firing_.gas_flow_kg_s;
        state.burn_rate_kg_s = share * firing_.burn_rate_kg_s;
        fill_flow(run_, stream_, air_kg_s(share), nothing_foretold_pa, detail, state);
    }

    RunInRoom& run_;
    const Firing& firing_;
    GasStream stream_;
};

} // namespace

void fill_flow(RunInRoom& run,
               const GasStream& stream,
               double air_kg_s,
               double foretold_draft_pa,
               Detail detail,
               StateResult& state) {
    if (detail == Detail::stations) {
        state.stations.resize(run.model().station_count());
    }
    const RunInRoom::Answer answer =
        run.solve(stream, air_kg_s, state.stations, {.draft_pa = foretold_draft_pa});
    state.flow = answer.flow;
    state.gas_flow_kg_s = stream.flow_kg_s;
    state.gas_temperature_k = stream.temperature_k;
    state.room.pressure_pa = answer.room_pa;
    state.draft_pa = answer.draft_pa();
    if (!state.flow.meets_top) {
        state.status = Status::no_answer;
    }
}

bool has_damper_for_strong_draft(const Case& resolved) {
    return std::any_of(
        resolved.sections.begin(), resolved.sections.end(), [](const Section& section) {
            return section.loss_when_strong > section.loss;
        });
}

void solve_fixed_fire(RunInRoom& run, Detail detail, StateResult& state) {
    FixedFire(run, state.kind).fill(detail, state);
    const Case& c = run.model().resolved();
    if (state.draft_pa <= c.appliance.draft_greatest_pa || !has_damper_for_strong_draft(c)) {
        return;
    }
    Case turned = c;
    for (Section& section : turned.sections) {
        section.loss = std::max(section.loss, section.loss_when_strong);
    }
    const FlueModel turned_model(turned, run.model().surroundings());
    RunInRoom turned_run = run.of(turned_model);
    FixedFire(turned_run, state.kind).fill(detail, state);
}

} // namespace fluewright
