#pragma once

#include "fluewright/model/march/surroundings.hpp"

#include <string>
#include <tuple>

/// The circumstances in which something is seen.   [theory eq. 67]
namespace fluewright::diagnosis {

enum class Doing : std::uint8_t {
    high_fire,
    low_fire,
    free_burn,
    door_open_high,
    door_open_embers,
    lighting,
    idle,
};

struct Situation {
    Doing doing{};
    std::size_t weather{};
    bool window_open{};
    bool fan_off{}; ///< otherwise a fan may be running unnoticed
    bool windy{};

    bool operator<(const Situation& other) const {
        return std::tie(doing, weather, window_open, fan_off, windy) < std::tie(
                   other.doing, other.weather, other.window_open, other.fan_off, other.windy);
    }
};

/// What causes do to the air in the room and at the chimney top [Pa], each as suction or pressure.
struct AirEffects {
    double fan_pa{};
    double house_at_20_k_pa{}; ///< at a difference of 20 K to the outdoors
    double starved_pa{};       ///< at the flow of a high fire
    double wind_pa{};
};

/// The air round the flue in a situation.
[[nodiscard]] Surroundings
surroundings_in(const Case& resolved, const AirEffects& effects, const Situation& situation);

/// The way of firing that a word of the file names; high fire for none.
[[nodiscard]] Doing doing_of(StateKind state);

/// How it burns when its door, or the front of a fireplace, is watched and nothing else is said.
[[nodiscard]] Doing usual_door_doing(const Case& resolved);

/// "high fire, frost, window open"
[[nodiscard]] std::string words(const Situation& situation, const Case& resolved);

} // namespace fluewright::diagnosis
