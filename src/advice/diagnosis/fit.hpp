#pragma once

#include "seen/evidence.hpp"

#include <array>
#include <map>

/// How what a hypothesis predicts is held against what was seen.
namespace fluewright::diagnosis {

/// Nodes of the heat of the fire over which the weights are summed.
inline constexpr std::size_t heat_steps = 15;

/// How hot the fire may be against what the file says: steps of a normal distribution.
struct HeatGrid {
    HeatGrid();

    HeatFactors factors{};
    std::array<double, heat_steps> times{};  ///< multiples of the rise in the file
    std::array<double, heat_steps> weight{}; ///< together 1
};

using SolvedSituations = std::map<Situation, Predictions>;

/// Solves those situations that the evidence needs and that are not there yet.
void solve_for(const Evidence& evidence,
               const Case& resolved,
               Solver& solver,
               SolvedSituations& solved);

/// What the evidence should have been, at every heat of the fire; its situations must be solved.
[[nodiscard]] std::array<double, heat_steps> figures_of(const Evidence& evidence,
                                                        const Altered& altered,
                                                        const SolvedSituations& solved,
                                                        const HeatGrid& grid);

/// Whether evidence cannot well be where `x` is predicted.
[[nodiscard]] bool contradicts(const Evidence& evidence, double x, const Altered& altered);

} // namespace fluewright::diagnosis
