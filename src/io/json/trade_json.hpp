#pragma once

#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/upkeep/trade.hpp"

#include <nlohmann/json.hpp>

/// The JSON of rules, joints, heat, upkeep and parts. Numbers are SI.
namespace fluewright::report {

/// Adds "rules", "joints", "hot_surfaces", "building" and "upkeep".
void add_trade_json(const TradeAdvice& advice, nlohmann::ordered_json& whole);

[[nodiscard]] nlohmann::ordered_json joints_json(const JointReport& joints);

} // namespace fluewright::report
