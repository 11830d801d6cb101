#include "straight.hpp"

#include <algorithm>
#include <cmath>

/// Heat, buoyancy and friction along a straight whose wall still holds the heat of a fire before.
/// The wall may be hotter than gas and air, so that no logarithm serves; it pulls the gas of each
/// cell to a temperature of its own, by an exponential that holds for a trickle, too.
namespace fluewright {
namespace {

constexpr double longest_cell_m = 1.25;
constexpr double least_pull_w_m2k = 1e-6;

} // namespace

/// Between the ends of a straight the wall's excess over the air fell off geometrically.
void FlueModel::Straight::remember(const WallMemory& memory) {
    constexpr double least_excess_k = 0.1;
    if (memory.kept_w_m2k <= 0.0) {
        return;
    }
    memory_ = &memory;
    memory_start_ = std::log(std::max(memory.inner_start_k - ambient_k_, least_excess_k));
    memory_rise_ =
        std::log(std::max(memory.inner_end_k - ambient_k_, least_excess_k)) - memory_start_;
}

/// For the gas last set.
WallBalance::Answer FlueModel::Straight::balance_beside_memory(double xi) {
    const double along = (cube(xi) - prepared_.start_m) / section_.length_m;
    balance_.forced_w_m2k = entry_at(xi) * forced_w_m2k_;
    balance_.warmer_k = warmer_at(xi);
    balance_.kept_w_m2k = memory_->kept_w_m2k;
    balance_.before_k = ambient_k_ + std::exp(memory_start_ + memory_rise_ * along);
    // The wall has cooled as it had at the cell before.
    const WallBalance::Answer answer = balance_.solve(balance_.before_k + memory_lag_k_);
    memory_lag_k_ = answer.inner_k - balance_.before_k;
    return answer;
}

/// A point of a cell for the pressures alone.
FlueModel::Straight::Stage FlueModel::Straight::stage_along(double xi, double gas_k) const {
    Stage stage{};
    stage.xi = xi;
    stage.distance_m = cube(xi);
    stage.gas_k = gas_k;
    stage.reynolds =
        reynolds_ * (1.0 - straight_parts::viscosity_power * (gas_k - balance_.gas_k) / gas_k);
    return stage;
}

void FlueModel::Straight::march_beside_memory() {
    const int count = model_.case_->cells_factor
                      * static_cast<int>(std::ceil(section_.length_m / longest_cell_m));
    const double step = prepared_.xi_length / count;
    double gas_k = flow_.temperature_k;
    double transfer_units = 0.0;
    for (int i = 0; i < count; ++i) {
        const double xi = prepared_.xi_start + step * i;
        const double start_m = cube(xi);
        // By the wall half way and the gas as it comes in: what the wall gives is nearly a straight
        // line over the gas temperature.
        set_gas_at(gas_k);
        const WallBalance::Answer wall = balance_beside_memory(xi + 0.5 * step);
        const double pull_w_m2k =
            std::max(wall.flux_slope_w_m2k * wall.wall_per_gas, least_pull_w_m2k);
        const double aim_k = gas_k - wall.flux_w_m2 / pull_w_m2k;
        const double pull_per_m = heated_ * pull_w_m2k / specific_heat_j_kgk_;
        const auto at = [&](double place_m) {
            return aim_k + (gas_k - aim_k) * std::exp(-pull_per_m * (place_m - start_m));
        };
        flow_.wall_k = wall.inner_k;
        flow_.wall_start_k = i == 0 ? wall.inner_k : flow_.wall_start_k;
        std::array<Stage, 2> stages;
        for (std::size_t point = 0; point < stages.size(); ++point) {
            const double here = xi + Gauss<2>::points[point] * step;
            stages[point] = stage_along(here, at(cube(here)));
        }
        add_pressures(stages, step);
        gas_k = at(cube(xi + step));
        transfer_units += pull_per_m * (cube(xi + step) - start_m);
    }
    if (flow_.answers_asked) {
        kept_per_k_ = std::exp(-transfer_units);
        const double lost = -std::expm1(-transfer_units);
        kept_per_flow_k_ = lost > 0.0 ? (flow_.temperature_k - gas_k) / lost * kept_per_k_
                                            * transfer_units * (1.0 - straight_parts::carried_power)
                                      : 0.0;
    }
    flow_.temperature_k = gas_k;
}

} // namespace fluewright
