#pragma once

#include "fluewright/model/states/states.hpp"

#include <string>
#include <string_view>

/// What a state with an opened door or an open front comes to, in words.
namespace fluewright {

/// What a condition is called with this heater: an open front has no door that is open.
[[nodiscard]] std::string_view condition_word(const Case& resolved, StateKind kind);

/// The mean velocity of the air through an open front while smoke stays in, and what is wanted of
/// it in this state [m/s].
struct FrontVelocity {
    double has_m_s{};
    double wanted_m_s{};
};

[[nodiscard]] FrontVelocity front_velocity(const Case& resolved, const StateResult& state);

/// "the door may be opened 43 % of the way", "air enters the opening at 0.19 m/s of the 0.24 m/s
/// wanted"; of a state that is_door_open().
[[nodiscard]] std::string opening_words(const Case& resolved, const StateResult& state);

/// How far a door may be opened, or over how much of an open front the smoke stays in, in whole per
/// cent: to the nearest, but never up to `wanted`, the share that is required, where it is less.
[[nodiscard]] std::string opening_share_words(double share, double wanted, UnitSystem units);

/// The same against what is required of this installation's door or open front.
[[nodiscard]] std::string opening_share_words(const Case& resolved, double share);

} // namespace fluewright
