#include "fluewright/model/wall_heat.hpp"

#include "layered_wall.hpp"

#include <cmath>

namespace fluewright {
namespace {

/// The first knot: so near to ambient that the conductance is held constant below it.
constexpr double first_step_k = 0.02;
constexpr double warmer_span_k = 1250.0;
constexpr double colder_span_k = 90.0;
constexpr int most_span_steps = 20;

/// Natural cubic spline through the points: per piece, coefficients in powers of (x - start).
template <std::size_t N>
std::array<std::array<double, 4>, N - 1> natural_spline(const std::array<double, N>& x,
                                                        const std::array<double, N>& y) {
    // Tridiagonal system for the second derivatives.
    std::array<double, N> upper{};
    std::array<double, N> curvature{};
    for (std::size_t i = 1; i + 1 < N; ++i) {
        const double before = x[i] - x[i - 1];
        const double after = x[i + 1] - x[i];
        const double bend = 6.0 * ((y[i + 1] - y[i]) / after - (y[i] - y[i - 1]) / before);
        const double pivot = 2.0 * (before + after) - before * upper[i - 1];
        upper[i] = after / pivot;
        curvature[i] = (bend - before * curvature[i - 1]) / pivot;
    }
    for (std::size_t i = N - 1; i-- > 1;) {
        curvature[i] -= upper[i] * curvature[i + 1];
    }
    std::array<std::array<double, 4>, N - 1> pieces{};
    for (std::size_t i = 0; i + 1 < N; ++i) {
        const double width = x[i + 1] - x[i];
        pieces[i] = {y[i],
                     (y[i + 1] - y[i]) / width
                         - width / 6.0 * (2.0 * curvature[i] + curvature[i + 1]),
                     0.5 * curvature[i],
                     (curvature[i + 1] - curvature[i]) / (6.0 * width)};
    }
    return pieces;
}

/// The step of the outer face that brings the inner face a little beyond `span_k`. The outer face
/// keeps a slowly changing share of the drop, so that substitution closes in a few steps.
double step_to_span_k(const LayeredWall& wall, double ambient_k, double sign, double span_k) {
    double step_k = 0.02 * span_k;
    for (int i = 0; i < most_span_steps; ++i) {
        const double reached_k =
            sign * (wall.from_outer(ambient_k + sign * step_k).inner_k - ambient_k);
        if (reached_k >= span_k && reached_k <= 1.1 * span_k) {
            break;
        }
        step_k *= 1.04 * span_k / reached_k;
    }
    return step_k;
}

} // namespace

WallHeat::WallHeat(const WallPlace& place) : place_(place) {
    fill(warmer_, 1.0, warmer_span_k);
    fill(colder_, -1.0, colder_span_k);
}

void WallHeat::fill(Branch& branch, double sign, double span_k) const {
    const LayeredWall wall(place_);
    // Outer-face steps that grow with the square make the knots nearly even in u.
    const double last_step_k = step_to_span_k(wall, place_.ambient_k, sign, span_k);
    std::array<double, knots> conductance{};
    std::array<double, knots> outer_share{};
    for (std::size_t i = 0; i < knots; ++i) {
        const double share = static_cast<double>(i) / static_cast<double>(knots - 1);
        const double step_k = first_step_k + (last_step_k - first_step_k) * share * share;
        const WallState state = wall.from_outer(place_.ambient_k + sign * step_k);
        const double difference_k = state.inner_k - place_.ambient_k;
        branch.start[i] = std::sqrt(std::abs(difference_k));
        conductance[i] = state.flux_w_m2 / difference_k;
        outer_share[i] = sign * step_k / difference_k;
    }
    const auto conductance_pieces = natural_spline(branch.start, conductance);
    const auto share_pieces = natural_spline(branch.start, outer_share);
    for (std::size_t i = 0; i < branch.piece.size(); ++i) {
        branch.piece[i] = {conductance_pieces[i], share_pieces[i]};
    }
    branch.knots_per_u = static_cast<double>(knots - 1) / branch.start[knots - 1];
}

std::size_t WallHeat::Branch::piece_of(double u) const {
    std::size_t i =
        static_cast<std::size_t>(std::fmin(u * knots_per_u, static_cast<double>(knots - 2)));
    while (i > 0 && u < start[i]) {
        --i;
    }
    while (i + 2 < knots && u > start[i + 1]) {
        ++i;
    }
    return i;
}

WallHeat::Value WallHeat::at(double inner_k) const {
    const double difference_k = inner_k - place_.ambient_k;
    const Branch& branch = branch_of(difference_k);
    const double u = std::sqrt(std::abs(difference_k));
    if (u <= branch.start[0]) {
        const double conductance = branch.piece[0].conductance[0];
        return {conductance * difference_k, conductance};
    }
    const std::size_t i = branch.piece_of(u);
    const auto& c = branch.piece[i].conductance;
    const double w = u - branch.start[i];
    const double conductance = c[0] + w * (c[1] + w * (c[2] + w * c[3]));
    const double change = c[1] + w * (2.0 * c[2] + w * 3.0 * c[3]);
    return {conductance * difference_k, conductance + 0.5 * u * change};
}

double WallHeat::outer_k(double inner_k) const {
    const double difference_k = inner_k - place_.ambient_k;
    const Branch& branch = branch_of(difference_k);
    const double u = std::fmax(std::sqrt(std::abs(difference_k)), branch.start[0]);
    const std::size_t i = branch.piece_of(u);
    const auto& c = branch.piece[i].outer_share;
    const double w = u - branch.start[i];
    return place_.ambient_k + difference_k * (c[0] + w * (c[1] + w * (c[2] + w * c[3])));
}

} // namespace fluewright
