#pragma once

#include "plan_search.hpp"

/// Changes that have an amount, set to the least that does it.
namespace fluewright {

/// What changes of this installation cost.
struct Costs {
    const Installation& written;
    const std::optional<PriceList>& prices;
};

/// The user's price of a remedy; nothing where the list has none.
[[nodiscard]] std::optional<double> price_of(const Remedy& remedy, const PriceList& list);

/// Of a plan that cures the same with each change by amount (the height added, the inlet, the
/// opening) at the least that still cures and leaves what is wanted to spare, in steps of the
/// trade; nothing where nothing can be less.
[[nodiscard]] std::optional<Plan>
least_of(PlanSearch& searching, const Improvement& made, const Costs& costs, const Plan& plan);

} // namespace fluewright
