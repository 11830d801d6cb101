#include "plan_judging.hpp"

#include "fluewright/advice/trial/difference.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace fluewright {
namespace {

constexpr int not_cured = 4;

bool holds(const std::vector<const Matter*>& list, const Matter* matter) {
    return std::find(list.begin(), list.end(), matter) != list.end();
}

/// Whether the door was what fell short, and opens less far than wanted even so.
bool is_short_of_wanted(const Improvement& made, const Score& score) {
    if (!made.asked.asks(Harm::reloading)) {
        return false;
    }
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        const auto spare = required_spare(score.verdicts[i], score.states[i], made.asked);
        if (score.verdicts[i].harm == Harm::reloading && spare && *spare < 0.0) {
            return true;
        }
    }
    return false;
}

/// Findings of draft that make nothing fall short: a flue far too wide, sizes that do not match.
double draft_warnings(const Assessment& assessment) {
    return static_cast<double>(std::count_if(
        assessment.findings.begin(), assessment.findings.end(), [](const Finding& finding) {
            return finding.harm == Harm::draft && finding.severity == Severity::warning
                   && !is_in_the_states(*finding.matter);
        }));
}

/// Whether a matter is no new one: creosote was there under the water, too.
bool stood_before(const Improvement& made, const Matter* matter) {
    return holds(made.against, matter) || is_hidden_by_water(*matter, made.present.findings);
}

/// A danger or fault of which the present run has none.
bool has_new_harm(const Assessment& present, const Assessment& then) {
    const std::vector<const Matter*> raised = raised_by(present, then);
    return std::any_of(then.findings.begin(), then.findings.end(), [&](const Finding& finding) {
        return finding.severity <= Severity::failure && holds(raised, finding.matter)
               && !is_in_the_states(*finding.matter);
    });
}

bool is_part_of(const Plan& less, const Plan& more) {
    return less.steps.size() < more.steps.size()
           && std::all_of(less.steps.begin(), less.steps.end(), [&](const Remedy& step) {
                  return std::any_of(
                      more.steps.begin(), more.steps.end(), [&](const Remedy& other) {
                          return other.kind == step.kind && other.what == step.what;
                      });
              });
}

/// What is only just enough is had for half its price: a little more wind or cold undoes it.
double cost_for_rank(const Plan& plan) {
    constexpr double of_just_enough = 2.0;
    return is_barely_enough(plan) && !plan.undoes ? of_just_enough * plan.cost : plan.cost;
}

} // namespace

double Plan::share_left(const Matter* matter) const {
    const auto at =
        std::find_if(this->left.begin(), this->left.end(), [matter](const MatterLeft& each) {
            return each.matter == matter;
        });
    return at == this->left.end() ? 1.0 : at->share;
}

bool Plan::eased(const Matter* matter) const {
    constexpr double as_bad = 0.98;
    return share_left(matter) < as_bad;
}

bool is_of_strong_draft(const Matter* matter) {
    return matter->id == "draft-too-strong";
}

void note_matters_against(const Improvement& made, const Assessment& then, Plan& plan) {
    plan.judged = true;
    plan.works = then.works();
    plan.against = matters_against(then, made.goal == Goal::clear_upkeep);
    // Draft that was a fault is cured where the heater holds it, not where it is a fault no longer.
    for (const Matter* matter : made.against) {
        if (is_of_strong_draft(matter) && !holds(plan.against, matter)
            && weight_of(then.findings, matter)) {
            plan.against.push_back(matter);
        }
    }
    plan.left.clear();
    plan.trouble = 0.0;
    constexpr double least = 0.6;
    for (const Matter* matter : made.against) {
        MatterLeft left{matter, 0.0};
        const bool hidden = is_hidden_by_water(*matter, then.findings)
                            && !is_hidden_by_water(*matter, made.present.findings);
        if (holds(plan.against, matter) || hidden) {
            // A weight tells the order of findings, not the size of the harm: less bad is not
            // gone, and worse is no further finding.
            constexpr double at_limit = 0.05;
            constexpr double most = 1.2;
            const double now = weight_of(then.findings, matter).value_or(0.0);
            const double before = weight_of(made.present.findings, matter).value_or(0.0);
            left.share = std::clamp(
                (std::max(0.0, now) + at_limit) / (std::max(0.0, before) + at_limit), least, most);
        }
        plan.trouble += left.share;
        plan.left.push_back(left);
    }
    for (const Matter* matter : plan.against) {
        const bool under_water = !holds(made.against, matter) && stood_before(made, matter)
                                 && !is_hidden_by_water(*matter, then.findings);
        plan.trouble += under_water ? least : stood_before(made, matter) ? 0.0 : 1.0;
    }
    // Warnings that make nothing fall short speak for a plan that clears them, too.
    constexpr double of_a_warning = 0.5;
    plan.warnings = of_a_warning * (draft_warnings(then) - draft_warnings(made.present));
    plan.new_harm = has_new_harm(made.present, then);
}

std::vector<RemedyKind> kinds_of(const Plan& plan) {
    std::vector<RemedyKind> kinds;
    for (const Remedy& step : plan.steps) {
        kinds.push_back(step.kind);
    }
    return kinds;
}

bool is_clean(const Plan& plan) {
    return !plan.new_harm && !plan.short_of_wanted && !plan.cautioned
           && (!plan.too_strong || plan.undoes);
}

bool does_all(const Improvement& made, const Plan& plan) {
    if (!clears(made.goal)) {
        return plan.cures && !plan.short_of_wanted;
    }
    return plan.judged && plan.score.passes && !plan.short_of_wanted
           && std::all_of(plan.against.begin(), plan.against.end(), [&](const Matter* matter) {
                  return holds(made.unmoved, matter);
              });
}

void judge_wholly(PlanSearch& searching,
                  const Improvement& made,
                  std::vector<Plan>& plans,
                  PlanSearch::Ask ask) {
    searching.find_matters_against(plans, made, ask);
    for (Plan& plan : plans) {
        judge_plan(made, plan);
    }
}

double enough_to_spare() {
    return catalog::default_of(DefaultId::spare_wanted_share).value;
}

bool is_barely_enough(const Plan& plan) {
    constexpr double share_of_wanted = 0.1;
    return plan.cures && plan.score.least_spare < share_of_wanted * enough_to_spare();
}

int class_of(const Plan& plan) {
    return !plan.cures            ? not_cured + (plan.new_harm ? 1 : 0)
           : plan.new_harm        ? 3
           : plan.short_of_wanted ? 2
           : is_clean(plan)       ? 0
                                  : 1;
}

double left_to_spare(const Plan& plan, Goal goal) {
    if (clears(goal)) {
        // What is cleared goes before any draft: that makes less than half a finding.
        const double spare = plan.score.least_spare;
        return 0.5 * spare / (1.0 + std::abs(spare)) - plan.trouble;
    }
    if (goal == Goal::more_to_spare) {
        return plan.score.least_spare;
    }
    return plan.score.passes ? -std::max(0.0, plan.score.greatest_over)
                             : plan.score.least_spare - 1.0;
}

bool does_it(const Improvement& made, const Plan& plan) {
    if (made.goal != Goal::clear_upkeep) {
        return plan.against.empty();
    }
    // Of upkeep anything less is a gain, as long as nothing takes its place.
    // One matter may become worse if others become better by more.
    constexpr double worth_it = 0.75; // one matter gone, or two much less bad
    return (plan.against.size() < made.against.size()
            || plan.trouble <= static_cast<double>(made.against.size()) - worth_it)
           && std::all_of(plan.against.begin(), plan.against.end(), [&](const Matter* matter) {
                  return stood_before(made, matter);
              });
}

void judge_plan(const Improvement& made, Plan& plan) {
    const Score& before = made.score;
    constexpr double little_over = 0.05; // what the heater is allowed; judgement
    constexpr double same_trouble = 0.1; // of draft that is too strong already
    const double stood = static_cast<double>(made.against.size());
    if (clears(made.goal) && !plan.judged) {
        plan.trouble = stood;
    }
    const bool nothing_stands = !plan.judged || plan.works;
    if (clears(made.goal)) {
        const auto counted = [](double spare) {
            return std::clamp(spare, -1.0, enough_to_spare());
        };
        plan.gain =
            stood - plan.trouble + counted(plan.score.least_spare) - counted(before.least_spare);
        plan.cures = plan.judged && plan.score.passes && plan.works && does_it(made, plan);
    } else if (made.goal == Goal::more_to_spare) {
        plan.gain = std::min(plan.score.least_spare, enough_to_spare()) - before.least_spare;
        plan.cures = plan.score.passes && nothing_stands;
    } else {
        plan.gain = plan.score.passes
                        ? before.greatest_over - std::max(0.0, plan.score.greatest_over)
                        : plan.score.least_spare;
        plan.cures = plan.score.passes && plan.score.greatest_over <= 0.0 && nothing_stands;
    }
    plan.too_strong =
        plan.score.greatest_over
        > (before.greatest_over > 0.0 ? before.greatest_over + same_trouble : little_over);
    plan.short_of_wanted = is_short_of_wanted(made, plan.score);
    plan.undoes = std::all_of(plan.steps.begin(), plan.steps.end(), [](const Remedy& step) {
        return undoes_a_fault(step.kind);
    });
    plan.cautioned = std::any_of(plan.steps.begin(), plan.steps.end(), [](const Remedy& step) {
        return !step.caution.empty();
    });
}

bool ranks_before(const Plan& a, const Plan& b) {
    if (class_of(a) != class_of(b)) {
        return class_of(a) < class_of(b);
    }
    const bool of_findings = !a.left.empty() && !b.left.empty();
    if (of_findings && a.against.empty() != b.against.empty()) {
        return a.against.empty();
    }
    // Of findings what leaves less goes first, whatever it costs: to a half of one finding.
    const double more_left =
        std::round(2.0 * (a.trouble + a.warnings)) - std::round(2.0 * (b.trouble + b.warnings));
    if (of_findings && !a.against.empty() && more_left != 0.0) {
        return more_left < 0.0;
    }
    if (class_of(a) >= not_cured && !of_findings) {
        return a.merit() != b.merit() ? a.merit() > b.merit() : a.cost < b.cost;
    }
    // What is wanted is had: the rest is what it costs.
    return cost_for_rank(a) != cost_for_rank(b) ? cost_for_rank(a) < cost_for_rank(b)
                                                : a.gain > b.gain;
}

void drop_idle_steps(const Improvement& made, std::vector<Plan>& plans) {
    constexpr double least_more = 0.01;
    std::vector<bool> idle(plans.size());
    for (std::size_t i = 0; i < plans.size(); ++i) {
        for (std::size_t j = 0; j < plans.size() && !idle[i]; ++j) {
            if (!is_part_of(plans[j], plans[i])) {
                continue;
            }
            const bool no_worse = class_of(plans[j]) <= class_of(plans[i])
                                  && (plans[i].too_strong || !plans[j].too_strong);
            const bool same_done =
                plans[i].cures && plans[j].against.size() <= plans[i].against.size();
            idle[i] = no_worse
                      && (same_done
                          || left_to_spare(plans[i], made.goal)
                                 <= left_to_spare(plans[j], made.goal) + least_more);
        }
    }
    std::vector<Plan> kept;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        if (!idle[i]) {
            kept.push_back(std::move(plans[i]));
        }
    }
    plans = std::move(kept);
}

void keep_nearest(PlanSearch& searching,
                  const Improvement& made,
                  std::size_t most,
                  const std::vector<Plan>& singles,
                  std::vector<Plan>& sets) {
    const auto cures = [](const Plan& plan) { return plan.cures; };
    const bool any = std::any_of(singles.begin(), singles.end(), cures)
                     || std::any_of(sets.begin(), sets.end(), cures);
    const auto first = std::stable_partition(
        sets.begin(), sets.end(), [](const Plan& plan) { return plan.judged; });
    std::stable_sort(first, sets.end(), [](const Plan& a, const Plan& b) {
        return a.score.least_spare > b.score.least_spare;
    });
    std::vector<Plan> nearest(std::make_move_iterator(first), std::make_move_iterator(sets.end()));
    sets.erase(first, sets.end());
    nearest.resize(any ? 0 : std::min(nearest.size(), most));
    judge_wholly(searching, made, nearest, PlanSearch::Ask::all);
    std::move(nearest.begin(), nearest.end(), std::back_inserter(sets));
}

void mark_front(std::vector<Plan>& plans, Goal goal) {
    std::vector<std::size_t> order(plans.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return plans[a].cost != plans[b].cost
                   ? plans[a].cost < plans[b].cost
                   : left_to_spare(plans[a], goal) > left_to_spare(plans[b], goal);
    });
    double most = -std::numeric_limits<double>::infinity();
    for (const std::size_t i : order) {
        plans[i].on_front = left_to_spare(plans[i], goal) > most;
        most = std::max(most, left_to_spare(plans[i], goal));
    }
}

} // namespace fluewright
