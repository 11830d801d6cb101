#pragma once

#include "fluewright/advice/assessment.hpp"

/// What a change did: two assessments of one installation held against each other.
namespace fluewright {

/// One finding before and after.
struct FindingChange {
    Finding before;
    Finding after;
};

/// One state that both installations have.
struct StateChange {
    std::size_t before{}; ///< index into the states of either
    std::size_t after{};
    double spare_before{}; ///< relative_spare()
    double spare_after{};
};

struct Difference {
    Findings cleared; ///< that were there before, at a place where they are no longer
    Findings raised;  ///< that were not there before
    std::vector<FindingChange> worse;
    std::vector<FindingChange> better;
    std::vector<StateChange> states; ///< in the order after the change
};

/// Findings are told apart by id and place. Where a change moves the parts of a run, so that
/// places are called otherwise, those of one id that are left over on both sides are held against
/// each other in their order, greatest first: only what is left over on one side was cleared or
/// raised.
[[nodiscard]] Difference difference(const Assessment& before, const Assessment& after);

/// The findings of `before` of which `after` has none at any place, each once, in their order; what
/// water that is new only hides is not gone.
[[nodiscard]] std::vector<const Matter*> gone(const Findings& before, const Findings& after);

/// Whether a matter is the lesser one of a wall, such as creosote, and the findings have water on a
/// wall: the wet wall is as cold as that, too, but `check` names the greater matter only.
[[nodiscard]] bool is_hidden_by_water(const Matter& matter, const Findings& findings);

/// The findings of `after` of which `before` has none, but for those that only say in other words
/// of a condition that is short what it says itself: where no condition is worse, they are not new;
/// nor is creosote where there was water on a wall.
[[nodiscard]] std::vector<const Matter*> raised_by(const Assessment& before,
                                                   const Assessment& after);

/// How far past its limit the weightiest finding of a matter is; nothing where there is none. Of
/// creosote and acid as if the wet walls were held against them as well.
[[nodiscard]] std::optional<double> weight_of(const Findings& findings, const Matter* matter);

} // namespace fluewright
