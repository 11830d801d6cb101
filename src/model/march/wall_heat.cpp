#include "fluewright/model/march/wall_heat.hpp"

#include "layered_wall.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

/// The first knot: so near to ambient that the conductance is held constant below it.
constexpr double first_inner_step_k = 0.3;
/// Beyond what is asked for, so that the bend assumed at the end has died away.
constexpr double span_over_asked = 1.6;
constexpr double warmer_span_k = 1500.0;
constexpr std::size_t least_knots = 12;
constexpr double colder_span_k = 90.0;
constexpr std::size_t colder_knots = 10;
constexpr int most_span_steps = 20;

using CubicPiece = std::array<double, 4>;

/// Natural cubic spline through the points: per piece, coefficients in powers of (x - start).
template <std::size_t N>
std::array<CubicPiece, N>
spline_through(const std::array<double, N>& x, const std::array<double, N>& y, std::size_t points) {
    // Tridiagonal system for the second derivatives.
    std::array<double, N> upper{};
    std::array<double, N> curvature{};
    for (std::size_t i = 1; i + 1 < points; ++i) {
        const double before = x[i] - x[i - 1];
        const double after = x[i + 1] - x[i];
        const double bend = 6.0 * ((y[i + 1] - y[i]) / after - (y[i] - y[i - 1]) / before);
        const double at_end = (i == 1 ? before : 0.0) + (i + 2 == points ? after : 0.0);
        const double pivot = 2.0 * (before + after) + at_end - before * upper[i - 1];
        upper[i] = after / pivot;
        curvature[i] = (bend - before * curvature[i - 1]) / pivot;
    }
    for (std::size_t i = points - 1; i-- > 1;) {
        curvature[i] -= i + 2 < points ? upper[i] * curvature[i + 1] : 0.0;
    }
    curvature[0] = curvature[1];
    curvature[points - 1] = curvature[points - 2];
    std::array<CubicPiece, N> pieces{};
    for (std::size_t i = 0; i + 1 < points; ++i) {
        const double width = x[i + 1] - x[i];
        pieces[i] = {y[i],
                     (y[i + 1] - y[i]) / width
                         - width / 6.0 * (2.0 * curvature[i] + curvature[i + 1]),
                     0.5 * curvature[i],
                     (curvature[i + 1] - curvature[i]) / (6.0 * width)};
    }
    return pieces;
}

double fourth_root(double x) {
    return std::sqrt(std::sqrt(x));
}

/// The step of the outer face that brings the inner face a little beyond `span_k`: a secant in the
/// logarithms, in which the relation is nearly straight.
double step_to_span_k(const LayeredWall& wall, double ambient_k, double sign, double span_k) {
    double step_k = 0.02 * span_k;
    double power = 1.0; ///< of the step, in what the inner face does
    double step_before_k = 0.0;
    double reached_before_k = 0.0;
    for (int i = 0; i < most_span_steps; ++i) {
        const double reached_k =
            sign * (wall.from_outer(ambient_k + sign * step_k).inner_k - ambient_k);
        if (reached_k >= span_k && reached_k <= 1.1 * span_k) {
            break;
        }
        if (i > 0 && step_k != step_before_k) {
            power = std::clamp(std::log(reached_k / reached_before_k)
                                   / std::log(step_k / step_before_k),
                               0.3,
                               6.0);
        }
        step_before_k = step_k;
        reached_before_k = reached_k;
        step_k = std::min(step_k * std::pow(1.05 * span_k / reached_k, 1.0 / power), 1.1 * span_k);
    }
    return step_k;
}

} // namespace

WallHeat::WallHeat(const WallPlace& place, bool may_be_colder, double hottest_k) : place_(place) {
    const double span_k =
        std::clamp(span_over_asked * (hottest_k - place.ambient_k), colder_span_k, warmer_span_k);
    // As dense over the fourth root as a full curve is.
    const double share = fourth_root(span_k / warmer_span_k);
    warmer_.knots =
        std::max(least_knots, 1 + static_cast<std::size_t>(std::ceil(share * (most_knots - 1))));
    fill(warmer_, 1.0, span_k);
    if (may_be_colder) {
        colder_.knots = colder_knots;
        fill(colder_, -1.0, colder_span_k);
    }
}

void WallHeat::fill(Branch& branch, double sign, double span_k) const {
    const LayeredWall wall(place_);
    // Outer-face steps that grow with the fourth power make the knots nearly even in u.
    const double probe_k = 0.1 * first_inner_step_k;
    const double probed_k =
        sign * (wall.from_outer(place_.ambient_k + sign * probe_k).inner_k - place_.ambient_k);
    const double first_step_k = probe_k * first_inner_step_k / probed_k;
    const double last_step_k = step_to_span_k(wall, place_.ambient_k, sign, span_k);
    std::array<double, most_knots> conductance{};
    std::array<double, most_knots> outer_share{};
    for (std::size_t i = 0; i < branch.knots; ++i) {
        const double share = static_cast<double>(i) / static_cast<double>(branch.knots - 1);
        const double step_k =
            first_step_k + (last_step_k - first_step_k) * share * share * share * share;
        const WallState state = wall.from_outer(place_.ambient_k + sign * step_k);
        const double difference_k = state.inner_k - place_.ambient_k;
        branch.start[i] = fourth_root(std::abs(difference_k));
        conductance[i] = state.flux_w_m2 / difference_k;
        outer_share[i] = sign * step_k / difference_k;
    }
    const auto conductance_pieces = spline_through(branch.start, conductance, branch.knots);
    const auto share_pieces = spline_through(branch.start, outer_share, branch.knots);
    for (std::size_t i = 0; i + 1 < branch.knots; ++i) {
        branch.piece[i] = {conductance_pieces[i], share_pieces[i]};
    }
    branch.knots_per_u = static_cast<double>(branch.knots - 1) / branch.start[branch.knots - 1];
}

std::size_t WallHeat::Branch::piece_of(double u) const {
    const double place = u * knots_per_u;
    const auto last = static_cast<double>(knots - 2);
    auto i = static_cast<std::size_t>(place < last ? place : last); // the last, too, for no number
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
    const double u = fourth_root(std::abs(difference_k));
    if (u <= branch.start[0]) {
        const double conductance = branch.piece[0].conductance[0];
        return {conductance * difference_k, conductance};
    }
    const std::size_t i = branch.piece_of(u);
    const auto& c = branch.piece[i].conductance;
    const double w = u - branch.start[i];
    const double conductance = c[0] + w * (c[1] + w * (c[2] + w * c[3]));
    const double change = c[1] + w * (2.0 * c[2] + w * 3.0 * c[3]);
    return {conductance * difference_k, conductance + 0.25 * u * change};
}

WallHeat::Value WallHeat::at(double inner_k, double warmer_k) const {
    constexpr double least_difference_k = 1e-3;
    const double difference_k =
        std::copysign(std::fmax(std::abs(inner_k - place_.ambient_k), least_difference_k),
                      inner_k - place_.ambient_k);
    const Value alone = at(place_.ambient_k + difference_k);
    const double conductance = alone.flux_w_m2 / difference_k;
    const double steeper = (alone.slope_w_m2k - conductance) / difference_k;
    return {alone.flux_w_m2 - conductance * warmer_k, alone.slope_w_m2k - steeper * warmer_k};
}

double WallHeat::outer_k(double inner_k, double warmer_k) const {
    const double difference_k = inner_k - place_.ambient_k;
    const Branch& branch = branch_of(difference_k);
    const double u = std::fmax(fourth_root(std::abs(difference_k)), branch.start[0]);
    const std::size_t i = branch.piece_of(u);
    const auto& c = branch.piece[i].outer_share;
    const double w = u - branch.start[i];
    const double share = c[0] + w * (c[1] + w * (c[2] + w * c[3]));
    return place_.ambient_k + warmer_k + (difference_k - warmer_k) * share;
}

} // namespace fluewright
