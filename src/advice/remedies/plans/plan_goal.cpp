#include "advice/remedies/plans/plan_goal.hpp"

#include "advice/remedies/plans/plan_judging.hpp"

#include <algorithm>

namespace fluewright {

Goal goal_of(const Improvement& made) {
    if (made.present.works()) {
        // Who asks for the draft alone asks for no upkeep.
        const bool whole = made.present.verdict.of(Harm::fire).counts;
        const std::vector<const Matter*> upkeep = matters_against(made.present, true);
        const bool more_than_draft = !std::all_of(upkeep.begin(), upkeep.end(), is_of_strong_draft);
        return !whole || (made.score.greatest_over > 0.0 && !more_than_draft) ? Goal::less_draft
                                                                              : Goal::clear_upkeep;
    }
    return made.against.empty() ? Goal::more_to_spare : Goal::clear_findings;
}

Required asked_of(const Assessment& present) {
    Required asked = present.required;
    const HarmVerdict& reloading = present.verdict.of(Harm::reloading);
    const bool before_upkeep = present.works() && asked.narrow_door;
    if (reloading.outcome == HarmOutcome::falls_short && (reloading.counts || before_upkeep)) {
        asked.asked[static_cast<std::size_t>(Harm::reloading)] = true;
    }
    return asked;
}

} // namespace fluewright
