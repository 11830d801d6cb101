#include "fluewright/advice/verdict.hpp"

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/checks/told.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "verdict_words.hpp"

#include <algorithm>
#include <array>
#include <limits>

namespace fluewright {
namespace {

/// Matters that a condition has in its figures already: what the room takes is off the draft.
constexpr std::array<std::string_view, 3> in_the_states{
    "draft-short", "house-starves-the-fire", "smoke-at-door"};

/// Whether a finding says what the worst state of a kind of harm does.
bool says_the_same(const Finding& finding, const HarmVerdict& v) {
    const std::string_view of_the_state = v.kind != Kind::fraction    ? "draft-short"
                                          : v.harm == Harm::reloading ? "smoke-at-door"
                                                                      : "smoke-at-front";
    return finding.matter->id == of_the_state;
}

class Judging {
public:
    explicit Judging(const Assessment& a) : a_(a) {}

    [[nodiscard]] HarmVerdict judged(Harm harm) const {
        HarmVerdict v;
        v.harm = harm;
        v.counts = a_.required.asks(harm);
        if (harm == Harm::reloading && !has_reloading()) {
            v.outcome = HarmOutcome::does_not_apply;
            v.counts = false;
            return v;
        }
        const bool unsolved = take_states(v);
        take_findings(v);
        take_open_checks(v);
        v.outcome = v.short_of > 0           ? HarmOutcome::falls_short
                    : unsolved || v.open > 0 ? HarmOutcome::cannot_tell
                                             : HarmOutcome::passes;
        return v;
    }

private:
    [[nodiscard]] bool has_reloading() const {
        return a_.installation.appliance.has_door && !has_open_front(a_.installation.appliance);
    }

    /// The states of a kind: the tightest, and how many fall short. Returns whether one of them has
    /// no answer.
    [[nodiscard]] bool take_states(HarmVerdict& v) const {
        bool unsolved = false;
        double least = std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < a_.verdicts.size(); ++i) {
            const StateVerdict& verdict = a_.verdicts[i];
            const StateResult& state = a_.solution.states[i];
            if (!verdict.counts || verdict.harm != v.harm) {
                continue;
            }
            if (state.status == Status::no_answer) {
                unsolved = true;
                continue;
            }
            v.short_of += verdict.passes ? 0U : 1U;
            const auto required = required_spare(verdict, state, a_.required);
            v.counts = v.counts || (required && *required < 0.0);
            const double spare = relative_spare(verdict, state);
            if (!v.state || spare < least) {
                least = spare;
                v.state = i;
                v.kind = verdict.kind;
                const bool draft = verdict.kind == Kind::pressure;
                const double figure = draft ? state.draft_pa : state.door.opening_share;
                v.limit = figure - verdict.spare;
                v.figure = draft && !has_figures(state) ? std::nullopt : std::optional{figure};
            }
        }
        return unsolved;
    }

    /// The findings of a kind, which come by severity and weight: the first of them is the worst.
    /// Where a state falls short, the finding that says the same is named.
    void take_findings(HarmVerdict& v) const {
        const bool state_is_worst = v.short_of > 0;
        bool any_fails = false;
        for (std::size_t i = 0; i < a_.findings.size(); ++i) {
            const Finding& finding = a_.findings[i];
            if (state_is_worst && says_the_same(finding, v)) {
                v.finding = i; // what to do about the smoke of an open front stands there
            }
            if (finding.harm != v.harm) {
                continue;
            }
            const bool fails = falls_short(finding);
            v.short_of += fails ? 1U : 0U;
            v.mentioned += fails ? 0U : 1U;
            const bool fails_first = fails && !any_fails;
            any_fails = any_fails || fails;
            if (!v.finding || (!state_is_worst && fails_first)) {
                v.finding = i;
            }
        }
        if (any_fails && !state_is_worst) {
            const Finding& worst = a_.findings[*v.finding];
            v.state.reset();
            v.kind = worst.kind;
            v.figure = worst.figure;
            v.limit = worst.limit;
        }
    }

    /// Of fire alone: an open check of what kills leaves the answer open, trade practice too.
    void take_open_checks(HarmVerdict& v) const {
        if (v.harm != Harm::fire) {
            return;
        }
        for (std::size_t i = 0; i < a_.checks.size(); ++i) {
            const CheckResult& result = a_.checks[i];
            if (is_open_danger(result)) {
                ++v.open;
                v.check = v.check.value_or(i); // the table has the weightiest first
            }
        }
    }

    const Assessment& a_;
};

} // namespace

std::string_view name(HarmOutcome outcome) {
    constexpr std::array<std::string_view, 4> names{
        "passes", "falls short", "cannot tell", "does not apply"};
    return names[static_cast<std::size_t>(outcome)];
}

bool is_in_the_states(const Matter& matter) {
    return std::find(in_the_states.begin(), in_the_states.end(), matter.id) != in_the_states.end();
}

bool falls_short(const Finding& finding) {
    switch (finding.harm) {
    case Harm::fire:
        return finding.severity == Severity::danger;
    case Harm::draft:
        return finding.severity <= Severity::failure && !is_in_the_states(*finding.matter);
    case Harm::reloading:
        return false;
    case Harm::upkeep:
        break;
    }
    return finding.severity <= Severity::warning;
}

std::vector<const Matter*> matters_against(const Assessment& assessment, bool with_upkeep) {
    std::vector<const Matter*> matters;
    for (const Finding& finding : assessment.findings) {
        const bool counts = assessment.verdict.of(finding.harm).counts
                            || (with_upkeep && finding.harm == Harm::upkeep);
        // What may cost a fire is worth mending, though it is none yet.
        const bool worth_mending =
            with_upkeep && finding.harm == Harm::fire && finding.severity <= Severity::warning;
        if (((counts && falls_short(finding)) || worth_mending)
            && std::find(matters.begin(), matters.end(), finding.matter) == matters.end()) {
            matters.push_back(finding.matter);
        }
    }
    return matters;
}

std::string titles_of(const std::vector<const Matter*>& matters) {
    std::string titles;
    for (const Matter* matter : matters) {
        titles += (titles.empty() ? "" : "; ") + std::string{matter->title};
    }
    return titles;
}

namespace {

/// The body's rules that are not met and yet do not count: what they speak of falls short of
/// nothing that does.
std::size_t rules_broken_uncounted(const Assessment& assessment, const Verdict& verdict) {
    const auto counts = [&](const CheckResult& result) {
        return std::any_of(
            assessment.findings.begin(), assessment.findings.end(), [&](const Finding& finding) {
                return finding.matter == result.check->matter && falls_short(finding)
                       && verdict.of(finding.harm).counts;
            });
    };
    return static_cast<std::size_t>(std::count_if(
        assessment.checks.begin(), assessment.checks.end(), [&](const CheckResult& result) {
            return result.check->basis == Basis::body && !result.check->local
                   && result.check->severity <= Severity::warning
                   && result.outcome == CheckOutcome::not_met && !counts(result);
        }));
}

} // namespace

Verdict judge_harms(const Assessment& assessment, bool words) {
    Verdict verdict;
    verdict.passes = true;
    const Judging judging(assessment);
    for (const Harm harm : harms) {
        HarmVerdict& v = verdict.harms[static_cast<std::size_t>(harm)];
        v = judging.judged(harm);
        verdict.passes = verdict.passes && !(v.counts && v.outcome == HarmOutcome::falls_short);
        if (words) {
            v.sentence = harm_sentence(assessment, v);
            v.first = first_to_do(assessment, v);
        }
    }
    if (words && assessment.body != nullptr) {
        verdict.rules_broken = rules_broken_uncounted(assessment, verdict);
        verdict.rules_of = assessment.body->name;
    }
    return verdict;
}

} // namespace fluewright
