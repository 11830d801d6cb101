#pragma once

#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/upkeep/trade.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>
#include <vector>

/// The sections of the report about joints, heat and upkeep.
namespace fluewright::report {

[[nodiscard]] std::string joints_text(const JointReport& joints, const Style& style);
[[nodiscard]] std::string
surfaces_text(const HotSurfaces& surfaces, const Style& style, bool details);
[[nodiscard]] std::string demand_text(const HeatDemand& demand, const Style& style);
[[nodiscard]] std::string upkeep_text(const Maintenance& upkeep, const Style& style, bool details);

/// All of them, in this order.
[[nodiscard]] std::string trade_text(const TradeAdvice& advice, const Style& style, bool details);

/// Keys of the file in words, parts gathered: "`clearance` of parts 1 and 3, `site.roof.pitch`".
[[nodiscard]] std::string keys_in_words(const std::vector<std::string>& pointers);

} // namespace fluewright::report
