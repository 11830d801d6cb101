#include "fluewright/advice/score.hpp"

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace fluewright {
namespace {

bool has_open_front(const Case& installation) {
    return installation.appliance.type == ApplianceType::fireplace;
}

} // namespace

double door_wanted(const Case& installation) {
    return has_open_front(installation) ? 1.0
                                        : catalog::default_of(DefaultId::door_opening_wanted).value;
}

StateVerdict judge(const Case& installation, const StateResult& state) {
    const bool open_front = has_open_front(installation);
    StateVerdict v;
    switch (state.kind) {
    case StateKind::high_fire:
    case StateKind::low_fire:
        v.counts = true;
        v.spare = state.margin_pa();
        break;
    case StateKind::free_burn:
        v.spare = state.margin_pa();
        v.passes = state.capacity_kg_s >= installation.appliance.high.burn_rate_kg_s;
        return v;
    case StateKind::standing:
    case StateKind::cold_start:
        v.spare = state.draft_pa;
        break;
    case StateKind::door_open_high:
        v.counts = open_front;
        v.kind = Kind::fraction;
        v.spare = state.door.opening_share - door_wanted(installation);
        break;
    case StateKind::door_open_embers:
        v.counts = !open_front;
        v.kind = Kind::fraction;
        v.spare =
            state.door.opening_share - catalog::default_of(DefaultId::door_opening_wanted).value;
        break;
    }
    v.passes = v.spare >= 0.0;
    return v;
}

double relative_spare(const StateVerdict& verdict, const StateResult& state) {
    if (verdict.kind == Kind::pressure) {
        return verdict.spare / std::max(1.0, state.draft_needed_pa);
    }
    return verdict.spare / catalog::default_of(DefaultId::door_opening_wanted).value;
}

std::vector<StateKind> deciding_states(const Case& installation) {
    std::vector<StateKind> kinds{StateKind::high_fire, StateKind::low_fire};
    if (installation.appliance.has_door) {
        kinds.push_back(has_open_front(installation) ? StateKind::door_open_high
                                                     : StateKind::door_open_embers);
    }
    return kinds;
}

void sum_up(const Case& installation, Score& score) {
    const double greatest_pa = installation.appliance.draft_greatest_pa;
    score.least_spare = std::numeric_limits<double>::infinity();
    score.greatest_over = -1.0;
    score.passes = true;
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        const StateVerdict& verdict = score.verdicts[i];
        const double spare = relative_spare(verdict, score.states[i]);
        if (spare < score.least_spare) {
            score.least_spare = spare;
            score.limiting = i;
        }
        score.passes = score.passes && verdict.passes;
        if (verdict.kind == Kind::pressure && greatest_pa > 0.0) {
            score.greatest_over =
                std::max(score.greatest_over, score.states[i].draft_pa / greatest_pa - 1.0);
        }
    }
}

Score score(const Case& installation) {
    Score result;
    const std::vector<StateKind> kinds = deciding_states(installation);
    result.states.reserve(kinds.size() * installation.weathers.size());
    std::optional<FlueModel> model;
    for (std::size_t weather = 0; weather < installation.weathers.size(); ++weather) {
        const Surroundings air = surroundings_of(installation, weather, Fire::burning);
        model = model ? FlueModel(*model, air) : FlueModel(installation, air);
        for (const StateKind kind : kinds) {
            StateResult state = solve_state(*model, kind, Detail::totals);
            state.weather = weather;
            result.verdicts.push_back(judge(installation, state));
            result.states.push_back(std::move(state));
        }
    }
    sum_up(installation, result);
    return result;
}

std::string state_name(const Case& installation, const StateResult& state) {
    return std::string{name(state.kind)} + ", " + installation.weathers[state.weather].name;
}

} // namespace fluewright
