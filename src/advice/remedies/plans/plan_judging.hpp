#pragma once

#include "fluewright/advice/remedies/improve.hpp"
#include "plan_search.hpp"

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

/// Of plans that look alike for a fitter so many are shown.
inline constexpr std::size_t most_alike = 2;

/// The kinds of a plan's changes, in their order: plans of the same kinds look alike.
[[nodiscard]] std::vector<RemedyKind> kinds_of(const Plan& plan);

/// 0 for a plan that cures and is_clean(), 1 for one that cures and draws too hard or may void a
/// listing, 2 for one after which the door still opens less far than wanted, 3 for one that brings
/// a danger or fault, 4 for one that does not cure, 5 for one that does not and harms.
[[nodiscard]] int class_of(const Plan& plan);

/// Whether nothing speaks against a plan but its cost.
[[nodiscard]] bool is_clean(const Plan& plan);

/// Whether a plan does all that any change can do.
[[nodiscard]] bool does_all(const Improvement& made, const Plan& plan);

/// Whether what a plan leaves is what is wanted: nothing, or of upkeep less than before.
/// `plan` is judged.
[[nodiscard]] bool does_it(const Improvement& made, const Plan& plan);

/// Whether the matter is draft that the appliance cannot hold.
[[nodiscard]] bool is_of_strong_draft(const Matter* matter);

/// Fills what an assessment of a plan tells of what stands against it.
void note_matters_against(const Improvement& made, const Assessment& then, Plan& plan);

/// Fills gain, cures and what speaks against the plan, from the score and from what stands.
void judge_plan(const Improvement& made, Plan& plan);

/// Asks what stands against the plans and judges them.
void judge_wholly(PlanSearch& searching,
                  const Improvement& made,
                  std::vector<Plan>& plans,
                  PlanSearch::Ask ask = PlanSearch::Ask::passing);

/// Drops what does no more than a part of it does: of what cures, where the part is no worse in any
/// other way; of the rest, where the part leaves as much.
void drop_idle_steps(const Improvement& made, std::vector<Plan>& plans);

/// Of sets whose states fall short those that come nearest, and only where nothing cures.
void keep_nearest(PlanSearch& searching,
                  const Improvement& made,
                  std::size_t most,
                  const std::vector<Plan>& singles,
                  std::vector<Plan>& sets);

} // namespace fluewright
