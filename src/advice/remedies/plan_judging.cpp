#include "plan_judging.hpp"

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

constexpr int not_cured = 2;

} // namespace

double enough_to_spare() {
    return catalog::default_of(DefaultId::spare_wanted_share).value;
}

int class_of(const Plan& plan) {
    return !plan.cures ? not_cured : plan.too_strong ? 1 : 0;
}

double left_to_spare(const Plan& plan, Goal goal) {
    if (clears(goal)) {
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

bool does_it(const Improvement& made, const std::vector<const Matter*>& left) {
    if (made.goal != Goal::clear_upkeep) {
        return left.empty();
    }
    // Of upkeep any matter less is a gain, as long as nothing takes its place.
    return left.size() < made.standing.size()
           && std::all_of(left.begin(), left.end(), [&](const Matter* matter) {
                  return std::find(made.standing.begin(), made.standing.end(), matter)
                         != made.standing.end();
              });
}

void judge_plan(const Improvement& made, Plan& plan) {
    const Score& before = made.score;
    constexpr double noise = 0.02;
    if (clears(made.goal)) {
        const auto counted = [](double spare) {
            return std::clamp(spare, -1.0, enough_to_spare());
        };
        plan.gain = static_cast<double>(made.standing.size())
                    - static_cast<double>(plan.standing.size()) + counted(plan.score.least_spare)
                    - counted(before.least_spare);
        plan.cures = plan.score.passes && does_it(made, plan.standing);
    } else if (made.goal == Goal::more_to_spare) {
        plan.gain = std::min(plan.score.least_spare, enough_to_spare()) - before.least_spare;
        plan.cures = plan.score.passes;
    } else {
        plan.gain = plan.score.passes
                        ? before.greatest_over - std::max(0.0, plan.score.greatest_over)
                        : plan.score.least_spare;
        plan.cures = plan.score.passes && plan.score.greatest_over <= 0.0;
    }
    plan.too_strong = plan.score.greatest_over > std::max(0.0, before.greatest_over + noise);
}

bool ranks_before(const Plan& a, const Plan& b) {
    if (class_of(a) != class_of(b)) {
        return class_of(a) < class_of(b);
    }
    const bool in_part = !a.standing.empty() || !b.standing.empty();
    if (class_of(a) == not_cured || in_part) {
        return a.merit() != b.merit() ? a.merit() > b.merit() : a.cost < b.cost;
    }
    // What is wanted is had: the rest is what it costs.
    return a.cost != b.cost ? a.cost < b.cost : a.gain > b.gain;
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
