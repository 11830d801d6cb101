#include "fluewright/advice/unsolved.hpp"

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/states/vent_limit.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// Whether it is pressure that holds the burn rate down, or else speed.
bool presses_out(const StateResult& state) {
    constexpr double near = 0.95;
    return state.draft_pa <= -near * vent_limit::overpressure_pa;
}

} // namespace

bool gave_up(std::span<const StateResult> states) {
    return std::any_of(states.begin(), states.end(), [](const StateResult& state) {
        return state.status == Status::no_answer;
    });
}

std::string_view in_place_of_figures(const StateResult& state) {
    switch (state.status) {
    case Status::no_flow:
        return "no flow up the flue comes into balance";
    case Status::cannot_vent:
        return "the run cannot vent this burn rate";
    case Status::no_answer:
        return "the solver found no answer";
    case Status::solved:
        break;
    }
    return {};
}

std::string cannot_vent_words(const Case& resolved,
                              std::span<const StateResult> states,
                              const StateResult& state) {
    const UnitSystem units = resolved.units;
    const double asked_kg_s =
        state.kind == StateKind::low_fire     ? resolved.appliance.low.burn_rate_kg_s
        : state.kind == StateKind::cold_start ? resolved.kindling.burn_rate_kg_s
                                              : resolved.appliance.high.burn_rate_kg_s;
    std::string words =
        "The run cannot vent " + format_quantity(asked_kg_s, Kind::mass_rate, units) + ": "
        + (presses_out(state)
               ? "the gas would press into the room with more than "
                     + format_quantity(vent_limit::overpressure_pa, Kind::pressure, units)
               : "the gas would be faster than "
                     + format_quantity(vent_limit::mach, Kind::fraction, units) + " of sound")
        + ".";
    const auto free = std::find_if(states.begin(), states.end(), [&](const StateResult& other) {
        return other.kind == StateKind::free_burn && other.weather == state.weather;
    });
    if (free == states.end() || free->status == Status::no_answer) {
        return words;
    }
    return words
           + (free->capacity_kg_s > 0.0
                  ? " Most is " + format_quantity(free->capacity_kg_s, Kind::mass_rate, units)
                        + ", at the draft that a high fire requires."
                  : " No burn rate has the draft that a high fire requires.");
}

} // namespace fluewright
