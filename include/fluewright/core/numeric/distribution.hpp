#pragma once

/// Values of a distribution by their place in it: the inverse of the cumulative probability.
namespace fluewright {

/// Of the normal distribution of mean 0 and standard deviation 1, by halving on erfc to the last
/// digit.
///
/// share   over 0 and under 1
/// Source  M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.2.29
///         [memory]
[[nodiscard]] double normal_quantile(double share);

/// Probability of a value below `z` under the same distribution.
///
/// Source  M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.2.29
///         [memory]
[[nodiscard]] double normal_share(double z);

/// Of the triangular distribution between `low` and `high` with its peak at `peak`.
///
/// share   0 to 1
/// Notes   low <= peak <= high; all three equal give that value
/// Method  the integral of its two straight lines, solved for the value
[[nodiscard]] double triangular_quantile(double share, double low, double peak, double high);

} // namespace fluewright
