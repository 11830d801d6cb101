#pragma once

#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/upkeep/trade.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// The sections of the report about joints, heat and upkeep.
namespace fluewright::report {

[[nodiscard]] std::string joints_text(const JointReport& joints, const Style& style);
[[nodiscard]] std::string surfaces_text(const HotSurfaces& surfaces, const Style& style);
[[nodiscard]] std::string demand_text(const HeatDemand& demand, const Style& style);
[[nodiscard]] std::string upkeep_text(const Maintenance& upkeep, const Style& style);

/// What to bring, to cut and to put together, from its dangers to what was taken.
[[nodiscard]] std::string parts_sections(const PartsList& list, const Style& style);

/// All of them, in this order.
[[nodiscard]] std::string trade_text(const TradeAdvice& advice, const Style& style);

} // namespace fluewright::report
