#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/advice/upkeep/heat_demand.hpp"
#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/advice/upkeep/maintenance.hpp"

#include <optional>

namespace fluewright {

/// What the trade has to say about a run, beside its draft.
struct TradeAdvice {
    JointReport joints;
    HotSurfaces surfaces;
    std::optional<HeatDemand> demand; ///< where the file has a building
    Maintenance upkeep;
};

[[nodiscard]] TradeAdvice trade_advice(const Installation& written, const Assessment& assessment);

} // namespace fluewright
