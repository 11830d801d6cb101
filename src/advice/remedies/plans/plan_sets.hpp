#pragma once

#include "fluewright/advice/remedies/improve.hpp"
#include "plan_search.hpp"

#include <vector>

/// Several changes together, the cheapest first.
namespace fluewright {

/// What the search of sets came to.
struct FoundSets {
    std::vector<Plan> plans; ///< judged, with what stands against those whose states pass
    bool proven{};           ///< no cheaper set was left untried than the last of those wanted
    double tried_below{};    ///< sets that cost less were all tried
};

/// Sets of up to three changes in the order of their cost, until `options.most` do all that can be
/// done or the rest cost more than these. What is only undone, such as a damper that is turned open
/// or a flue that is swept, may be done together as one of the three. Passed over are sets of which
/// one change alone does all, and sets that by twice what their changes gain alone cannot do it. A
/// fixed count of runs bounds the work, so that the answer does not hang on the machine.
///
/// `singles` are judged.
[[nodiscard]] FoundSets cheapest_sets(PlanSearch& searching,
                                      const Improvement& made,
                                      const ImproveOptions& options,
                                      const std::vector<Plan>& singles);

} // namespace fluewright
