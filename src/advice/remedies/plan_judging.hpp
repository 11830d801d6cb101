#pragma once

#include "fluewright/advice/remedies/improve.hpp"

/// What a plan is worth for what is asked of it.
namespace fluewright {

/// Whether the goal is to be rid of findings; otherwise it is a figure of the states.
[[nodiscard]] inline bool clears(Goal goal) {
    return goal == Goal::clear_findings || goal == Goal::clear_upkeep;
}

/// Spare, over what is asked, beyond which more counts for nothing [-].
[[nodiscard]] double enough_to_spare();

/// What is left to spare for the goal: the front compares it, uncapped.
[[nodiscard]] double left_to_spare(const Plan& plan, Goal goal);

/// 0 for a plan that cures, 1 for one that cures and draws too hard, 2 for one that does not cure.
[[nodiscard]] int class_of(const Plan& plan);

/// Whether what a plan leaves standing is what is wanted: nothing, or of upkeep less than before.
[[nodiscard]] bool does_it(const Improvement& made, const std::vector<const Matter*>& left);

/// Fills gain, cures and too_strong from the score and from what stands.
void judge_plan(const Improvement& made, Plan& plan);

} // namespace fluewright
