#include "house_state.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace fluewright {
namespace {

bool has_door_open(StateKind kind) {
    return kind == StateKind::door_open_high || kind == StateKind::door_open_embers;
}

/// The room pressure that gives itself.
///
/// The lower the room, the less the flue draws, and the less it draws, the higher the room:
/// pressure_for() falls where room_pa rises. Between the idle room and the one that gives an idle
/// room's flow lies the one answer, near the latter end, since the flow hardly feels the room:
/// regula falsi, which begins there, with the Illinois halving of an end that stays.
template <class PressureFor>
double balance_below(double idle_pa, const PressureFor& pressure_for) {
    constexpr double tolerance_pa = 1e-4;
    constexpr int most_steps = 60;
    double high = idle_pa;
    double low = pressure_for(idle_pa);
    double f_high = low - high;
    double f_low = pressure_for(low) - low;
    int stayed = 0;
    for (int step = 0; step < most_steps; ++step) {
        if (std::abs(f_low) <= tolerance_pa || high - low <= tolerance_pa) {
            return low;
        }
        const double next = low + (high - low) * f_low / (f_low - f_high);
        const double f_next = pressure_for(next) - next;
        if (std::abs(f_next) <= tolerance_pa) {
            return next;
        }
        if (f_next > 0.0) {
            low = next;
            f_low = f_next;
            f_high *= stayed > 0 ? 0.5 : 1.0;
            stayed = 1;
        } else {
            high = next;
            f_high = f_next;
            f_low *= stayed < 0 ? 0.5 : 1.0;
            stayed = -1;
        }
    }
    return low;
}

} // namespace

double room_air_kg_s(const Case& resolved, const StateResult& state) {
    if (fire_of(state.kind) == Fire::out) {
        return 0.0;
    }
    const bool by_duct = resolved.house.outdoor_air && !has_door_open(state.kind);
    const double fire = by_duct ? 0.0 : std::max(0.0, state.gas_flow_kg_s - state.burn_rate_kg_s);
    return fire + state.flow.leak_from_room_kg_s;
}

StateResult
solve_with_house(const FlueModel& model, StateKind kind, Detail detail, SolveInRoom solve_in_room) {
    const Case& c = model.resolved();
    const HouseAir& house = model.surroundings().house;
    const auto at = [&](double room_pa, Detail wanted) {
        Surroundings around = model.surroundings();
        around.room_pressure_pa = room_pa;
        return solve_in_room(FlueModel(model, around), kind, wanted);
    };
    const double idle_pa = house.room_pressure_pa(0.0);
    StateResult last;
    double last_pa = std::numeric_limits<double>::quiet_NaN();
    const auto pressure_for = [&](double room_pa) {
        last = at(room_pa, Detail::totals);
        last_pa = room_pa;
        return house.room_pressure_pa(room_air_kg_s(c, last));
    };
    const bool takes_air = fire_of(kind) == Fire::burning;
    const double room_pa = takes_air ? balance_below(idle_pa, pressure_for) : idle_pa;
    const bool is_solved = detail == Detail::totals && last_pa == room_pa;
    StateResult state = is_solved ? std::move(last) : at(room_pa, detail);
    state.room.idle_pressure_pa = idle_pa;
    state.room.neutral_height_m = house.neutral_height_m(state.room.pressure_pa);
    state.room.pressure_without_fans_pa =
        house.room_pressure_pa(room_air_kg_s(c, state), Fans::off);
    return state;
}

} // namespace fluewright
