#pragma once

#include "plan_search.hpp"

#include <vector>

/// What holds a draft that a plan has made too strong.
namespace fluewright {

/// For the cheapest plans that do all but leave more draft than the heater holds, what holds it as
/// a further step, each with the cheapest that does.
[[nodiscard]] std::vector<Plan> tamed(PlanSearch& searching,
                                      const Improvement& made,
                                      const std::vector<Plan>& plans,
                                      const std::vector<Remedy>& tamers);

} // namespace fluewright
