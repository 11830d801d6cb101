#include "fluewright/model/warmup/tended.hpp"

#include "fluewright/core/numeric/root.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fluewright {
namespace {

constexpr double least_tended_flow_share = 0.15;
constexpr double middle_flow_share = 0.4;
constexpr double share_tolerance = 2e-3;
constexpr double near_enough_pa = 0.02;

/// Power of the flow with which the gas gets hotter, from the two fires of the case; no more than
/// that of a fire which wants for air, as against one that is held low with air to spare.
double temperature_exponent(const Case& c) {
    constexpr double usual = 0.5;
    constexpr double greatest = 0.6;
    const Firing& high = c.appliance.high;
    const Firing& low = c.appliance.low;
    const double flows = std::log(high.gas_flow_kg_s / low.gas_flow_kg_s);
    const double rise_high = high.gas_temperature_k - c.room_temperature_k;
    const double rise_low = low.gas_temperature_k - c.room_temperature_k;
    if (flows < 0.05 || rise_high <= 1.0 || rise_low <= 1.0) {
        return usual;
    }
    return std::clamp(std::log(rise_high / rise_low) / flows, 0.0, greatest);
}

/// The greatest share of the full flow at which there is a surplus; 1 where there is one at the
/// full flow. A cold trickle may lack draft where a moderate flow has it: the middle is looked at
/// too.
template <class Surplus>
std::optional<double> balanced_share(const Surplus& surplus_pa) {
    const double full = surplus_pa(1.0);
    if (full >= 0.0) {
        return 1.0;
    }
    for (const double low : {middle_flow_share, least_tended_flow_share}) {
        const double at_low = surplus_pa(low);
        if (at_low >= 0.0) {
            return find_root(surplus_pa,
                             low,
                             1.0,
                             at_low,
                             full,
                             {.x_tolerance = share_tolerance, .residual_tolerance = near_enough_pa})
                .x;
        }
    }
    return std::nullopt;
}

} // namespace

double tended_temperature_k(const FlueModel& model, GasChoice fire, double flow_share) {
    const Case& c = model.resolved();
    const double room_k = model.surroundings().temperature_k[static_cast<std::size_t>(Zone::room)];
    const double whole_k =
        gas_temperature_k(model, fire == GasChoice::high_fire ? c.appliance.high : c.appliance.low);
    return room_k + (whole_k - room_k) * std::pow(flow_share, temperature_exponent(c));
}

StateResult solve_tended(const FlueModel& model, GasChoice fire, Detail detail) {
    const Case& c = model.resolved();
    const bool high = fire == GasChoice::high_fire;
    const Firing& firing = high ? c.appliance.high : c.appliance.low;
    StateResult state;
    state.kind = high ? StateKind::high_fire : StateKind::low_fire;
    GasStream stream{.gas = fire,
                     .air_share = 0.0,
                     .flow_kg_s = firing.gas_flow_kg_s,
                     .temperature_k = gas_temperature_k(model, firing)};
    const auto surplus_pa = [&](double share) {
        stream.flow_kg_s = share * firing.gas_flow_kg_s;
        stream.temperature_k = tended_temperature_k(model, fire, share);
        return model.draft_pa(model.solve(stream)) - firing.draft_needed_pa * share * share;
    };
    const std::optional<double> balance = balanced_share(surplus_pa);
    state.status = balance ? Status::solved : Status::no_flow;
    const double share = balance.value_or(least_tended_flow_share);
    stream.flow_kg_s = share * firing.gas_flow_kg_s;
    stream.temperature_k = tended_temperature_k(model, fire, share);
    if (detail == Detail::stations) {
        state.stations.resize(model.station_count());
    }
    state.flow = model.solve(stream, state.stations);
    state.burn_rate_kg_s = share * firing.burn_rate_kg_s;
    state.gas_flow_kg_s = stream.flow_kg_s;
    state.gas_temperature_k = stream.temperature_k;
    state.draft_pa = model.draft_pa(state.flow);
    state.draft_needed_pa = firing.draft_needed_pa * share * share;
    return state;
}

} // namespace fluewright
