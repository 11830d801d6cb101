#pragma once

#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/upkeep/trade.hpp"
#include "io/json/json_text.hpp"

/// The JSON of joints, heat, upkeep and parts. Numbers are SI.
namespace fluewright::report {

/// Adds "joints", "hot_surfaces", "building" and "upkeep".
void add_trade_json(const TradeAdvice& advice, json::Value& whole);

[[nodiscard]] json::Value joints_json(const JointReport& joints);

} // namespace fluewright::report
