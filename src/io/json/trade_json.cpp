#include "trade_json.hpp"

#include "json_number.hpp"

namespace fluewright::report {
namespace {

using Json = json::Value;

Json part_number(int part) {
    return part < 0 ? Json(nullptr) : Json(part + 1);
}

Json end_json(const EndFacts& facts) {
    return {{"end", name(facts.end)},
            {"assumed", facts.assumed},
            {"diameter_m", json_number(facts.diameter_m)},
            {"rectangular", facts.rectangular}};
}

Json surfaces_json(const HotSurfaces& surfaces) {
    Json parts = Json::array();
    for (const HotSurface& hot : surfaces.parts) {
        parts.push_back({{"part", part_number(hot.part)},
                         {"place", hot.place},
                         {"surface_k", json_number(hot.surface_k)},
                         {"rating_k", json_number(hot.rating_k)},
                         {"rating_of", hot.rating_of},
                         {"rating_assumed", hot.rating_assumed},
                         {"over_rating", hot.over_rating()},
                         {"distance_to_wall_m", json_number(hot.distance_m)},
                         {"wall_k", json_number(hot.wall_k)},
                         {"bare_wall_k", json_number(hot.bare_wall_k)},
                         {"shielded", hot.shielded}});
    }
    return {{"wall_limit_k", json_number(surfaces.wall_limit_k)}, {"parts", std::move(parts)}};
}

Json demand_json(const HeatDemand& d) {
    if (!d.missing.empty()) {
        return {{"missing", d.missing}};
    }
    Json parts = Json::array();
    for (const HeatLoss& loss : d.parts) {
        parts.push_back({{"name", loss.name},
                         {"area_m2", json_number(loss.area_m2)},
                         {"u_value_w_m2k", json_number(loss.u_value_w_m2k)},
                         {"loss_w", json_number(loss.loss_w)},
                         {"source", loss.source}});
    }
    return {{"missing", Json::array()},
            {"indoor_temperature_k", json_number(d.indoor_k)},
            {"outdoor_temperature_k", json_number(d.outdoor_k)},
            {"parts", std::move(parts)},
            {"ventilation_w", json_number(d.ventilation_w)},
            {"total_w", json_number(d.total_w)},
            {"with_reserve_w", json_number(d.with_reserve_w)},
            {"heater_output_w", json_number(d.heater_output_w)},
            {"burn_rate_kg_s", json_number(d.burn_rate_kg_s)},
            {"capacity_kg_s", json_number(d.capacity_kg_s)},
            {"load_kg", json_number(d.load_kg)},
            {"load_burn_rate_kg_s", json_number(d.load_rate_kg_s)},
            {"load_hours", json_number(d.load_hours)},
            {"heater_carries", d.heater_carries},
            {"flue_carries", d.flue_carries},
            {"throttled", d.throttled},
            {"assumed", d.assumed},
            {"left_out", d.left_out}};
}

Json upkeep_json(const Maintenance& m) {
    if (!m.applies) {
        return nullptr;
    }
    Json parts = Json::array();
    for (const PartDeposit& part : m.parts) {
        parts.push_back({{"part", part_number(part.part)},
                         {"place", part.place},
                         {"risk", name(part.risk)},
                         {"reason", part.reason},
                         {"inner_wall_low_fire_k", json_number(part.coldest_low_fire_k)},
                         {"inner_wall_high_fire_k", json_number(part.coldest_high_fire_k)}});
    }
    return {{"deposit_risk", name(m.risk)},
            {"parts", std::move(parts)},
            {"look_first", m.look_first},
            {"sweep_months_from", json_number(m.sweep.from_months)},
            {"sweep_months_to", json_number(m.sweep.to_months)},
            {"sweep", m.sweep.words},
            {"sweep_source", m.sweep.source},
            {"sweep_at_deposit_m", json_number(m.clean_at_m)},
            {"no_fire_at_deposit_m", json_number(m.no_fire_at_m)},
            {"deposit_source", m.thickness_source},
            {"disagreement", m.disagreement}};
}

} // namespace

Json joints_json(const JointReport& joints) {
    constexpr std::array<std::string_view, 3> matings{"good", "points up", "never"};
    Json list = Json::array();
    for (const fluewright::Joint& joint : joints.joints) {
        list.push_back(
            {{"place", joint.place},
             {"below", part_number(joint.below)},
             {"above", part_number(joint.above)},
             {"lower_end", end_json(joint.lower)},
             {"upper_end", end_json(joint.upper)},
             {"mating", matings[static_cast<std::size_t>(joint.fit.mating)]},
             {"same_size", joint.fit.bore == Bore::same},
             {"turn_round", joint.turn_round.empty() ? Json(nullptr) : Json(joint.turn_round)},
             {"adapter",
              joint.turned.adapter.empty() ? Json(nullptr) : Json(joint.turned.adapter)}});
    }
    return list;
}

void add_trade_json(const TradeAdvice& advice, Json& whole) {
    whole["joints"] = joints_json(advice.joints);
    whole["hot_surfaces"] = surfaces_json(advice.surfaces);
    whole["building"] = advice.demand ? demand_json(*advice.demand) : Json(nullptr);
    whole["upkeep"] = upkeep_json(advice.upkeep);
}

} // namespace fluewright::report
