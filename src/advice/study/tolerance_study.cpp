#include "fluewright/advice/study/tolerance_study.hpp"

#include "fluewright/advice/unsolved.hpp"
#include "fluewright/core/numeric/latin_hypercube.hpp"
#include "fluewright/core/numeric/sample_statistics.hpp"
#include "fluewright/core/parallel.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <cassert>
#include <utility>

namespace fluewright {
namespace {

constexpr double low_share = 0.05;
constexpr double high_share = 0.95;

/// What was read off the installation as built; it changes no state.
bool is_reading(const Tolerance& tolerance) {
    return tolerance.pointer.starts_with("/observed/");
}

std::vector<VariedInput> varied_inputs(const Installation& written) {
    Installation scratch = written;
    std::vector<VariedInput> inputs;
    for (const Tolerance& tolerance : written.tolerances) {
        const Slot slot = find_value(scratch, tolerance.pointer);
        if (!is_reading(tolerance) && slot && slot.value->has_value()) {
            inputs.push_back({.pointer = tolerance.pointer,
                              .value = **slot.value,
                              .half_width = tolerance.half_width,
                              .kind = slot.field->kind});
        }
    }
    return inputs;
}

/// What the runs gave: the spare of each state that counts, run by run.
struct Outcomes {
    std::vector<std::size_t> counting; ///< indices into Solution::states
    std::vector<double> spare;         ///< runs x counting
    std::vector<char> has_figures;     ///< runs x counting
    std::vector<Faults> refusals;      ///< of each run; empty where it was computed
    std::vector<Verdict> verdicts;     ///< of each run
};

void solve_runs(const Installation& written,
                const std::vector<VariedInput>& inputs,
                const Assessment& assessment,
                const LatinHypercube& places,
                std::size_t first,
                std::size_t step,
                const std::function<void(std::size_t, std::size_t)>& progress,
                Outcomes& outcomes) {
    const AssessOptions options{.size_search = false,
                                .words = false,
                                .spread = false,
                                .required = assessment.required,
                                .rules = std::string{assessment.body->id}};
    Installation varied = written;
    std::vector<Slot> slots;
    slots.reserve(inputs.size());
    for (const VariedInput& input : inputs) {
        slots.push_back(find_value(varied, input.pointer));
    }
    for (std::size_t run = first; run < places.points(); run += step) {
        if (first == 0 && progress) {
            progress(run, places.points());
        }
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            const double place = 2.0 * places.at(run, i) - 1.0;
            *slots[i].value = inputs[i].value + place * inputs[i].half_width;
        }
        const Result<Assessment, Faults> then = assess(varied, options);
        if (!then) {
            outcomes.refusals[run] = then.error();
            continue;
        }
        assert(then->verdicts.size() == assessment.verdicts.size());
        std::transform(outcomes.counting.begin(),
                       outcomes.counting.end(),
                       outcomes.spare.begin()
                           + static_cast<std::ptrdiff_t>(run * outcomes.counting.size()),
                       [&](std::size_t state) { return then->verdicts[state].spare; });
        std::transform(outcomes.counting.begin(),
                       outcomes.counting.end(),
                       outcomes.has_figures.begin()
                           + static_cast<std::ptrdiff_t>(run * outcomes.counting.size()),
                       [&](std::size_t state) {
                           return has_figures(then->solution.states[state])
                                  || then->verdicts[state].kind != Kind::pressure;
                       });
        outcomes.verdicts[run] = then->verdict;
    }
}

/// The statistics of one state over the runs that were computed.
StateSpread spread_of(std::size_t column,
                      const Assessment& assessment,
                      const Outcomes& outcomes,
                      const LatinHypercube& places,
                      std::size_t inputs) {
    std::vector<std::size_t> computed;
    std::vector<double> spare;
    std::size_t without = 0;
    for (std::size_t run = 0; run < outcomes.refusals.size(); ++run) {
        if (outcomes.refusals[run].empty()) {
            computed.push_back(run);
            const std::size_t place = run * outcomes.counting.size() + column;
            spare.push_back(outcomes.spare[place]);
            without += outcomes.has_figures[place] != 0 ? 0U : 1U;
        }
    }
    StateSpread s;
    s.state = outcomes.counting[column];
    s.kind = assessment.verdicts[s.state].kind;
    s.as_written = assessment.verdicts[s.state].spare;
    std::vector<std::vector<double>> place_of_input(inputs);
    for (std::size_t input = 0; input < inputs; ++input) {
        for (const std::size_t run : computed) {
            place_of_input[input].push_back(places.at(run, input));
        }
    }
    s.first_order = first_order_indices(place_of_input, spare);
    const auto passing =
        std::count_if(spare.begin(), spare.end(), [](double value) { return value >= 0.0; });
    s.without_figures_share = static_cast<double>(without) / static_cast<double>(spare.size());
    s.passing_share = static_cast<double>(passing) / static_cast<double>(spare.size());
    std::sort(spare.begin(), spare.end());
    s.low = quantile(spare, low_share);
    s.median = quantile(spare, 0.5);
    s.high = quantile(spare, high_share);
    return s;
}

/// Of the runs that were computed, those whose verdict is so.
template <class Is>
double share_of(const Outcomes& outcomes, std::size_t computed, const Is& is) {
    std::size_t found = 0;
    for (std::size_t run = 0; run < outcomes.refusals.size(); ++run) {
        found += outcomes.refusals[run].empty() && is(outcomes.verdicts[run]) ? 1U : 0U;
    }
    return static_cast<double>(found) / static_cast<double>(computed);
}

/// The spare that is seldom undercut, over what is asked: so drafts and doors compare.
double relative_low(const StateSpread& s, const StateResult& state) {
    return relative_spare({.counts = true, .passes = s.low >= 0.0, .spare = s.low, .kind = s.kind},
                          state);
}

/// The state to worry about first.
std::size_t tightest_of(const std::vector<StateSpread>& states, const Assessment& assessment) {
    const auto rank = [&](const StateSpread& s) {
        return std::pair{s.passing_share, relative_low(s, assessment.solution.states[s.state])};
    };
    const auto least =
        std::min_element(states.begin(), states.end(), [&](const auto& a, const auto& b) {
            return rank(a) < rank(b);
        });
    return static_cast<std::size_t>(least - states.begin());
}

} // namespace

bool has_tolerances(const Installation& written) {
    return std::any_of(written.tolerances.begin(),
                       written.tolerances.end(),
                       [](const Tolerance& tolerance) { return !is_reading(tolerance); });
}

ToleranceStudy study_tolerances(const Installation& written,
                                const Assessment& assessment,
                                const ToleranceOptions& options) {
    ToleranceStudy study;
    study.inputs = varied_inputs(written);
    study.seed = options.seed;
    Outcomes outcomes;
    for (std::size_t i = 0; i < assessment.verdicts.size(); ++i) {
        if (assessment.verdicts[i].counts) {
            outcomes.counting.push_back(i);
        }
    }
    outcomes.spare.resize(options.runs * outcomes.counting.size());
    outcomes.has_figures.resize(options.runs * outcomes.counting.size());
    outcomes.refusals.resize(options.runs);
    outcomes.verdicts.resize(options.runs);
    const LatinHypercube places(options.runs, study.inputs.size(), options.seed);
    in_parallel(std::max(1U, options.jobs), [&](std::size_t first, std::size_t step) {
        solve_runs(
            written, study.inputs, assessment, places, first, step, options.progress, outcomes);
    });
    for (const Faults& faults : outcomes.refusals) {
        if (!faults.empty()) {
            study.refusal = study.refusal ? study.refusal : std::optional{faults.front()};
            ++study.refused;
        }
    }
    study.runs = options.runs - study.refused;
    if (study.runs == 0) {
        return study;
    }
    for (std::size_t column = 0; column < outcomes.counting.size(); ++column) {
        study.states.push_back(
            spread_of(column, assessment, outcomes, places, study.inputs.size()));
    }
    study.working_share =
        share_of(outcomes, study.runs, [](const Verdict& verdict) { return verdict.passes; });
    for (const Harm harm : harms) {
        study.sound_share[static_cast<std::size_t>(harm)] =
            share_of(outcomes, study.runs, [harm](const Verdict& verdict) {
                return verdict.of(harm).outcome != HarmOutcome::falls_short;
            });
    }
    study.tightest = tightest_of(study.states, assessment);
    return study;
}

} // namespace fluewright
