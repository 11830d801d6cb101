#include "fluewright/advice/remedies/improve.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "plan_details.hpp"
#include "plan_search.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <map>
#include <tuple>

namespace fluewright {
namespace {

double enough() {
    return catalog::default_of(DefaultId::spare_wanted_share).value;
}

/// What is left to spare for the goal: the front compares it, uncapped.
double left_to_spare(const Plan& plan, Goal goal) {
    if (goal == Goal::clear_findings) {
        // What is cleared goes before any draft: that makes less than half a finding.
        const double spare = plan.score.least_spare;
        return 0.5 * spare / (1.0 + std::abs(spare)) - static_cast<double>(plan.standing.size());
    }
    if (goal == Goal::more_to_spare) {
        return plan.score.least_spare;
    }
    return plan.score.passes ? -std::max(0.0, plan.score.greatest_over)
                             : plan.score.least_spare - 1.0;
}

int class_of(const Plan& plan) {
    return !plan.cures ? 2 : plan.too_strong ? 1 : 0;
}

void judge_plan(const Improvement& made, Plan& plan) {
    const Score& before = made.score;
    constexpr double noise = 0.02;
    if (made.goal == Goal::clear_findings) {
        const auto counted = [](double spare) { return std::clamp(spare, -1.0, enough()); };
        plan.gain = static_cast<double>(made.standing.size())
                    - static_cast<double>(plan.standing.size()) + counted(plan.score.least_spare)
                    - counted(before.least_spare);
        plan.cures = plan.score.passes && plan.standing.empty();
    } else if (made.goal == Goal::more_to_spare) {
        plan.gain = std::min(plan.score.least_spare, enough()) - before.least_spare;
        plan.cures = plan.score.passes;
    } else {
        plan.gain = plan.score.passes
                        ? before.greatest_over - std::max(0.0, plan.score.greatest_over)
                        : plan.score.least_spare;
        plan.cures = plan.score.passes && plan.score.greatest_over <= 0.0;
    }
    plan.too_strong = plan.score.greatest_over > std::max(0.0, before.greatest_over + noise);
}

bool has_new_danger(const Plan& plan) {
    return std::any_of(plan.raised.begin(), plan.raised.end(), [](const Matter* matter) {
        return matter->severity == Severity::danger;
    });
}

/// Chooses what is shown: the best by rank and the whole front.
void choose_shown(Improvement& made, std::vector<Plan> ranked, std::size_t most) {
    // A new danger shows only with the profile along the run, which is worked out for some more
    // plans than are shown.
    constexpr std::size_t looked_at_per_shown = 4;
    std::vector<Plan> looked_at;
    for (std::size_t i = 0; i < ranked.size(); ++i) {
        if (i < looked_at_per_shown * most || ranked[i].on_front) {
            add_details(made, ranked[i]);
            looked_at.push_back(std::move(ranked[i]));
        }
    }
    std::stable_sort(looked_at.begin(), looked_at.end(), [](const Plan& a, const Plan& b) {
        const auto order = [](const Plan& plan) {
            return std::max(class_of(plan), plan.cures && has_new_danger(plan) ? 1 : 0);
        };
        return order(a) < order(b);
    });
    std::size_t chosen = 0;
    std::map<std::vector<RemedyKind>, std::size_t> of_these_kinds;
    for (Plan& plan : looked_at) {
        std::vector<RemedyKind> kinds;
        for (const Remedy& remedy : plan.steps) {
            kinds.push_back(remedy.kind);
        }
        // Three sizes of the same liner tell a fitter no more than two.
        constexpr std::size_t most_alike = 2;
        const bool wanted = chosen < most && of_these_kinds[kinds]++ < most_alike;
        chosen += wanted ? 1U : 0U;
        if (wanted || plan.on_front) {
            made.plans.push_back(std::move(plan));
            made.plans.back().rank = made.plans.size();
        }
    }
}

std::vector<Remedy> remedies_for(const Installation& written, const Improvement& made) {
    std::vector<Remedy> remedies = possible_remedies(written, made.present.installation);
    if (made.goal == Goal::more_to_spare) {
        remedies.erase(std::remove_if(remedies.begin(),
                                      remedies.end(),
                                      [](const Remedy& remedy) {
                                          return remedy.kind == RemedyKind::fit_damper
                                                 || remedy.kind == RemedyKind::fit_regulator;
                                      }),
                       remedies.end());
    }
    return remedies;
}

/// Takes the prices of the user; remedies without one are left out and named.
std::vector<Remedy>
priced(std::vector<Remedy> remedies, const PriceList& list, std::vector<std::string>& unpriced) {
    std::vector<Remedy> kept;
    for (Remedy& remedy : remedies) {
        const catalog::RemedyEffort& row = effort_of(remedy.kind);
        const auto price = list.prices.find(row.id);
        if (price != list.prices.end()) {
            remedy.effort = price->second.fixed + price->second.per_metre * remedy.length_m;
            kept.push_back(std::move(remedy));
        } else if (unpriced.empty() || unpriced.back() != row.title) {
            unpriced.emplace_back(row.title);
        }
    }
    return kept;
}

void drop_useless(std::vector<Plan>& plans) {
    constexpr double least_gain = 0.005;
    plans.erase(std::remove_if(plans.begin(),
                               plans.end(),
                               [](const Plan& plan) { return plan.gain <= least_gain; }),
                plans.end());
}

/// A pair is worth its trouble when it leaves more than the better of its two changes alone.
void drop_idle_pairs(const Improvement& made,
                     const std::vector<double>& alone,
                     const std::vector<std::pair<std::size_t, std::size_t>>& parents,
                     std::vector<Plan>& pairs) {
    constexpr double least_more = 0.01;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        const double better = std::max(alone[parents[i].first], alone[parents[i].second]);
        if (left_to_spare(pairs[i], made.goal) > better + least_more) {
            if (kept != i) {
                pairs[kept] = std::move(pairs[i]);
            }
            ++kept;
        }
    }
    pairs.erase(pairs.begin() + static_cast<std::ptrdiff_t>(kept), pairs.end());
}

/// Whether a change alone moves the state that limits, however little, where the goal lies. Of two
/// that do not, the state that limits would still limit.
bool helps(const Improvement& made, const Plan& plan) {
    constexpr double noise = 1e-3;
    if (made.goal == Goal::less_draft) {
        return plan.score.greatest_over < made.score.greatest_over - noise;
    }
    if (made.goal == Goal::clear_findings && plan.standing.size() < made.standing.size()) {
        return true;
    }
    const std::size_t limiting = made.score.limiting;
    return relative_spare(plan.score.verdicts[limiting], plan.score.states[limiting])
           > made.score.least_spare + noise;
}

bool any_cures(const std::vector<Plan>& plans) {
    return std::any_of(plans.begin(), plans.end(), [](const Plan& plan) { return plan.cures; });
}

/// A third change beside the pairs that come nearest; kept where it cures.
std::vector<Plan> triples(PlanSearch& searching,
                          const Improvement& made,
                          const std::vector<Plan>& pairs,
                          const std::vector<Plan>& singles) {
    constexpr std::size_t most_pairs = 12;
    std::vector<Plan> nearest = pairs;
    std::stable_sort(nearest.begin(), nearest.end(), [&made](const Plan& a, const Plan& b) {
        return left_to_spare(a, made.goal) > left_to_spare(b, made.goal);
    });
    nearest.erase(nearest.begin()
                      + static_cast<std::ptrdiff_t>(std::min(most_pairs, nearest.size())),
                  nearest.end());
    std::vector<Plan> found = searching.with_one_more(nearest, singles);
    if (made.goal == Goal::clear_findings) {
        found.erase(std::remove_if(found.begin(),
                                   found.end(),
                                   [](const Plan& plan) { return !plan.score.passes; }),
                    found.end());
        searching.find_standing(found, made.present.body->id);
    }
    for (Plan& plan : found) {
        judge_plan(made, plan);
    }
    found.erase(
        std::remove_if(found.begin(), found.end(), [](const Plan& plan) { return !plan.cures; }),
        found.end());
    return found;
}

/// Of the matters those that every plan leaves standing.
std::vector<const Matter*> left_standing(const std::vector<const Matter*>& matters,
                                         const std::vector<Plan>& plans) {
    std::vector<const Matter*> left;
    std::copy_if(
        matters.begin(), matters.end(), std::back_inserter(left), [&](const Matter* matter) {
            return std::all_of(plans.begin(), plans.end(), [&](const Plan& plan) {
                return std::find(plan.standing.begin(), plan.standing.end(), matter)
                       != plan.standing.end();
            });
        });
    return left;
}

/// Leaves the pairs that most likely clear something: asking what stands against a run takes too
/// long to do it for thousands. A pair clears about what either of its changes clears.
void keep_promising(const std::vector<Plan>& singles, PlanSearch::Pairs& pairs) {
    constexpr std::size_t most_pairs = 200;
    const auto left = [&](std::size_t i) {
        const auto& [first, second] = pairs.parents[i];
        return left_standing(singles[first].standing, {singles[second]}).size();
    };
    std::vector<std::tuple<std::size_t, bool, double, std::size_t>> order;
    for (std::size_t i = 0; i < pairs.plans.size(); ++i) {
        const Plan& plan = pairs.plans[i];
        order.emplace_back(left(i), !plan.score.passes, plan.cost, i);
    }
    std::sort(order.begin(), order.end());
    PlanSearch::Pairs kept;
    for (std::size_t n = 0; n < std::min(most_pairs, order.size()); ++n) {
        const std::size_t i = std::get<3>(order[n]);
        kept.plans.push_back(std::move(pairs.plans[i]));
        kept.parents.push_back(pairs.parents[i]);
    }
    pairs = std::move(kept);
}

std::vector<Plan> search(const Installation& written,
                         const ImproveOptions& options,
                         const std::vector<Remedy>& remedies,
                         bool pairs_wanted,
                         Improvement& made) {
    PlanSearch searching(written, options.required, options.threads, options.progress);
    const bool clearing = made.goal == Goal::clear_findings;
    std::vector<Plan> singles = searching.singles(remedies);
    if (clearing) {
        searching.find_standing(singles, made.present.body->id);
    }
    for (Plan& plan : singles) {
        judge_plan(made, plan);
    }
    std::vector<Plan> all;
    made.stuck = left_standing(made.standing, singles);
    if (pairs_wanted || !any_cures(singles)) {
        std::vector<double> alone;
        std::vector<bool> help;
        for (const Plan& plan : singles) {
            alone.push_back(left_to_spare(plan, made.goal));
            help.push_back(helps(made, plan));
        }
        PlanSearch::Pairs pairs = searching.pairs(singles, help);
        if (clearing) {
            keep_promising(singles, pairs);
            searching.find_standing(pairs.plans, made.present.body->id);
            made.stuck = left_standing(made.stuck, pairs.plans);
        }
        drop_idle_pairs(made, alone, pairs.parents, pairs.plans);
        for (Plan& plan : pairs.plans) {
            judge_plan(made, plan);
        }
        all = std::move(pairs.plans);
        // Draft that is too strong is a matter of one device; three together are not worth it.
        if (made.goal != Goal::less_draft && made.stuck.empty() && !any_cures(singles)
            && !any_cures(all)) {
            std::vector<Plan> further = triples(searching, made, all, singles);
            all.insert(all.end(),
                       std::make_move_iterator(further.begin()),
                       std::make_move_iterator(further.end()));
        }
    }
    all.insert(all.begin(),
               std::make_move_iterator(singles.begin()),
               std::make_move_iterator(singles.end()));
    drop_useless(all);
    made.tried = searching.tried();
    return all;
}

/// What harms most comes first. That the draft is short is a matter of the states.
Goal goal_of(const Improvement& made) {
    if (made.present.works()) {
        return Goal::less_draft;
    }
    return made.standing.empty() ? Goal::more_to_spare : Goal::clear_findings;
}

bool is_cured(const Improvement& made) {
    return !made.plans.empty() && made.plans.front().cures;
}

void search_and_choose(const Installation& written,
                       const ImproveOptions& options,
                       const std::vector<Remedy>& remedies,
                       bool pairs_wanted,
                       Improvement& made) {
    std::vector<Plan> plans = search(written, options, remedies, pairs_wanted, made);
    mark_front(plans, made.goal);
    std::stable_sort(plans.begin(), plans.end(), ranks_before);
    made.plans.clear();
    choose_shown(made, std::move(plans), options.most);
}

} // namespace

bool ranks_before(const Plan& a, const Plan& b) {
    if (class_of(a) != class_of(b)) {
        return class_of(a) < class_of(b);
    }
    return a.merit() != b.merit() ? a.merit() > b.merit() : a.cost < b.cost;
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

Result<Improvement, Faults> improve(const Installation& written, const ImproveOptions& options) {
    Result<Assessment, Faults> assessed = assess(written,
                                                 {.size_search = false,
                                                  .spread = false,
                                                  .units = options.units,
                                                  .required = options.required,
                                                  .rules = options.rules});
    if (!assessed) {
        return Failure{std::move(assessed).error()};
    }
    Improvement made;
    made.present = std::move(assessed).value();
    made.score = score_of(made.present);
    made.standing = standing(made.present);
    made.goal = goal_of(made);
    if (made.present.works() && made.score.greatest_over <= 0.0) {
        made.outcome = Improvement::Outcome::leave_alone;
        made.sentence = improvement_sentence(made);
        return made;
    }
    std::vector<Remedy> remedies = remedies_for(written, made);
    if (options.prices) {
        made.currency = options.prices->currency;
        remedies = priced(std::move(remedies), *options.prices, made.unpriced);
    }
    search_and_choose(written, options, remedies, options.pairs, made);
    if (!options.pairs && !is_cured(made)) {
        // What cured by the states alone may have raised a danger.
        search_and_choose(written, options, remedies, true, made);
    }
    using Outcome = Improvement::Outcome;
    made.outcome = !is_cured(made)                        ? Outcome::hopeless
                   : made.plans.front().steps.size() == 1 ? Outcome::one_cures
                   : made.plans.front().steps.size() == 2 ? Outcome::two_cure
                                                          : Outcome::three_cure;
    made.sentence = improvement_sentence(made);
    if (made.outcome == Outcome::hopeless) {
        made.reason = hopeless_reason(made);
    }
    return made;
}

} // namespace fluewright
