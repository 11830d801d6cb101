#include "fluewright/advice/checks/told.hpp"

#include "fluewright/core/quantity/one_system.hpp"
#include "own_checks.hpp"

#include <algorithm>

namespace fluewright {

bool waits_for_deposit(const CheckResult& result) {
    return result.outcome == CheckOutcome::undetermined
           && result.check->id == "trade-creosote-thickness";
}

bool is_open_danger(const CheckResult& result) {
    // One town's old figure decides nothing, so it leaves nothing open either.
    return result.outcome == CheckOutcome::undetermined && !waits_for_deposit(result)
           && result.check->severity == Severity::danger && !result.check->local;
}

bool is_told_to(const CheckResult& result, HeaterKind kind) {
    const std::string_view id = result.check->id;
    if (result.outcome != CheckOutcome::does_not_apply && !waits_for_deposit(result)) {
        return true;
    }
    const auto own = std::find_if(checking::own_checks.begin(),
                                  checking::own_checks.end(),
                                  [&](const checking::OwnCheck& row) { return row.id == id; });
    if (own != checking::own_checks.end()) {
        return own->kinds.has(kind);
    }
    const auto rules = catalog::rules();
    const auto rule = std::find_if(
        rules.begin(), rules.end(), [&](const catalog::Rule& row) { return row.id == id; });
    return rule == rules.end() || applies_to(rule->kinds, kind);
}

std::string rule_words(const Check& check, UnitSystem units) {
    return in_one_system(check.rule, units);
}

} // namespace fluewright
