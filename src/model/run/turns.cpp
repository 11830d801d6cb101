#include "turns.hpp"

#include "fluewright/core/constants.hpp"

#include <cmath>

namespace fluewright {

TurnRange turns_between(double climb_rad, double next_climb_rad) {
    return {.least_rad = std::abs(climb_rad - next_climb_rad),
            .most_rad = constants::pi - std::abs(climb_rad + next_climb_rad)};
}

double climb_of(double rise_m, double plan_m) {
    return std::atan2(rise_m, plan_m);
}

double usual_turn_rad(const std::optional<TurnRange>& needed) {
    constexpr double right_angle_rad = constants::pi / 2.0;
    constexpr double one_angle_rad = 1e-6;
    if (!needed || needed->most_rad - needed->least_rad > one_angle_rad
        || std::abs(needed->least_rad - right_angle_rad) < turn_slack_rad) {
        return right_angle_rad;
    }
    return needed->least_rad;
}

} // namespace fluewright
