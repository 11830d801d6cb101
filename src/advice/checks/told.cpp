#include "fluewright/advice/checks/told.hpp"

#include "own_checks.hpp"

#include <algorithm>

namespace fluewright {

bool is_told_to(const CheckResult& result, HeaterKind kind) {
    const std::string_view id = result.check->id;
    const bool waits_for_tar =
        result.outcome == CheckOutcome::undetermined && id == "trade-creosote-thickness";
    if (result.outcome != CheckOutcome::does_not_apply && !waits_for_tar) {
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

} // namespace fluewright
