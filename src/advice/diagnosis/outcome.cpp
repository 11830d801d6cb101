#include "outcome.hpp"

#include "advice/checks/no_damper.hpp"
#include "flaws/cures.hpp"
#include "flaws/design.hpp"
#include "sizes.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace fluewright::diagnosis {
namespace {

constexpr double least_shown = 0.005;  ///< probability below which a row is left out
constexpr double least_bearing = 1.25; ///< times likelier, or the inverse

double logarithmic(double x) {
    return std::abs(std::log(std::max(x, 1e-12)));
}

std::string title_of(const std::vector<SizedCause>& causes) {
    std::string title;
    for (const SizedCause& sized : causes) {
        title += title.empty() ? "" : " and ";
        title += sized.cause->title;
        title += sized.place.empty() ? "" : ' ' + sized.place;
    }
    return title;
}

std::string mechanisms_of(const std::vector<SizedCause>& causes) {
    std::string text;
    for (const SizedCause& sized : causes) {
        text += text.empty() ? "" : " ";
        text += sized.cause->mechanism;
    }
    return text;
}

/// What cures them all; where creosote ran out, whatever it is begins with the sweep.
std::string remedies_of(const std::vector<SizedCause>& causes,
                        HeaterKind kind,
                        bool creosote,
                        const Flag& damper_allowed) {
    std::string text = creosote ? "Have the flue swept first: there is creosote in it." : "";
    for (const SizedCause& sized : causes) {
        text += text.empty() ? "" : " ";
        const bool not_this =
            id_of(*sized.cause) == CauseId::strong_draft && damper_allowed == Flag{false};
        text += not_this ? checking::where_no_damper_may_be : remedy_at(*sized.cause, kind);
    }
    return text;
}

} // namespace

OutcomeBuilder::OutcomeBuilder(const Installation& written,
                               const Case& resolved,
                               Engine& engine,
                               const std::vector<Evidence>& evidence)
    : written_(written), resolved_(resolved), engine_(engine), evidence_(evidence) {}

std::vector<std::size_t> OutcomeBuilder::leading(std::size_t count) const {
    std::vector<std::size_t> rows(engine_.rows().size());
    std::iota(rows.begin(), rows.end(), std::size_t{0});
    std::stable_sort(rows.begin(), rows.end(), [&](std::size_t a, std::size_t b) {
        return engine_.posterior().row[a] > engine_.posterior().row[b];
    });
    rows.resize(std::min(rows.size(), count));
    return rows;
}

std::size_t OutcomeBuilder::best_of(std::size_t row) const {
    std::size_t best = 0;
    double most = -1.0;
    for (std::size_t h = 0; h < engine_.hypotheses().size(); ++h) {
        if (engine_.hypotheses()[h].row == row && engine_.posterior().of(h) > most) {
            most = engine_.posterior().of(h);
            best = h;
        }
    }
    return best;
}

/// How much likelier each piece of evidence is under this row than under the rest, each judged by
/// what all the other evidence left over.
void OutcomeBuilder::bear(Explanation& explanation, std::size_t row) const {
    for (std::size_t e = 0; e < evidence_.size(); ++e) {
        double own = 0.0;
        double own_weight = 0.0;
        double other = 0.0;
        double other_weight = 0.0;
        for (std::size_t h = 0; h < engine_.hypotheses().size(); ++h) {
            const bool is_own = engine_.hypotheses()[h].row == row;
            for (std::size_t i = 0; i < heat_steps; ++i) {
                const double weight = without_[e].weight[h][i];
                (is_own ? own : other) += weight * engine_.tables()[e][h][i];
                (is_own ? own_weight : other_weight) += weight;
            }
        }
        if (own_weight <= 0.0 || other_weight <= 0.0 || other <= 0.0) {
            continue;
        }
        const double times = (own / own_weight) / (other / other_weight);
        if (times > least_bearing || times < 1.0 / least_bearing) {
            explanation.bearings.push_back({e, times});
        }
    }
    std::stable_sort(explanation.bearings.begin(),
                     explanation.bearings.end(),
                     [](const Bearing& a, const Bearing& b) {
                         return logarithmic(a.likelier_times) > logarithmic(b.likelier_times);
                     });
}

namespace {

/// Whether a check would tell what the file does not say yet: nobody is sent for the same again. A
/// trial has no entry in the file.
bool is_open(const Check& check, const std::vector<Candidate>& open) {
    return check.kind == "none"
           || std::any_of(open.begin(), open.end(), [&](const Candidate& candidate) {
                  return candidate.check == &check;
              });
}

/// What the file shows across the flue, by name.
std::string restriction_words(const Case& resolved) {
    std::string list;
    for (const RunPart& part : resolved.run.parts) {
        const bool turned = part.written.blade_angle_rad.value_or(0.0) > turned_blade_rad;
        if (turned || part.written.blocked.value_or(0.0) > 0.0) {
            list += (list.empty() ? ": " : ", ") + label(part);
        }
    }
    return list;
}

Explanation explanation_of(const Cause& cause, double probability) {
    Explanation explanation;
    explanation.probability = probability;
    explanation.title = cause.title;
    explanation.mechanism = cause.mechanism;
    explanation.remedy = cause.remedy; // of none; those of causes follow
    explanation.confirm = find_check(cause.confirm);
    return explanation;
}

} // namespace

void OutcomeBuilder::add_hidden(Diagnosis& result, std::size_t row) {
    Explanation explanation;
    explanation.causes = sized_causes(engine_, row, resolved_.units);
    explanation.probability = engine_.posterior().row[row];
    explanation.title = title_of(explanation.causes);
    explanation.mechanism = mechanisms_of(explanation.causes);
    explanation.confirm = find_check(explanation.causes.front().cause->confirm);
    bear(explanation, row);
    result.explanations.push_back(std::move(explanation));
}

/// The row of a flaw; nothing where the file does not show it.
std::optional<std::size_t> OutcomeBuilder::row_of(const Cause& flaw) const {
    for (std::size_t row = 0; row < engine_.rows().size(); ++row) {
        if (engine_.rows()[row].flaw == &flaw) {
            return row;
        }
    }
    return std::nullopt;
}

/// The share of the row without hidden causes goes to the flaws of the design, as far as the design
/// predicts the trouble, and otherwise to nothing being wrong. A flaw has a row of its own, too,
/// for what the trade tells of it.
void OutcomeBuilder::add_unhidden(Diagnosis& result) {
    constexpr std::size_t row = 0;
    const double all = engine_.posterior().row[row];
    auto [trouble, flaws] = design_of(written_, resolved_, evidence_);
    Explanation nothing = explanation_of(cause_of(CauseId::nothing), all * (1.0 - trouble));
    bear(nothing, row);
    for (DesignCause& flaw : flaws) {
        flaw.share *= all * trouble;
    }
    for (std::size_t other = 1; other < engine_.rows().size(); ++other) {
        if (const Cause* flaw = engine_.rows()[other].flaw) {
            const auto known = std::find_if(
                flaws.begin(), flaws.end(), [&](const DesignCause& f) { return f.cause == flaw; });
            const double told = engine_.posterior().row[other];
            if (known != flaws.end()) {
                known->share += told;
            } else {
                flaws.push_back({.cause = flaw, .cured = std::nullopt, .share = told});
            }
        }
    }
    for (const DesignCause& flaw : flaws) {
        Explanation explanation = explanation_of(*flaw.cause, flaw.share);
        if (id_of(*flaw.cause) == CauseId::restricted) {
            explanation.title += restriction_words(resolved_);
        }
        SizedCause sized;
        sized.cause = flaw.cause;
        explanation.causes = {sized};
        bear(explanation, row_of(*flaw.cause).value_or(row));
        if (flaw.cured && explanation.probability > least_to_judge) {
            explanation.cured = once_cured(*flaw.cured);
            explanation.cured->left =
                troubles_left(flaw.cured->changed, flaw.cured->resolved, evidence_);
        }
        result.design_probability += flaw.share;
        result.explanations.push_back(std::move(explanation));
    }
    result.design_explains = result.design_probability > 0.5;
    result.explanations.push_back(std::move(nothing));
}

bool OutcomeBuilder::conflicts(std::size_t row, std::size_t e) const {
    const std::size_t best = best_of(row);
    const Hypothesis& hypothesis = engine_.hypotheses()[best];
    const Altered& altered = hypothesis.solver->altered();
    const auto& weights = engine_.posterior().weight[best];
    const auto step = static_cast<std::size_t>(std::max_element(weights.begin(), weights.end())
                                               - weights.begin());
    const double x = engine_.figures(best, evidence_[e])[step];
    return contradicts(evidence_[e], x, altered);
}

/// Marks what the leading row does not account for; if no row worth the name accounts for all, says
/// so.
void OutcomeBuilder::judge_fit(Diagnosis& result) {
    const std::vector<std::size_t> rows = leading(engine_.rows().size());
    const std::size_t best = best_of(rows.front());
    for (std::size_t e = 0; e < evidence_.size(); ++e) {
        const auto& weights = engine_.posterior().weight[best];
        const auto step = static_cast<std::size_t>(std::max_element(weights.begin(), weights.end())
                                                   - weights.begin());
        const double x = engine_.figures(best, evidence_[e])[step];
        SeenFact fact;
        fact.words = words(evidence_[e], resolved_);
        fact.fits = !conflicts(rows.front(), e);
        fact.needs_fire = needs_fire(evidence_[e]);
        if (evidence_[e].is_reading()) {
            constexpr std::size_t unhidden = 0; // of the file, whose fire is the middle step
            const double written = engine_.figures(unhidden, evidence_[e])[heat_steps / 2];
            fact.expected = expectation_words(evidence_[e], x, 1.0, resolved_);
            fact.as_written = expectation_words(evidence_[e], written, 1.0, resolved_);
        }
        result.seen.push_back(std::move(fact));
    }
    result.nothing_explains = !evidence_.empty() && !row_that_explains();
}

Diagnosis OutcomeBuilder::build() {
    for (std::size_t e = 0; e < evidence_.size(); ++e) {
        without_.push_back(engine_.without(e));
    }
    Diagnosis result;
    result.title = resolved_.title;
    result.units = resolved_.units;
    result.assumptions = resolved_.assumptions;
    result.alarm_has_sounded = alarm_has_sounded(written_.observed);
    const Checked checked = checks_of_file(written_, resolved_, solve(resolved_, Detail::stations));
    result.dangers = present_dangers(checked);
    result.not_decided = fire_not_decided(checked, resolved_.units);
    urgent_ = urgent_in(written_.observed, evidence_, result.dangers, resolved_);
    // Of these the first words tell already.
    std::erase_if(result.dangers, [](const PresentDanger& danger) {
        return danger.id == "alarm-has-sounded" || danger.id == "seen-too-hot";
    });
    for (std::size_t row = 1; row < engine_.rows().size(); ++row) {
        if (engine_.posterior().row[row] > least_shown && !engine_.rows()[row].causes.empty()) {
            add_hidden(result, row);
        }
    }
    add_unhidden(result);
    std::erase_if(result.explanations,
                  [](const Explanation& e) { return e.probability <= least_shown; });
    std::stable_sort(
        result.explanations.begin(),
        result.explanations.end(),
        [](const Explanation& a, const Explanation& b) { return a.probability > b.probability; });
    for (Explanation& explanation : result.explanations) {
        if (!explanation.causes.empty()) {
            explanation.remedy = remedies_of(explanation.causes,
                                             kind_of(resolved_.appliance),
                                             urgent_.creosote,
                                             written_.appliance.damper_allowed);
        }
    }
    result.mend_first = mend_first_words(result.explanations.front(), evidence_);
    urgent_.nearly_shut = leaves_flue_nearly_shut(result.explanations);
    result.no_fire = urgent_.keeps_cold() || !result.dangers.empty();
    result.urgent = urgent_words(urgent_, result.no_fire, resolved_);
    for (Explanation& explanation : result.explanations) {
        if (explanation.causes.empty() && urgent_.keeps_cold()) {
            explanation.remedy.clear(); // "nothing to mend" is no answer to that
        }
    }
    // What is hidden from the file is gone once the run is as the file has it.
    Installation plain = written_;
    plain.observed.clear();
    const Result<Trial, std::string> as_written = try_out(AsItStands{}, plain);
    for (Explanation& explanation : result.explanations) {
        if (as_written && !explanation.causes.empty() && explanation.causes.front().has_size) {
            explanation.cured = once_cured(*as_written);
            explanation.cured->left = troubles_left(plain, resolved_, evidence_);
        }
    }
    const std::vector<Candidate> open = candidates(written_, resolved_);
    for (Explanation& explanation : result.explanations) {
        if (explanation.confirm != nullptr && !is_open(*explanation.confirm, open)) {
            explanation.confirm = nullptr;
        }
    }
    for (Explanation& explanation : result.explanations) {
        if (explanation.confirm != nullptr
            && !may_be_made(*explanation.confirm, urgent_, result.no_fire)) {
            explanation.confirm = nullptr;
        }
    }
    judge_fit(result);
    if (result.nothing_explains) {
        doubt(result);
    }
    say(result);
    return result;
}

} // namespace fluewright::diagnosis
