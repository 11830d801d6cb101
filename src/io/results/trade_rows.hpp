#pragma once

#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/advice/upkeep/trade.hpp"
#include "record.hpp"

/// What the trade has to say: joints, heat, upkeep.
namespace fluewright::results {

template <>
const Record<fluewright::Joint>& record_of<fluewright::Joint>();
template <>
const Record<HotSurfaces>& record_of<HotSurfaces>();
template <>
const Record<HeatDemand>& record_of<HeatDemand>();
template <>
const Record<Maintenance>& record_of<Maintenance>();

} // namespace fluewright::results
