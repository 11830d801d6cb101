#include "wall_balance.hpp"

#include "fluewright/physics/convection.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

/// A last step of this size leaves an error in the order of 1e-3 K, and of 1e-5 of the flux.
constexpr double last_step_k = 0.8;
constexpr int most_steps = 60;

/// Over so many kelvins of the wall and of the gas the absorptivity is carried on by its slopes,
/// and over no more than this share of what the gas is hotter than the air: error in it below 2e-3,
/// and less where emission and absorption nearly cancel.
constexpr double wall_reach_k = 25.0;
constexpr double gas_reach_k = 60.0;
constexpr double wall_reach_share = 0.15;
constexpr double gas_reach_share = 0.3;

/// Powers of the gas temperature with which the coefficients and the gas's glow change beside what
/// the balance itself shows; about, for sensitivities only.
constexpr double forced_power = 0.2;
constexpr double natural_cubed_power = -2.2;
constexpr double opposed_gas_power = -2.6;
constexpr double glow_power = 3.3;

} // namespace

EmissionFit::Absorbed WallBalance::absorbed_at(double wall_k) {
    const double hotter_k = std::abs(gas_k - outside->ambient_k());
    if (std::abs(wall_k - known.wall_k) > std::min(wall_reach_k, wall_reach_share * hotter_k)
        || std::abs(gas_k - known.gas_k) > std::min(gas_reach_k, gas_reach_share * hotter_k)) {
        known = {emission->absorbed(gas_k, wall_k, log_path), gas_k, wall_k};
        return known.absorbed;
    }
    EmissionFit::Absorbed here = known.absorbed;
    const double change = here.log_slope_per_k * (wall_k - known.wall_k)
                          + here.log_slope_per_gas_k * (gas_k - known.gas_k);
    here.absorptivity *= 1.0 + change * (1.0 + 0.5 * change);
    return here;
}

WallBalance::Carried WallBalance::opposed_at(double difference_k) const {
    const double buoyancy = opposed_per_k * std::abs(difference_k);
    const double carried = forced_w_m2k * convection::opposed_factor(buoyancy);
    return {.w_m2k = carried,
            .growth_w_m2k = carried * convection::opposed_power * buoyancy / (1.0 + buoyancy)};
}

WallBalance::Answer WallBalance::solve(double guess_k) {
    const double gas_2 = gas_k * gas_k;
    const double gas_glow =
        radiating_w_m2k4 * emission->emissivity(gas_k, log_path) * gas_2 * gas_2;
    const double around_k = outside->ambient_k() + warmer_k;
    double low = std::min(gas_k, around_k);
    double high = std::max(gas_k, around_k);
    if (kept_w_m2k > 0.0) {
        low = std::min(low, before_k);
        high = std::max(high, before_k);
    }
    double wall_k = std::clamp(guess_k, low, high);
    WallHeat::Value out{};
    double step_k = 0.0;
    double difference_k = 0.0;
    Carried carried{};
    double slope = 0.0;
    for (int i = 0; i < most_steps; ++i) {
        difference_k = gas_k - wall_k;
        carried = carried_at(difference_k);
        const EmissionFit::Absorbed absorbed = absorbed_at(wall_k);
        const double wall_2 = wall_k * wall_k;
        const double wall_glow = radiating_w_m2k4 * absorbed.absorptivity * wall_2 * wall_2;
        out = warmer_k > 0.0 ? outside->at(wall_k, warmer_k) : outside->at(wall_k);
        if (kept_w_m2k > 0.0) {
            out.flux_w_m2 += kept_w_m2k * (wall_k - before_k);
            out.slope_w_m2k += kept_w_m2k;
        }
        const double miss = carried.w_m2k * difference_k + gas_glow - wall_glow - out.flux_w_m2;
        slope = carried.w_m2k + carried.growth_w_m2k
                + wall_glow * (4.0 / wall_k + absorbed.log_slope_per_k) + out.slope_w_m2k;
        (miss > 0.0 ? low : high) = wall_k;
        double next_k = wall_k + miss / slope;
        if (!(next_k >= low && next_k <= high)) {
            next_k = 0.5 * (low + high);
        }
        step_k = next_k - wall_k;
        wall_k = next_k;
        if (std::abs(step_k) < last_step_k) {
            break;
        }
    }
    const double relative = difference_k / gas_k;
    const bool opposed = opposed_per_k > 0.0;
    // What the forced coefficient has in the whole; of the cubes the rest is three times the
    // growth.
    const double forced = opposed ? carried.w_m2k : carried.w_m2k - 3.0 * carried.growth_w_m2k;
    const double gas_power = opposed ? opposed_gas_power : natural_cubed_power;
    const double wall_per_gas =
        (carried.w_m2k + glow_power * gas_glow / gas_k
         + carried.growth_w_m2k * (1.0 + gas_power * relative) + forced * forced_power * relative)
        / slope;
    return {.inner_k = wall_k,
            .flux_w_m2 = out.flux_w_m2 + out.slope_w_m2k * step_k,
            .flux_slope_w_m2k = out.slope_w_m2k,
            .wall_per_gas = wall_per_gas,
            .wall_per_forced_k = forced * difference_k / slope};
}

} // namespace fluewright
