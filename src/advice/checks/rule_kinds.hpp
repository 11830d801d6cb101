#pragma once

#include "fluewright/model/run/heater_kind.hpp"

#include <array>
#include <string_view>

/// Of which kinds of heater a rule that does not apply is worth a word: nobody with a burner asks
/// about hearths.
namespace fluewright::checking {

struct RuleKinds {
    std::string_view begins; ///< what the ids of the rules begin with
    Kinds kinds;
};

inline constexpr auto rule_kinds = std::to_array<RuleKinds>({
    {"fireplace-", {HeaterKind::open_fire}},
    {"ca-fireplace-", {HeaterKind::open_fire}},
    {"ca-hearth", {HeaterKind::open_fire}},
    {"ca-mantel", {HeaterKind::open_fire}},
    {"hearth-extension-", {HeaterKind::open_fire}},
    {"uk-open-fire-", {HeaterKind::open_fire}},
    {"trade-surface-cold", {HeaterKind::closed_fire}},
    {"trade-creosote-", {HeaterKind::closed_fire}},
    {"connector-draft-regulator", {HeaterKind::closed_fire, HeaterKind::masonry_heater}},
    {"de-fuel-moisture", fed_by_hand},
    {"spark-arrester", fed_by_hand},
    {"chimney-cleanout", fed_by_hand},
});

[[nodiscard]] constexpr bool rule_is_told_to(std::string_view rule, HeaterKind kind) {
    for (const RuleKinds& row : rule_kinds) {
        if (rule.starts_with(row.begins)) {
            return row.kinds.has(kind);
        }
    }
    return true;
}

} // namespace fluewright::checking
