#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/resolve/resolve.hpp"

namespace fluewright {
namespace {

/// Draft of one state with the other inside coefficient.
double draft_with_floor(const Case& resolved, const StateResult& state) {
    Case other = resolved;
    other.inside_heat = InsideHeat::european_floor;
    const FlueModel model(other, surroundings_of(other, state.weather, fire_of(state.kind)));
    return solve_state(model, state.kind, Detail::totals).draft_pa;
}

/// How far each loading door may be opened at once and in the minute after.
void add_door_moments(const Case& resolved, std::vector<StateResult>& states) {
    for (StateResult& state : states) {
        if (is_door_open(state.kind) && resolved.appliance.type != ApplianceType::fireplace) {
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
    const TradeSizes sizes = options.sizes.value_or(
        a.installation.units == UnitSystem::us ? TradeSizes::inch : TradeSizes::metric);
    a.solution = solve(a.installation, Detail::stations);
    if (options.spread) {
        add_door_moments(a.installation, a.solution.states);
    }
    a.required = options.required;
    for (const StateResult& state : a.solution.states) {
        a.verdicts.push_back(judge(a.installation, state));
    }
    a.limiting = limiting_state(a.solution.states, a.verdicts, a.required);
    if (options.spread && a.limiting < a.solution.states.size()) {
        a.limiting_draft_other_pa = draft_with_floor(a.installation, a.solution.states[a.limiting]);
    }
    Checked checked =
        check_all(written, a.installation, a.solution, {.body = body, .with_words = options.words});
    a.body = checked.body;
    a.checks = std::move(checked.results);
    a.findings = std::move(checked.findings);
    a.verdict = judge_harms(a, options.words);
    a.sentence = options.words ? headline(a.verdict) : std::string{};
    if (options.size_search) {
        a.size = advise_size(written, a, sizes);
    }
    return a;
}

} // namespace fluewright
