#pragma once

#include <span>
#include <vector>

/// What a sample of outcomes says.
namespace fluewright {

/// The value below which `share` of the sample lies, between neighbours by the straight line.
///
/// sorted  ascending, at least one value
/// share   0 to 1
/// [theory eq. 61]
[[nodiscard]] double quantile(std::span<const double> sorted, double share);

/// How much of the variance of `outcome` goes with each input alone: the first-order indices
/// Var(E[y | x]) / Var(y), each 0 to 1.
///
/// places   for each input its place in each run, as cumulative probability, over 0 and under 1
/// outcome  of each run; as many as each input has places
/// Method   The runs are sorted into bins of equal probability; the effects of all inputs are the
///          bin means of what the others leave, fitted in turns so that chance correlation between
///          inputs counts for none of them. The chance share of so many bins is taken off (omega
///          squared).
/// Source   A. Saltelli et al., Global Sensitivity Analysis, 2008, 1.2 (the index)
///          [saltelli-2008, from memory]; W. L. Hays, Statistics, 1963 (omega squared)
///          [hays-1963, from memory]
/// Notes    0 where the outcome does not vary, or with fewer than eight runs.
/// [theory eq. 62]
[[nodiscard]] std::vector<double>
first_order_indices(const std::vector<std::vector<double>>& places,
                    std::span<const double> outcome);

} // namespace fluewright
