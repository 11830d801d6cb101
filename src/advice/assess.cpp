#include "advice/sizing/size_rows.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "seen_trouble.hpp"

namespace fluewright {
namespace {

/// Drafts of every state with a fire behind a shut door, with one inside coefficient.
std::vector<double> drafts_with(const Case& resolved, const Solution& solution, InsideHeat heat) {
    Case other = resolved;
    other.inside_heat = heat;
    std::vector<double> drafts(solution.states.size());
    std::optional<FlueModel> first;
    std::optional<FlueModel> model;
    std::size_t weather = other.weathers.size();
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        const StateResult& state = solution.states[i];
        if (!has_closed_fire(state.kind)) {
            continue;
        }
        if (state.status != Status::solved) {
            drafts[i] = state.draft_pa; // of what is no working point nothing is asked
            continue;
        }
        if (state.weather != weather) {
            weather = state.weather;
            const Surroundings air = surroundings_of(other, weather, Fire::burning);
            if (first) {
                model.emplace(*first, air);
            } else {
                first.emplace(other, air);
                model.emplace(*first);
            }
        }
        drafts[i] = solve_state(*model, state.kind, Detail::totals).draft_pa;
    }
    return drafts;
}

std::vector<std::optional<DraftEnds>> draft_ends_of(const Case& resolved,
                                                    const Solution& solution) {
    const std::vector<double> least = drafts_with(resolved, solution, InsideHeat::european_floor);
    const std::vector<double> most = drafts_with(resolved, solution, InsideHeat::opposed_upper);
    std::vector<std::optional<DraftEnds>> ends(solution.states.size());
    for (std::size_t i = 0; i < ends.size(); ++i) {
        if (has_closed_fire(solution.states[i].kind)) {
            ends[i] = {.least_heat_pa = least[i], .most_heat_pa = most[i]};
        }
    }
    return ends;
}

/// How far each loading door may be opened at once and in the minute after.
void add_door_moments(const Case& resolved, std::vector<StateResult>& states) {
    for (StateResult& state : states) {
        if (is_door_open(state.kind) && !has_open_front(resolved.appliance)) {
            const FlueModel model(resolved,
                                  surroundings_of(resolved, state.weather, Fire::burning));
            state.door.moments = open_door_moments(model, state);
        }
    }
}

} // namespace

Result<Assessment, Faults> assess(const Installation& written, const AssessOptions& options) {
    Result<Case, Faults> resolved = resolve(written);
    if (!resolved) {
        return Failure{std::move(resolved).error()};
    }
    return assess(written, std::move(resolved).value(), options);
}

Assessment assess(const Installation& written, Case resolved, const AssessOptions& options) {
    Assessment a;
    a.installation = std::move(resolved);
    // By the units of the file: those of the report must not change whose rules it is held against.
    const std::string_view body = options.rules.empty() ? rule_set_of(written, a.installation.units)
                                                        : std::string_view{options.rules};
    if (options.units) {
        a.installation.units = *options.units;
    }
    const TradeSizes sizes = options.sizes.value_or(sizing::usual_sizes(a.installation));
    a.solution = solve(a.installation, Detail::stations);
    if (options.spread) {
        add_door_moments(a.installation, a.solution.states);
    }
    a.required = required_of_file(options.required, written, a.installation);
    for (const StateResult& state : a.solution.states) {
        a.verdicts.push_back(judge(a.installation, state));
    }
    a.limiting = limiting_state(a.solution.states, a.verdicts, a.required);
    if (options.spread) {
        a.draft_ends = draft_ends_of(a.installation, a.solution);
    }
    Checked checked =
        check_all(written,
                  a.installation,
                  a.solution,
                  {.body = body, .with_words = options.words, .one_charge = options.one_charge});
    a.body = checked.body;
    a.checks = std::move(checked.results);
    a.findings = std::move(checked.findings);
    a.verdict = judge_harms(a, options.words);
    if (options.words) {
        a.sentence = words_on_trouble(written.observed, a.installation.appliance, a.works());
        a.sentence += headline(a.verdict);
    }
    if (options.size_search) {
        a.size = advise_size(written, a, sizes);
    }
    return a;
}

} // namespace fluewright
