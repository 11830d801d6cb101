#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {
namespace {

std::string weather_words(const Case& c, const StateResult& state) {
    return c.weathers[state.weather].name;
}

std::string shown(const Case& c, double value, Kind kind) {
    return format_quantity(value, kind, c.units);
}

std::string draft_clause(const Case& c, const StateResult& state) {
    return std::string{name(state.kind)} + " (" + weather_words(c, state) + "), "
           + shown(c, state.draft_pa, Kind::pressure) + " at the outlet where "
           + shown(c, state.draft_needed_pa, Kind::pressure) + " is needed";
}

std::string door_clause(const Case& c, const StateResult& state) {
    const double share = std::min(1.0, state.door.opening_share);
    const std::string fire =
        state.kind == StateKind::door_open_embers ? "reloading on embers" : "the open front";
    if (share <= 0.0) {
        return fire + " (" + weather_words(c, state) + "), where smoke comes out at once";
    }
    return fire + " (" + weather_words(c, state) + "), where smoke stays in "
           + (share >= 1.0 ? "with the door wide open"
                           : "up to " + format_quantity(share, Kind::fraction, c.units, 2)
                                 + " of the opening");
}

std::string clause(const Assessment& a, std::size_t index) {
    const StateResult& state = a.solution.states[index];
    return a.verdicts[index].kind == Kind::pressure ? draft_clause(a.installation, state)
                                                    : door_clause(a.installation, state);
}

std::string sentence(const Assessment& a) {
    std::size_t failing = 0;
    std::size_t counting = 0;
    for (const StateVerdict& verdict : a.verdicts) {
        counting += verdict.counts ? 1U : 0U;
        failing += verdict.counts && !verdict.passes ? 1U : 0U;
    }
    if (failing == 0) {
        return "This run draws in every state checked; the tightest is " + clause(a, a.limiting)
               + ".";
    }
    const std::string how_many = failing == counting ? "in every state"
                                                     : "in " + std::to_string(failing) + " of "
                                                           + std::to_string(counting) + " states";
    return "This run falls short " + how_many + "; the worst is " + clause(a, a.limiting) + ".";
}

/// Draft of one state with the other inside coefficient.
double draft_with_floor(const Case& resolved, const StateResult& state) {
    Case other = resolved;
    other.inside_heat = InsideHeat::european_floor;
    const FlueModel model(other, surroundings_of(other, state.weather, fire_of(state.kind)));
    return solve_state(model, state.kind, Detail::totals).draft_pa;
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
    double least = std::numeric_limits<double>::infinity();
    a.works = true;
    for (std::size_t i = 0; i < a.solution.states.size(); ++i) {
        a.verdicts.push_back(judge(a.installation, a.solution.states[i]));
        const StateVerdict& verdict = a.verdicts.back();
        if (!verdict.counts) {
            continue;
        }
        a.works = a.works && verdict.passes;
        const double spare = relative_spare(verdict, a.solution.states[i]);
        if (spare < least) {
            least = spare;
            a.limiting = i;
        }
    }
    if (options.spread) {
        a.limiting_draft_other_pa = draft_with_floor(a.installation, a.solution.states[a.limiting]);
    }
    a.sentence = options.words ? sentence(a) : std::string{};
    Checked checked =
        check_all(written, a.installation, a.solution, {.body = body, .with_words = options.words});
    a.body = checked.body;
    a.checks = std::move(checked.results);
    a.findings = std::move(checked.findings);
    if (options.size_search) {
        a.size = advise_size(written, a.installation, sizes);
    }
    return a;
}

} // namespace fluewright
