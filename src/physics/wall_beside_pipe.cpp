#include "fluewright/physics/wall_beside_pipe.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/physics/air.hpp"
#include "fluewright/physics/convection.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::wall_beside_pipe {
namespace {

double emitted_w_m2(double temperature_k) {
    return constants::stefan_boltzmann_w_m2k4 * std::pow(temperature_k, 4);
}

double convected_w_m2(double face_k, const Room& room) {
    const double rise_k = face_k - room.temperature_k;
    if (rise_k <= 0.0) {
        return 0.0;
    }
    const double film_k = 0.5 * (face_k + room.temperature_k);
    // Nu grows as Ra^(1/3), so the length drops out.
    const double ra = air::rayleigh(face_k, room.temperature_k, 1.0, room.air_pressure_pa);
    const double h =
        air::conductivity_w_mk(film_k) * convection::tall_wall_factor(air::prandtl) * std::cbrt(ra);
    return h * rise_k;
}

/// Temperature between room and pipe at which `balance` (falling) is nought.
template <class Balance>
double balanced_k(const Balance& balance, double room_k, double hottest_k) {
    constexpr RootGoal goal{.x_tolerance = 1e-9, .residual_tolerance = 1e-9};
    if (hottest_k <= room_k) {
        return room_k;
    }
    return find_root(balance, room_k, hottest_k, goal).x;
}

} // namespace

double view_factor(double outside_diameter_m, double distance_m) {
    const double radius_m = 0.5 * outside_diameter_m;
    return radius_m / (radius_m + std::max(0.0, distance_m));
}

double bare_wall_k(const HotPipe& pipe, const Room& room) {
    const double seen = view_factor(pipe.outside_diameter_m, pipe.distance_m);
    const auto balance = [&](double wall_k) {
        return seen * pipe.emissivity * wall_emissivity
                   * (emitted_w_m2(pipe.surface_k) - emitted_w_m2(wall_k))
               - (1.0 - seen) * wall_emissivity
                     * (emitted_w_m2(wall_k) - emitted_w_m2(room.temperature_k))
               - convected_w_m2(wall_k, room);
    };
    return balanced_k(balance, room.temperature_k, pipe.surface_k);
}

Shielded shielded_wall_k(const HotPipe& pipe, const Shield& shield, const Room& room) {
    const double seen = view_factor(pipe.outside_diameter_m, pipe.distance_m - shield.gap_m);
    const double exchange = 1.0 / (1.0 / shield.emissivity + 1.0 / wall_emissivity - 1.0);
    const auto wall_at = [&](double shield_k) {
        return balanced_k(
            [&](double wall_k) {
                return exchange * (emitted_w_m2(shield_k) - emitted_w_m2(wall_k))
                       - convected_w_m2(wall_k, room);
            },
            room.temperature_k,
            shield_k);
    };
    const auto balance = [&](double shield_k) {
        const double to_wall =
            exchange * (emitted_w_m2(shield_k) - emitted_w_m2(wall_at(shield_k)));
        return seen * pipe.emissivity * shield.emissivity
                   * (emitted_w_m2(pipe.surface_k) - emitted_w_m2(shield_k))
               - (1.0 - seen) * shield.emissivity
                     * (emitted_w_m2(shield_k) - emitted_w_m2(room.temperature_k))
               - 2.0 * convected_w_m2(shield_k, room) - to_wall;
    };
    const double shield_k = balanced_k(balance, room.temperature_k, pipe.surface_k);
    return {shield_k, wall_at(shield_k)};
}

} // namespace fluewright::wall_beside_pipe
