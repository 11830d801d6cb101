#include "fit.hpp"

#include "fluewright/model/catalog/catalog.hpp"

#include <cmath>

namespace fluewright::diagnosis {
namespace {

constexpr double node_offset = 1.2; ///< of the outer nodes, in standard deviations
constexpr double heat_reach = 2.5;  ///< of the outer steps

/// Below this likelihood, or beyond so many spreads, a hypothesis does not account for what was
/// seen; judgement.
constexpr double conflict_share = 0.12;
constexpr double conflict_spreads = 3.2;

double line_through(const std::array<double, heat_nodes>& y, const HeatFactors& at, double x) {
    double sum = 0.0;
    for (std::size_t i = 0; i < heat_nodes; ++i) {
        double term = y[i];
        for (std::size_t j = 0; j < heat_nodes; ++j) {
            term *= i == j ? 1.0 : (x - at[j]) / (at[i] - at[j]);
        }
        sum += term;
    }
    return sum;
}

} // namespace

HeatGrid::HeatGrid() {
    const double spread = catalog::default_of(DefaultId::fire_temperature_spread).value;
    factors = {1.0 - node_offset * spread, 1.0 + node_offset * spread};
    double sum = 0.0;
    for (std::size_t i = 0; i < heat_steps; ++i) {
        const double z =
            heat_reach * (2.0 * static_cast<double>(i) / static_cast<double>(heat_steps - 1) - 1.0);
        times[i] = 1.0 + z * spread;
        weight[i] = std::exp(-0.5 * z * z);
        sum += weight[i];
    }
    for (double& each : weight) {
        each /= sum;
    }
}

void solve_for(const Evidence& evidence,
               const Case& resolved,
               Solver& solver,
               SolvedSituations& solved) {
    for (const Situation& situation : needs(evidence, resolved)) {
        if (!solved.contains(situation)) {
            solved.emplace(situation, solver.predict(situation));
        }
    }
}

std::array<double, heat_steps> figures_of(const Evidence& evidence,
                                          const Altered& altered,
                                          const SolvedSituations& solved,
                                          const HeatGrid& grid) {
    std::array<double, heat_nodes> at_nodes{};
    for (std::size_t node = 0; node < heat_nodes; ++node) {
        at_nodes[node] = predicted(evidence, altered, [&](const Situation& s) -> const Prediction& {
            return solved.at(s)[node];
        });
    }
    std::array<double, heat_steps> result{};
    for (std::size_t i = 0; i < heat_steps; ++i) {
        result[i] = line_through(at_nodes, grid.factors, grid.times[i]);
    }
    return result;
}

bool contradicts(const Evidence& evidence, double x, const Altered& altered) {
    if (evidence.is_reading()) {
        return !lies_within(evidence, x, conflict_spreads, altered);
    }
    return evidence.seen != Seen::worse && likelihood(evidence, x, altered) < conflict_share;
}

} // namespace fluewright::diagnosis
