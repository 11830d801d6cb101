#pragma once

#include "fluewright/model/states/states.hpp"

#include <span>
#include <string>
#include <string_view>

/// What is said of a state that has no figures.
namespace fluewright {

/// Whether the figures of a state may be told.
[[nodiscard]] constexpr bool has_figures(const StateResult& state) {
    return state.status == Status::solved;
}

/// Whether the solver gave one of them up, which is a fault of the program.
[[nodiscard]] bool gave_up(std::span<const StateResult> states);

/// What stands in place of the figures: "the run cannot vent this burn rate". Empty for a solved
/// state.
[[nodiscard]] std::string_view in_place_of_figures(const StateResult& state);

/// The same of a fire that cannot be vented, as a sentence with the burn rate and the most there
/// is. `states` are those of one solution, among which the air control open tells it.
[[nodiscard]] std::string cannot_vent_words(const Case& resolved,
                                            std::span<const StateResult> states,
                                            const StateResult& state);

} // namespace fluewright
