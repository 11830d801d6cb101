#pragma once

#include "fluewright/advice/remedies/improve.hpp"
#include "plan_search.hpp"

#include <vector>

/// Several changes together, the cheapest first.
namespace fluewright {

/// What the search of sets came to.
struct FoundSets {
    std::vector<Plan> plans; ///< judged, with what stands against those whose states pass
    bool proven{};           ///< the search came to its end
    double tried_below{};    ///< else: sets that cost less were all tried
};

/// Sets of up to three changes. First those that could do all by twice the sum of what their
/// changes do alone, in the order of their cost, until `options.most` do all that can be done or
/// the rest cost more than these; then what costs less than the best: every two, and of threes
/// those that could by twice what a two of them did with the third, or the sum. Where nothing does
/// all, those that come nearest by the sum go first. What is only undone, such as a damper that is
/// turned open or a flue that is swept, may be done together as one of the three. Passed over are
/// sets of which some changes alone do all, and nothing speaks against these but a listing; what
/// draws too hard then, or brings a harm, is joined by what takes that away. A count of marches
/// bounds the work, so that the answer does not hang on the machine.
///
/// `singles` are judged.
[[nodiscard]] FoundSets cheapest_sets(PlanSearch& searching,
                                      const Improvement& made,
                                      const ImproveOptions& options,
                                      const std::vector<Plan>& singles);

} // namespace fluewright
