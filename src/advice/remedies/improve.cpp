#include "fluewright/advice/remedies/improve.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "plan_details.hpp"
#include "plan_judging.hpp"
#include "plan_least.hpp"
#include "plan_search.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <map>
#include <tuple>

namespace fluewright {
namespace {

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

std::vector<Remedy>
remedies_for(const Installation& written, const Improvement& made, const ImproveOptions& options) {
    std::vector<Remedy> remedies = possible_remedies(written, made.present.installation);
    const auto in = [](const std::vector<RemedyKind>& kinds, const Remedy& remedy) {
        return std::find(kinds.begin(), kinds.end(), remedy.kind) != kinds.end();
    };
    std::erase_if(remedies, [&](const Remedy& remedy) {
        return in(options.without, remedy) || (!options.only.empty() && !in(options.only, remedy));
    });
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
        if (const auto price = price_of(remedy, list)) {
            remedy.effort = *price;
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
    if (clears(made.goal) && plan.standing.size() < made.standing.size()) {
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
    if (clears(made.goal)) {
        found.erase(std::remove_if(found.begin(),
                                   found.end(),
                                   [](const Plan& plan) { return !plan.score.passes; }),
                    found.end());
        searching.find_standing(found, made);
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

std::vector<Plan> search(PlanSearch& searching,
                         const std::vector<Remedy>& remedies,
                         bool pairs_wanted,
                         Improvement& made) {
    const bool clearing = clears(made.goal);
    std::vector<Plan> singles = searching.singles(remedies);
    if (clearing) {
        searching.find_standing(singles, made);
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
            searching.find_standing(pairs.plans, made);
            made.stuck = left_standing(made.stuck, pairs.plans);
        }
        drop_idle_pairs(made, alone, pairs.parents, pairs.plans);
        for (Plan& plan : pairs.plans) {
            judge_plan(made, plan);
        }
        all = std::move(pairs.plans);
        // Draft that is too strong is a matter of one device; three together are not worth it.
        // So is upkeep.
        if (made.goal != Goal::less_draft && made.goal != Goal::clear_upkeep && made.stuck.empty()
            && !any_cures(singles) && !any_cures(all)) {
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
        // Who asks for the draft alone asks for no upkeep.
        const bool whole = made.present.verdict.of(Harm::fire).counts;
        return made.score.greatest_over > 0.0 || !whole ? Goal::less_draft : Goal::clear_upkeep;
    }
    return made.standing.empty() ? Goal::more_to_spare : Goal::clear_findings;
}

bool is_cured(const Improvement& made) {
    return !made.plans.empty() && made.plans.front().cures;
}

/// Beside the best plans the same with the least amounts that do it; of runs that are the same the
/// first stands.
void add_least(PlanSearch& searching,
               const Improvement& made,
               const ImproveOptions& options,
               const Installation& written,
               std::vector<Plan>& plans) {
    constexpr std::size_t set_per_shown = 3;
    const std::size_t count = std::min(set_per_shown * options.most, plans.size());
    for (std::size_t i = 0; i < count; ++i) {
        std::optional<Plan> least =
            least_of(searching, made, Costs{written, options.prices}, plans[i]);
        const bool known = !least || std::any_of(plans.begin(), plans.end(), [&](const Plan& plan) {
            return plan.changed == least->changed;
        });
        if (!known) {
            plans.push_back(std::move(*least));
        }
    }
}

void search_and_choose(const Installation& written,
                       const ImproveOptions& options,
                       const std::vector<Remedy>& remedies,
                       bool pairs_wanted,
                       Improvement& made) {
    PlanSearch searching(written, options.required, options.threads, options.progress);
    std::vector<Plan> plans = search(searching, remedies, pairs_wanted, made);
    if (options.budget) {
        std::erase_if(plans, [&](const Plan& plan) { return plan.cost > *options.budget; });
    }
    std::stable_sort(plans.begin(), plans.end(), ranks_before);
    add_least(searching, made, options, written, plans);
    mark_front(plans, made.goal);
    std::stable_sort(plans.begin(), plans.end(), ranks_before);
    made.plans.clear();
    choose_shown(made, std::move(plans), options.most);
}

} // namespace

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
    const auto leave_alone = [&made] {
        made.plans.clear();
        made.outcome = Improvement::Outcome::leave_alone;
        made.sentence = improvement_sentence(made);
        return made;
    };
    made.standing = standing(made.present, made.goal == Goal::clear_upkeep);
    if (made.present.works() && made.score.greatest_over <= 0.0 && made.standing.empty()) {
        return leave_alone();
    }
    std::vector<Remedy> remedies = remedies_for(written, made, options);
    if (options.prices) {
        made.currency = options.prices->currency;
        remedies = priced(std::move(remedies), *options.prices, made.unpriced);
    }
    search_and_choose(written, options, remedies, options.pairs, made);
    if (!options.pairs && !is_cured(made)) {
        // What cured by the states alone may have raised a danger.
        search_and_choose(written, options, remedies, true, made);
    }
    if (made.goal == Goal::clear_upkeep && !is_cured(made)) {
        return leave_alone();
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
