#include "fluewright/advice/score.hpp"

#include "fluewright/advice/opening_words.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace fluewright {
double door_wanted(const Case& resolved) {
    return has_open_front(resolved.appliance)
               ? 1.0
               : catalog::default_of(DefaultId::door_opening_wanted).value;
}

StateVerdict judge(const Case& resolved, const StateResult& state) {
    const bool open_front = has_open_front(resolved.appliance);
    StateVerdict v;
    switch (state.kind) {
    case StateKind::high_fire:
    case StateKind::low_fire:
        v.counts = !open_front; // what the front draws says the same in its own measure
        v.spare = state.margin_pa();
        break;
    case StateKind::free_burn:
        v.spare = state.margin_pa();
        v.passes = state.capacity_kg_s >= resolved.appliance.high.burn_rate_kg_s;
        return v;
    case StateKind::idle:
    case StateKind::cold_start:
        v.spare = state.draft_pa;
        break;
    case StateKind::door_open_high:
        v.counts = open_front;
        v.kind = Kind::fraction;
        v.harm = open_front ? Harm::draft : Harm::reloading;
        v.spare = state.door.opening_share - door_wanted(resolved);
        break;
    case StateKind::door_open_embers:
        v.counts = true; // a front that smokes on embers smokes
        v.kind = Kind::fraction;
        v.harm = open_front ? Harm::draft : Harm::reloading;
        v.spare = state.door.opening_share - door_wanted(resolved);
        break;
    }
    v.passes = v.spare >= 0.0 && state.status != Status::no_answer;
    return v;
}

double relative_spare(const StateVerdict& verdict, const StateResult& state) {
    if (verdict.kind == Kind::pressure) {
        return verdict.spare / std::max(1.0, state.draft_needed_pa);
    }
    return verdict.spare / catalog::default_of(DefaultId::door_opening_wanted).value;
}

std::optional<double>
required_spare(const StateVerdict& verdict, const StateResult& state, const Required& required) {
    if (!verdict.counts) {
        return std::nullopt;
    }
    if (required.asks(verdict.harm)) {
        return relative_spare(verdict, state);
    }
    if (verdict.harm == Harm::reloading && required.narrow_door) {
        return (state.door.opening_share - catalog::default_of(DefaultId::door_opening_least).value)
               / catalog::default_of(DefaultId::door_opening_wanted).value;
    }
    return std::nullopt;
}

std::size_t limiting_state(std::span<const StateResult> states,
                           std::span<const StateVerdict> verdicts,
                           const Required& required) {
    std::size_t limiting = states.size();
    bool limited_by_required = false;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < states.size(); ++i) {
        const std::optional<double> asked = required_spare(verdicts[i], states[i], required);
        if (!verdicts[i].counts || (limited_by_required && !asked)) {
            continue;
        }
        const double spare = asked ? *asked : relative_spare(verdicts[i], states[i]);
        if (limiting == states.size() || (asked && !limited_by_required) || spare < least) {
            limiting = i;
            least = spare;
            limited_by_required = asked.has_value();
        }
    }
    return limiting;
}

std::vector<StateKind> deciding_states(const Case& resolved) {
    if (has_open_front(resolved.appliance)) {
        return {StateKind::door_open_high, StateKind::door_open_embers};
    }
    std::vector<StateKind> kinds{StateKind::high_fire};
    if (resolved.appliance.has_low_fire) {
        kinds.push_back(StateKind::low_fire);
    }
    if (resolved.appliance.has_door) {
        kinds.push_back(StateKind::door_open_embers);
    }
    return kinds;
}

void sum_up(const Case& resolved, const Required& required, Score& score) {
    const double greatest_pa = resolved.appliance.draft_greatest_pa;
    score.limiting = limiting_state(score.states, score.verdicts, required);
    score.least_spare = std::numeric_limits<double>::infinity();
    score.greatest_over = -1.0;
    score.passes = true;
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        const StateVerdict& verdict = score.verdicts[i];
        const std::optional<double> asked = required_spare(verdict, score.states[i], required);
        if (i == score.limiting) {
            score.least_spare = asked ? *asked : relative_spare(verdict, score.states[i]);
        }
        const bool unanswered = score.states[i].status == Status::no_answer;
        score.passes = score.passes && (!asked || (*asked >= 0.0 && !unanswered));
        if (verdict.kind == Kind::pressure && greatest_pa > 0.0) {
            score.greatest_over =
                std::max(score.greatest_over, score.states[i].draft_pa / greatest_pa - 1.0);
        }
    }
}

Score score(const Case& resolved, const Required& required) {
    Score result;
    result.states = solve(resolved, Detail::totals, deciding_states(resolved)).states;
    result.verdicts.reserve(result.states.size());
    for (const StateResult& state : result.states) {
        result.verdicts.push_back(judge(resolved, state));
    }
    sum_up(resolved, required, result);
    return result;
}

double least_opening(const Score& score) {
    double least = std::numeric_limits<double>::quiet_NaN();
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        if (score.verdicts[i].kind != Kind::pressure) {
            least = std::fmin(least, score.states[i].door.opening_share);
        }
    }
    return least;
}

std::string state_name(const Case& resolved, const StateResult& state) {
    return std::string{condition_word(resolved, state.kind)} + ", "
           + resolved.weathers[state.weather].name;
}

} // namespace fluewright
