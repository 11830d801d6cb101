#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/heat_demand.hpp"
#include "fluewright/advice/hot_surfaces.hpp"
#include "fluewright/advice/joints.hpp"
#include "fluewright/advice/maintenance.hpp"
#include "fluewright/advice/rules.hpp"

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
