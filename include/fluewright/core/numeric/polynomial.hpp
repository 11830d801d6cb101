#pragma once

#include "fluewright/core/constants.hpp"

#include <array>
#include <cmath>
#include <cstddef>

/// Polynomials through Chebyshev nodes: the cheap form the solver evaluates.
namespace fluewright {

/// An interval of the x axis mapped to u in [-1, 1].
struct Interval {
    double low;
    double high;

    [[nodiscard]] constexpr double u_of(double x) const {
        return (x - 0.5 * (low + high)) * (2.0 / (high - low));
    }

    [[nodiscard]] constexpr double x_of(double u) const {
        return 0.5 * (low + high) + 0.5 * (high - low) * u;
    }

    [[nodiscard]] constexpr double half_width() const { return 0.5 * (high - low); }
};

template <std::size_t N>
using Coefficients = std::array<double, N>;

/// The i-th of N Chebyshev nodes in u.
template <std::size_t N>
[[nodiscard]] inline double chebyshev_node(std::size_t i) {
    return -std::cos(constants::pi * (2.0 * static_cast<double>(i) + 1.0)
                     / (2.0 * static_cast<double>(N)));
}

/// Coefficients in powers of u of the polynomial that is 1 at the n-th of N Chebyshev nodes and 0
/// at the others, for all n: by divided differences.
template <std::size_t N>
[[nodiscard]] std::array<Coefficients<N>, N> chebyshev_basis() {
    std::array<double, N> node{};
    for (std::size_t i = 0; i < N; ++i) {
        node[i] = chebyshev_node<N>(i);
    }
    std::array<Coefficients<N>, N> basis{};
    for (std::size_t n = 0; n < N; ++n) {
        std::array<double, N> difference{};
        difference[n] = 1.0;
        for (std::size_t order = 1; order < N; ++order) {
            for (std::size_t i = N - 1; i >= order; --i) {
                difference[i] = (difference[i] - difference[i - 1]) / (node[i] - node[i - order]);
            }
        }
        Coefficients<N>& c = basis[n];
        c[0] = difference[N - 1];
        for (std::size_t k = N - 1; k-- > 0;) {
            for (std::size_t power = N - 1; power > 0; --power) {
                c[power] = c[power - 1] - node[k] * c[power];
            }
            c[0] = difference[k] - node[k] * c[0];
        }
    }
    return basis;
}

/// Coefficients in powers of u of the polynomial through `values` at the N Chebyshev nodes.
/// Range: N up to about 10; beyond, powers of u lose digits.
template <std::size_t N>
[[nodiscard]] Coefficients<N> through_chebyshev_nodes(const std::array<double, N>& values) {
    static const std::array<Coefficients<N>, N> basis = chebyshev_basis<N>();
    Coefficients<N> sum{};
    for (std::size_t n = 0; n < N; ++n) {
        for (std::size_t power = 0; power < N; ++power) {
            sum[power] += values[n] * basis[n][power];
        }
    }
    return sum;
}

template <std::size_t N>
[[nodiscard]] constexpr double evaluate(const Coefficients<N>& c, double u) {
    double sum = c[N - 1];
    for (std::size_t i = N - 1; i-- > 0;) {
        sum = sum * u + c[i];
    }
    return sum;
}

struct ValueSlope {
    double value;
    double slope; ///< derivative by u
};

template <std::size_t N>
[[nodiscard]] constexpr ValueSlope evaluate_with_slope(const Coefficients<N>& c, double u) {
    double sum = c[N - 1];
    double slope = 0.0;
    for (std::size_t i = N - 1; i-- > 0;) {
        slope = slope * u + sum;
        sum = sum * u + c[i];
    }
    return {sum, slope};
}

/// Antiderivative in u that is zero at u = 0.
template <std::size_t N>
[[nodiscard]] constexpr Coefficients<N + 1> integral(const Coefficients<N>& c) {
    Coefficients<N + 1> sum{};
    for (std::size_t i = 0; i < N; ++i) {
        sum[i + 1] = c[i] / static_cast<double>(i + 1);
    }
    return sum;
}

} // namespace fluewright
