#include "fluewright/advice/remedies/improve.hpp"

#include "advice/remedies/plans/plan_details.hpp"
#include "advice/remedies/plans/plan_goal.hpp"
#include "advice/remedies/plans/plan_judging.hpp"
#include "advice/remedies/plans/plan_least.hpp"
#include "advice/remedies/plans/plan_search.hpp"
#include "advice/remedies/plans/plan_sets.hpp"
#include "advice/remedies/plans/plan_taming.hpp"
#include "advice/seen_trouble.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <tuple>

namespace fluewright {
namespace {

/// Chooses what is shown: the best by rank.
void choose_shown(Improvement& made, std::vector<Plan> ranked, std::size_t most) {
    // What a plan leaves and brings is worked out for some more than are shown.
    constexpr std::size_t looked_at_per_shown = 2;
    std::map<std::vector<RemedyKind>, std::size_t> alike;
    std::erase_if(ranked,
                  [&](const Plan& plan) { return alike[kinds_of(plan)]++ >= most_alike + 1; });
    ranked.resize(std::min(ranked.size(), looked_at_per_shown * most));
    for (Plan& plan : ranked) {
        add_details(made, plan);
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const Plan& a, const Plan& b) {
        return class_of(a) < class_of(b);
    });
    std::map<std::vector<RemedyKind>, std::size_t> of_these_kinds;
    for (Plan& plan : ranked) {
        if (made.plans.size() < most && of_these_kinds[kinds_of(plan)]++ < most_alike) {
            made.plans.push_back(std::move(plan));
            made.plans.back().rank = made.plans.size();
        }
    }
}

/// What holds the draft is no cure where there is not too much of it.
std::vector<Remedy> take_tamers(const Improvement& made, std::vector<Remedy>& remedies) {
    const bool too_strong_stands =
        std::any_of(made.against.begin(), made.against.end(), is_of_strong_draft);
    if (made.goal == Goal::less_draft || too_strong_stands) {
        return {};
    }
    const auto first = std::stable_partition(
        remedies.begin(), remedies.end(), [](const auto& each) { return !holds_the_draft(each); });
    std::vector<Remedy> tamers(std::make_move_iterator(first),
                               std::make_move_iterator(remedies.end()));
    remedies.erase(first, remedies.end());
    return tamers;
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
    if (clears(made.goal) && plan.against.size() < made.against.size()) {
        return true;
    }
    const std::size_t limiting = made.score.limiting;
    return relative_spare(plan.score.verdicts[limiting], plan.score.states[limiting])
           > made.score.least_spare + noise;
}

/// Of the matters those that every plan leaves.
std::vector<const Matter*> left_by_all(const std::vector<const Matter*>& matters,
                                       const std::vector<Plan>& plans) {
    std::vector<const Matter*> left;
    std::copy_if(
        matters.begin(), matters.end(), std::back_inserter(left), [&](const Matter* matter) {
            return std::all_of(plans.begin(), plans.end(), [&](const Plan& plan) {
                return std::find(plan.against.begin(), plan.against.end(), matter)
                       != plan.against.end();
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
        return left_by_all(singles[first].against, {singles[second]}).size();
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

/// All pairs, whatever they cost.
std::vector<Plan>
all_pairs(PlanSearch& searching, const std::vector<Plan>& singles, Improvement& made) {
    std::vector<double> alone;
    std::vector<bool> help;
    for (const Plan& plan : singles) {
        alone.push_back(left_to_spare(plan, made.goal));
        help.push_back(helps(made, plan));
    }
    PlanSearch::Pairs pairs = searching.pairs(singles, help);
    if (clears(made.goal)) {
        keep_promising(singles, pairs);
        judge_wholly(searching, made, pairs.plans, PlanSearch::Ask::all);
        made.stuck = left_by_all(made.stuck, pairs.plans);
        drop_idle_pairs(made, alone, pairs.parents, pairs.plans);
    } else {
        drop_idle_pairs(made, alone, pairs.parents, pairs.plans);
        judge_wholly(searching, made, pairs.plans);
    }
    return std::move(pairs.plans);
}

void append(std::vector<Plan>& plans, std::vector<Plan> more) {
    plans.insert(
        plans.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// What no single change makes less bad.
void find_unmoved(const std::vector<Plan>& singles, Improvement& made) {
    std::copy_if(made.against.begin(),
                 made.against.end(),
                 std::back_inserter(made.unmoved),
                 [&](const Matter* matter) {
                     return std::none_of(singles.begin(), singles.end(), [&](const Plan& plan) {
                         return plan.eased(matter);
                     });
                 });
}

std::vector<Plan> search(PlanSearch& searching,
                         const std::vector<Remedy>& remedies,
                         const std::vector<Remedy>& tamers,
                         const ImproveOptions& options,
                         Improvement& made) {
    const auto ask = clears(made.goal) ? PlanSearch::Ask::all : PlanSearch::Ask::passing;
    std::vector<Plan> singles = searching.singles(remedies);
    searching.find_matters_against(singles, made, ask);
    find_unmoved(singles, made);
    for (Plan& plan : singles) {
        judge_plan(made, plan);
    }
    made.stuck = left_by_all(made.against, singles);
    std::vector<Plan> all;
    if (options.pairs) {
        all = all_pairs(searching, singles, made);
    }
    FoundSets found = cheapest_sets(searching, made, options, singles);
    made.proven = found.proven;
    made.tried_below = found.tried_below;
    if (clears(made.goal)) {
        keep_nearest(searching, made, options.most, singles, found.plans);
        made.stuck = left_by_all(made.stuck, found.plans);
    }
    append(all, std::move(found.plans));
    all.insert(all.begin(),
               std::make_move_iterator(singles.begin()),
               std::make_move_iterator(singles.end()));
    append(all, tamed(searching, made, all, tamers));
    drop_useless(all);
    drop_idle_steps(made, all);
    made.tried = searching.tried();
    return all;
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
    constexpr std::size_t set_per_shown = 2;
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

/// The cheapest that cures, of plans in the order of their rank.
const Plan* cheapest_cure(const std::vector<Plan>& plans) {
    const Plan* least = nullptr;
    for (const Plan& plan : plans) {
        const bool better = least == nullptr || class_of(plan) < class_of(*least)
                            || (class_of(plan) == class_of(*least) && plan.cost < least->cost);
        least = plan.cures && better ? &plan : least;
    }
    return least;
}

/// Nobody pays many times as much for what a plan with nothing against it does.
void drop_far_dearer(std::vector<Plan>& ranked) {
    constexpr double far_dearer = 5.0;
    if (ranked.empty() || !ranked.front().cures || !ranked.front().against.empty()
        || !is_clean(ranked.front())) {
        return;
    }
    const double most = far_dearer * ranked.front().cost;
    std::erase_if(ranked, [most](const Plan& plan) {
        return plan.cost > most || (plan.steps.size() > 1 && !is_clean(plan));
    });
}

void search_and_choose(const Installation& written,
                       const ImproveOptions& options,
                       std::vector<Remedy> remedies,
                       Improvement& made) {
    PlanSearch searching(written, made.present.required, options.threads, options.progress);
    const std::vector<Remedy> tamers = take_tamers(made, remedies);
    std::vector<Plan> plans = search(searching, remedies, tamers, options, made);
    std::stable_sort(plans.begin(), plans.end(), ranks_before);
    add_least(searching, made, options, written, plans);
    if (options.budget) {
        const auto too_dear = [&](const Plan& plan) { return plan.cost > *options.budget; };
        const bool any = std::any_of(plans.begin(), plans.end(), [&](const Plan& plan) {
            return plan.cures && !too_dear(plan);
        });
        if (const Plan* least = cheapest_cure(plans); !any && least != nullptr) {
            made.over_budget = *least;
        }
        std::erase_if(plans, too_dear);
    }
    mark_front(plans, made.goal);
    std::stable_sort(plans.begin(), plans.end(), ranks_before);
    if (!options.pairs) {
        drop_far_dearer(plans);
    }
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
    made.against = matters_against(made.present);
    made.goal = goal_of(made);
    const auto leave_alone = [&made] {
        made.plans.clear();
        made.outcome = Improvement::Outcome::leave_alone;
        made.sentence = improvement_sentence(made);
        return made;
    };
    made.against = matters_against(made.present, made.goal == Goal::clear_upkeep);
    made.asked = asked_of(made.present);
    const ApplianceCase& heater = made.present.installation.appliance;
    made.trouble = words_on_trouble(written.observed, heater, made.present.works());
    made.budget = options.budget;
    if (made.present.works() && tells_of_too_little_draft(written.observed, heater)) {
        return leave_alone(); // what betters the upkeep of the run as written may starve this one
    }
    if (made.present.works() && made.score.greatest_over <= 0.0 && made.against.empty()) {
        return leave_alone();
    }
    std::vector<Remedy> remedies = remedies_for(written, made, options);
    if (options.prices) {
        made.currency = options.prices->currency;
        remedies = priced(std::move(remedies), *options.prices, made.unpriced);
    }
    made.limited = options.budget || !options.without.empty() || !options.only.empty()
                   || !made.unpriced.empty();
    search_and_choose(written, options, std::move(remedies), made);
    if (made.goal == Goal::clear_upkeep && !is_cured(made)) {
        // Upkeep and the door together have no cure: the door harms more, so it alone is tried.
        const bool door_is_short =
            made.present.verdict.of(Harm::reloading).outcome == HarmOutcome::falls_short;
        if (door_is_short && made.present.required.narrow_door) {
            ImproveOptions for_door = options;
            for_door.required = made.present.required;
            for_door.required.asked[static_cast<std::size_t>(Harm::reloading)] = true;
            for_door.required.narrow_door = false;
            Result<Improvement, Faults> opened = improve(written, for_door);
            if (opened && is_cured(*opened)) {
                opened->present = std::move(made.present); // as it was asked for
                return opened;
            }
        }
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
