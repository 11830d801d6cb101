#include "fluewright/model/warmup/burn_plan.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <algorithm>

namespace fluewright {
namespace {

double value_of(DefaultId id) {
    return catalog::default_of(id).value;
}

bool is_burner(const ApplianceCase& a) {
    return !is_fed_by_hand(a);
}

/// The straight line through (0, at_none), (low, at_low), (high, at_high).
double over_burn_rate(
    const ApplianceCase& a, double burn_rate_kg_s, double at_none, double at_low, double at_high) {
    const double low = a.low.burn_rate_kg_s;
    const double high = a.high.burn_rate_kg_s;
    if (burn_rate_kg_s >= high || low >= high) {
        const double share = std::min(burn_rate_kg_s / high, 1.0);
        return at_none + (at_high - at_none) * share;
    }
    if (burn_rate_kg_s >= low) {
        return at_low + (at_high - at_low) * (burn_rate_kg_s - low) / (high - low);
    }
    return at_none + (at_low - at_none) * burn_rate_kg_s / low;
}

} // namespace

BurnPlan::BurnPlan(const Case& resolved, double total_s, double room_k)
    : case_(&resolved), room_k_(room_k) {
    assume("how fast the outlet's gas follows the fire: the appliance's own warmth",
           Kind::duration,
           DefaultId::appliance_time_s);
    appliance_time_s_ = value_of(DefaultId::appliance_time_s);
    phases_ = resolved.burn;
    if (phases_.empty()) {
        add_default_phases();
    }
    if (!phases_.empty() && !phases_.front().out && !is_burner(resolved.appliance)
        && resolved.appliance.has_door) {
        phases_.front().door_ajar = true;
    }
    double planned_s = 0.0;
    std::size_t kept = 0;
    for (BurnPhase& phase : phases_) {
        if (total_s > 0.0 && planned_s >= total_s) {
            break;
        }
        if (total_s > 0.0 && planned_s + phase.duration_s > total_s) {
            const double share = (total_s - planned_s) / phase.duration_s;
            phase.end_kg_s = phase.start_kg_s + share * (phase.end_kg_s - phase.start_kg_s);
            phase.duration_s = total_s - planned_s;
        }
        planned_s += phase.duration_s;
        ++kept;
    }
    phases_.resize(kept);
    double after_s = total_s - planned_s;
    const bool ends_out = !phases_.empty() && phases_.back().out;
    if (total_s == 0.0 && !ends_out) {
        assume("time looked at after the fire is out", Kind::duration, DefaultId::after_fire_s);
        after_s = value_of(DefaultId::after_fire_s);
    }
    if (after_s > 0.0) {
        phases_.push_back({.name = "fire out", .duration_s = after_s, .out = true});
    }
}

void BurnPlan::assume(std::string_view what, Kind kind, DefaultId default_id) {
    const catalog::Default& row = catalog::default_of(default_id);
    assumptions_.push_back({.pointer = "/burn",
                            .what = std::string{what},
                            .kind = kind,
                            .value = row.value,
                            .word = {},
                            .source = row.source,
                            .mark = row.mark});
}

void BurnPlan::add_default_phases() {
    const double high = case_->appliance.high.burn_rate_kg_s;
    if (is_burner(case_->appliance)) {
        assume("time at high fire", Kind::duration, DefaultId::high_fire_s);
        phases_.push_back({.name = "high fire",
                           .duration_s = value_of(DefaultId::high_fire_s),
                           .start_kg_s = high,
                           .end_kg_s = high});
        return;
    }
    assume("time of lighting", Kind::duration, DefaultId::lighting_s);
    assume("burn rate of kindling, of that at high fire",
           Kind::fraction,
           DefaultId::kindling_burn_share);
    assume("time at high fire", Kind::duration, DefaultId::high_fire_s);
    assume("time of burn-down to embers", Kind::duration, DefaultId::burn_down_s);
    assume("burn rate over embers, of that at high fire",
           Kind::fraction,
           DefaultId::embers_burn_share);
    const double kindling = value_of(DefaultId::kindling_burn_share) * high;
    phases_ = {{.name = "lighting",
                .duration_s = value_of(DefaultId::lighting_s),
                .start_kg_s = kindling,
                .end_kg_s = kindling},
               {.name = "high fire",
                .duration_s = value_of(DefaultId::high_fire_s),
                .start_kg_s = high,
                .end_kg_s = high},
               {.name = "burn-down",
                .duration_s = value_of(DefaultId::burn_down_s),
                .start_kg_s = high,
                .end_kg_s = value_of(DefaultId::embers_burn_share) * high}};
}

double BurnPlan::lighting_k() const {
    const bool lit_by_hand = !phases_.empty() && phases_.front().door_ajar;
    return lit_by_hand ? case_->kindling.gas_temperature_k : room_k_;
}

double BurnPlan::appliance_time_s(bool out, double flow_kg_s) const {
    const ApplianceCase& a = case_->appliance;
    if (!out || a.type != ApplianceType::masonry_heater || flow_kg_s <= 0.0) {
        return appliance_time_s_;
    }
    constexpr double air_j_kgk = 1006.0; // dry air at room temperature, from memory
    return std::max(appliance_time_s_, a.lining.heat_j_k / (flow_kg_s * air_j_kgk));
}

FireDemand BurnPlan::at(std::size_t index, double into_s) const {
    const BurnPhase& phase = phases_[index];
    const ApplianceCase& a = case_->appliance;
    FireDemand demand;
    demand.phase = index;
    demand.out = phase.out;
    demand.aim_k = room_k_;
    demand.door_ajar = phase.door_ajar;
    if (phase.out) {
        demand.air_share = 1.0;
        return demand;
    }
    const double share = phase.duration_s > 0.0 ? into_s / phase.duration_s : 0.0;
    const double rate = phase.start_kg_s + share * (phase.end_kg_s - phase.start_kg_s);
    demand.burn_rate_kg_s = rate;
    demand.gas_flow_kg_s = over_burn_rate(a, rate, 0.0, a.low.gas_flow_kg_s, a.high.gas_flow_kg_s)
                           * std::max(rate / a.high.burn_rate_kg_s, 1.0);
    const double gas_per_fuel = over_burn_rate(a,
                                               std::max(rate, a.low.burn_rate_kg_s),
                                               a.high.gas_per_fuel_kg_kg,
                                               a.low.gas_per_fuel_kg_kg,
                                               a.high.gas_per_fuel_kg_kg);
    demand.air_share = std::max(1.0 - a.high.gas_per_fuel_kg_kg / gas_per_fuel, 0.0);
    demand.aim_k = aim_k(rate);
    return demand;
}

double BurnPlan::aim_k(double burn_rate_kg_s) const {
    const ApplianceCase& a = case_->appliance;
    return over_burn_rate(a,
                          burn_rate_kg_s,
                          room_k_,
                          case_->gas_temperature_k(a.low, room_k_),
                          case_->gas_temperature_k(a.high, room_k_));
}

} // namespace fluewright
