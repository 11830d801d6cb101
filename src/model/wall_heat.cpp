#include "fluewright/model/wall_heat.hpp"

#include "fluewright/core/root.hpp"

#include <cmath>

namespace fluewright {
namespace {

/// The first knot: so near to ambient that the conductance is held constant below it.
constexpr double first_step_k = 0.02;
constexpr double warmer_span_k = 1250.0;
constexpr double colder_span_k = 90.0;

} // namespace

WallHeat::WallHeat(const WallPlace& place) : place_(place) {
    fill(warmer_, 1.0, warmer_span_k);
    fill(colder_, -1.0, colder_span_k);
}

void WallHeat::fill(Branch& branch, double sign, double span_k) const {
    // Outer-face steps that grow with the square make the knots nearly even in u.
    const double far_k = place_.ambient_k + sign * span_k;
    const Root end = find_root(
        [&](double outer_k) {
            return sign * (wall_state_from_outer(place_, outer_k).inner_k - far_k);
        },
        place_.ambient_k + sign * first_step_k,
        far_k,
        {.x_tolerance = 1e-3, .residual_tolerance = 1.0});
    const double outer_span_k = std::abs(end.x - place_.ambient_k);
    for (std::size_t i = 0; i < knots; ++i) {
        const double share = static_cast<double>(i) / static_cast<double>(knots - 1);
        const double step_k = first_step_k + (outer_span_k - first_step_k) * share * share;
        const WallState state = wall_state_from_outer(place_, place_.ambient_k + sign * step_k);
        const double difference_k = state.inner_k - place_.ambient_k;
        branch.u[i] = std::sqrt(std::abs(difference_k));
        branch.value[i] = state.flux_w_m2 / difference_k;
    }
    // Natural cubic spline: tridiagonal system for the second derivatives.
    std::array<double, knots> upper{};
    std::array<double, knots> right{};
    for (std::size_t i = 1; i + 1 < knots; ++i) {
        const double before = branch.u[i] - branch.u[i - 1];
        const double after = branch.u[i + 1] - branch.u[i];
        const double bend = 6.0
                            * ((branch.value[i + 1] - branch.value[i]) / after
                               - (branch.value[i] - branch.value[i - 1]) / before);
        const double pivot = 2.0 * (before + after) - before * upper[i - 1];
        upper[i] = after / pivot;
        right[i] = (bend - before * right[i - 1]) / pivot;
    }
    for (std::size_t i = knots - 1; i-- > 1;) {
        branch.curvature[i] = right[i] - upper[i] * branch.curvature[i + 1];
    }
}

WallHeat::Value WallHeat::at(double inner_k) const {
    const double difference_k = inner_k - place_.ambient_k;
    const Branch& branch = difference_k >= 0.0 ? warmer_ : colder_;
    const double u = std::sqrt(std::abs(difference_k));
    if (u <= branch.u[0]) {
        return {branch.value[0] * difference_k, branch.value[0]};
    }
    std::size_t i = static_cast<std::size_t>(std::fmin(
        u / branch.u[knots - 1] * static_cast<double>(knots - 1), static_cast<double>(knots - 2)));
    while (i > 0 && u < branch.u[i]) {
        --i;
    }
    while (i + 2 < knots && u > branch.u[i + 1]) {
        ++i;
    }
    const double width = branch.u[i + 1] - branch.u[i];
    const double b = (u - branch.u[i]) / width;
    const double a = 1.0 - b;
    const double sixth = width * width / 6.0;
    const double conductance =
        a * branch.value[i] + b * branch.value[i + 1]
        + sixth
              * ((a * a * a - a) * branch.curvature[i] + (b * b * b - b) * branch.curvature[i + 1]);
    const double change = (branch.value[i + 1] - branch.value[i]) / width
                          + width / 6.0
                                * ((3.0 * b * b - 1.0) * branch.curvature[i + 1]
                                   - (3.0 * a * a - 1.0) * branch.curvature[i]);
    return {conductance * difference_k, conductance + 0.5 * u * change};
}

} // namespace fluewright
