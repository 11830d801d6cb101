#include "plan_taming.hpp"

#include "plan_judging.hpp"

#include <algorithm>
#include <iterator>
#include <set>

namespace fluewright {
namespace {

/// The plan's steps with a device that holds the draft; it takes the place of a damper's turning.
std::vector<Remedy> with_tamer(const Plan& plan, const Remedy& tamer) {
    std::vector<Remedy> steps;
    std::copy_if(plan.steps.begin(),
                 plan.steps.end(),
                 std::back_inserter(steps),
                 [&](const Remedy& step) { return go_together(step, tamer); });
    steps.push_back(tamer);
    return steps;
}

/// Of plans by rank the first of each choice of kinds: of two liners the better one.
void keep_one_of_each_kind(std::vector<const Plan*>& plans) {
    std::set<std::vector<RemedyKind>> seen;
    std::erase_if(plans, [&](const Plan* plan) { return !seen.insert(kinds_of(*plan)).second; });
}

/// What does all with more kinds of change, at no less cost and with no more to spare, has a change
/// too many.
void drop_what_holds_another(std::vector<const Plan*>& plans) {
    const auto sorted_kinds = [](const Plan& plan) {
        std::vector<RemedyKind> kinds = kinds_of(plan);
        std::sort(kinds.begin(), kinds.end());
        return kinds;
    };
    const std::vector<const Plan*> all = plans;
    std::erase_if(plans, [&](const Plan* plan) {
        const std::vector<RemedyKind> kinds = sorted_kinds(*plan);
        return std::any_of(all.begin(), all.end(), [&](const Plan* other) {
            const std::vector<RemedyKind> part = sorted_kinds(*other);
            constexpr double noise = 0.02;
            return part.size() < kinds.size() && other->cost <= plan->cost
                   && plan->score.least_spare <= other->score.least_spare + noise
                   && std::includes(kinds.begin(), kinds.end(), part.begin(), part.end());
        });
    });
}

} // namespace

std::vector<Plan> tamed(PlanSearch& searching,
                        const Improvement& made,
                        const std::vector<Plan>& plans,
                        const std::vector<Remedy>& tamers) {
    constexpr std::size_t most_tamed = 4;
    std::vector<const Plan*> strong;
    for (const Plan& plan : plans) {
        // Where upkeep is asked for, the draft that is too strong then may be all that stands
        // against a plan.
        const bool mends = clears(made.goal) && plan.judged && plan.score.passes;
        if ((mends || does_all(made, plan)) && plan.too_strong) {
            strong.push_back(&plan);
        }
    }
    std::stable_sort(strong.begin(), strong.end(), [](const Plan* a, const Plan* b) {
        return ranks_before(*a, *b);
    });
    keep_one_of_each_kind(strong);
    drop_what_holds_another(strong);
    strong.resize(std::min(most_tamed, strong.size()));
    std::vector<Plan> found;
    for (const Plan* plan : strong) {
        std::vector<std::vector<Remedy>> steps;
        steps.reserve(tamers.size());
        for (const Remedy& tamer : tamers) {
            steps.push_back(with_tamer(*plan, tamer));
        }
        std::vector<std::size_t> from;
        std::vector<Plan> tried = searching.sets(steps, from);
        judge_wholly(searching, made, tried);
        std::erase_if(tried, [&](const Plan& each) {
            constexpr double worth_it =
                0.75; // that the draft is held, and nothing much comes of it
            const bool betters = each.judged && each.trouble <= plan->trouble - worth_it;
            return each.too_strong || !(each.cures || does_all(made, each) || betters);
        });
        const auto best = std::min_element(tried.begin(), tried.end(), ranks_before);
        if (best != tried.end()) {
            found.push_back(std::move(*best));
        }
    }
    return found;
}

} // namespace fluewright
