#include "plan_least.hpp"

#include "advice/remedies/offer.hpp"
#include "plan_judging.hpp"

#include <algorithm>

namespace fluewright {

std::optional<double> price_of(const Remedy& remedy, const PriceList& list) {
    const auto price = list.prices.find(effort_of(remedy.kind).id);
    if (price == list.prices.end()) {
        return std::nullopt;
    }
    const double own = price->second.fixed + price->second.per_metre * remedy.length_m;
    if (remedy.kind != RemedyKind::raise_top || remedy.word.empty()) {
        return own;
    }
    // Its second half has a price of its own.
    Remedy wall = remedy;
    wall.kind = RemedyKind::insulate_outside;
    wall.length_m = remedy.other_length_m;
    const std::optional<double> other = price_of(wall, list);
    return other ? std::optional{own + *other} : std::nullopt;
}

std::optional<Plan>
least_of(PlanSearch& searching, const Improvement& made, const Costs& costs, const Plan& plan) {
    if (!plan.cures) {
        return std::nullopt;
    }
    std::optional<Plan> least;
    // As much to spare as is wanted, where the plan has it.
    const double spare = std::min(plan.score.least_spare, enough_to_spare());
    // Of what let a room fall to where no fire may burn, nobody opens just enough to leave it
    // there.
    const bool room_kills =
        std::any_of(made.against.begin(), made.against.end(), [](const Matter* matter) {
            return matter->id == "room-far-below-outdoors";
        });
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
        if (room_kills && plan.steps[i].kind == RemedyKind::air_inlet) {
            continue;
        }
        std::vector<Remedy> less =
            lesser_remedies(plan.steps[i], costs.written, made.present.installation);
        // What suffices goes on sufficing as more is done: the least by halving.
        std::size_t low = 0;
        std::size_t high = less.size();
        while (low < high) {
            const std::size_t middle = low + (high - low) / 2;
            Remedy& step = less[middle];
            if (costs.prices) {
                step.effort = price_of(step, *costs.prices).value_or(step.effort);
            }
            std::vector<Remedy> steps = least ? least->steps : plan.steps;
            steps[i] = step;
            std::optional<Plan> tried = searching.with_steps(steps);
            if (tried) {
                searching.find_matters_against({&*tried, 1}, made, PlanSearch::Ask::passing);
                judge_plan(made, *tried);
            }
            if (tried && tried->cures && tried->score.least_spare >= spare
                && tried->against.size() <= plan.against.size() && tried->warnings <= plan.warnings
                && class_of(*tried) <= class_of(plan) && (plan.too_strong || !tried->too_strong)) {
                least = std::move(tried);
                high = middle;
            } else {
                low = middle + 1;
            }
        }
    }
    return least;
}

} // namespace fluewright
