#pragma once

#include "fluewright/model/run/run.hpp"

#include <optional>

/// Which turns lead from one straight into the next.
namespace fluewright {

/// The turns that may lead from one direction into another. Which way a level pipe points is not
/// in the file, so there is a range, but for an upright one a single angle.
struct TurnRange {
    double least_rad{};
    double most_rad{};
};

/// Turns between straights that climb at these angles over level [rad], from -90 to 90 degrees.
/// On the sphere of directions: cos t = sin a sin b + cos a cos b cos(d), d any difference of
/// bearing, so that t lies between |a - b| and 180 degrees - |a + b|.
[[nodiscard]] TurnRange turns_between(double climb_rad, double next_climb_rad);

/// Angle over level at which a straight of this rise and level distance climbs [rad].
[[nodiscard]] double climb_of(double rise_m, double plan_m);

/// How far a turn may differ from what the straights beside it need: joints and adjustable elbows
/// give way so much, and level pipe that rises a little is not written into the elbow. Judgement.
inline constexpr double turn_slack_rad = 0.2618; // 15 degrees

/// The angle an elbow has where the file does not say: what the straights beside it need if that is
/// one angle, else a right angle; within the slack of a right angle it is one.
[[nodiscard]] double usual_turn_rad(const std::optional<TurnRange>& needed);

} // namespace fluewright
