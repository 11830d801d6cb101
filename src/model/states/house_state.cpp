#include "house_state.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace fluewright {
namespace {

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
    const bool by_duct = resolved.house.outdoor_air && !is_door_open(state.kind);
    const double fire = by_duct ? 0.0 : std::max(0.0, state.gas_flow_kg_s - state.burn_rate_kg_s);
    return fire + state.flow.leak_from_room_kg_s;
}

StateResult
solve_with_house(const FlueModel& model, StateKind kind, Detail detail, SolveInRoom solve_in_room) {
    constexpr double tolerance_pa = 1e-4;
    constexpr int most_repeats = 4;
    const Case& c = model.resolved();
    const HouseAir& house = model.surroundings().house;
    StateResult last;
    const auto pressure_for = [&](double room_pa) {
        last = solve_in_room(FlueModel(model, room_pa), kind, detail);
        return house.room_pressure_pa(room_air_kg_s(c, last));
    };
    // The flow hardly feels the room, so that a repeat leaves a hundredth of what the one before
    // missed; a hood or a gate may make it feel more.
    const Firing& usual = kind == StateKind::low_fire ? c.appliance.low : c.appliance.high;
    double room_pa = house.room_pressure_pa(
        c.house.outdoor_air ? 0.0 : usual.gas_flow_kg_s - usual.burn_rate_kg_s);
    double missed_pa = std::numeric_limits<double>::infinity();
    for (int repeat = 0; repeat < most_repeats; ++repeat) {
        const double answer_pa = pressure_for(room_pa);
        const double miss_pa = std::abs(answer_pa - room_pa);
        if (miss_pa <= tolerance_pa) {
            return last;
        }
        if (miss_pa > 0.5 * missed_pa) {
            break;
        }
        missed_pa = miss_pa;
        room_pa = answer_pa;
    }
    // A fire that cannot be vented has no room of its own that would be worth a search.
    if (last.status == Status::cannot_vent) {
        return last;
    }
    const double balanced_pa = balance_below(house.room_pressure_pa(0.0), pressure_for);
    return solve_in_room(FlueModel(model, balanced_pa), kind, detail);
}

void tell_house(const FlueModel& model, StateResult& state) {
    const HouseAir& house = model.surroundings().house;
    state.room.idle_pressure_pa =
        model.surroundings().room_pressure_pa; // as surroundings_of() has it
    state.room.neutral_height_m = house.neutral_height_m(state.room.pressure_pa);
    state.room.pressure_without_fans_pa =
        house.has_fans() ? house.room_pressure_pa(state.room.taken_kg_s, Fans::off)
                         : state.room.pressure_pa;
}

} // namespace fluewright
