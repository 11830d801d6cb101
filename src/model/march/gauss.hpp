#pragma once

#include <array>
#include <cstddef>

namespace fluewright {

/// Gauss-Legendre points and weights on [0, 1], and the weights that lead from the start to each
/// point: collocation of twice as high an order as it has points.
template <std::size_t Points>
struct Gauss;

template <>
struct Gauss<2> {
    static constexpr double sixth_root_3 = 0.28867513459481287; ///< a sixth of the root of 3
    static constexpr std::array<double, 2> points{0.5 - sixth_root_3, 0.5 + sixth_root_3};
    static constexpr std::array<double, 2> weights{0.5, 0.5};
    static constexpr std::array<std::array<double, 2>, 2> weights_to_point{
        {{0.25, 0.25 - sixth_root_3}, {0.25 + sixth_root_3, 0.25}}};
};

template <>
struct Gauss<3> {
    static constexpr double root_15 = 3.8729833462074169;
    static constexpr std::array<double, 3> points{0.11270166537925831, 0.5, 0.88729833462074169};
    static constexpr std::array<double, 3> weights{5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0};
    static constexpr std::array<std::array<double, 3>, 3> weights_to_point{
        {{5.0 / 36.0, 2.0 / 9.0 - root_15 / 15.0, 5.0 / 36.0 - root_15 / 30.0},
         {5.0 / 36.0 + root_15 / 24.0, 2.0 / 9.0, 5.0 / 36.0 - root_15 / 24.0},
         {5.0 / 36.0 + root_15 / 30.0, 2.0 / 9.0 + root_15 / 15.0, 5.0 / 36.0}}};
};

} // namespace fluewright
