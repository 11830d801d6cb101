#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/checks/rules.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/advice/upkeep/heat_demand.hpp"
#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/advice/upkeep/maintenance.hpp"

#include <optional>
#include <string_view>

namespace fluewright {

/// What the trade has to say about a run, beside its draft.
struct TradeAdvice {
    RuleReport rules;
    JointReport joints;
    HotSurfaces surfaces;
    std::optional<HeatDemand> demand; ///< where the file has a building
    Maintenance upkeep;
};

/// `body` is an id of catalog::rule_bodies(); empty: what the file asks for.
[[nodiscard]] TradeAdvice
trade_advice(const Installation& written, const Assessment& assessment, std::string_view body);

} // namespace fluewright
