#include "catch.hpp"
#include "fluewright/core/numeric/polynomial.hpp"

#include <array>
#include <cmath>

using namespace fluewright;

namespace {

/// Fits f at N nodes of u.
template <std::size_t N, class Function>
Coefficients<N> fit(const Function& f) {
    std::array<double, N> values{};
    for (std::size_t i = 0; i < N; ++i) {
        values[i] = f(chebyshev_node<N>(i));
    }
    return through_chebyshev_nodes(values);
}

double cubic(double u) {
    return 4.0 - 3.0 * u + 0.5 * u * u + 7.0 * u * u * u;
}

} // namespace

TEST_CASE("a polynomial is found again from its values at the nodes") {
    const auto exact = fit<4>(cubic);
    REQUIRE(exact[0] == Approx(4.0));
    REQUIRE(exact[1] == Approx(-3.0));
    REQUIRE(exact[2] == Approx(0.5));
    REQUIRE(exact[3] == Approx(7.0));
    const auto rich = fit<9>(cubic);
    for (std::size_t i = 4; i < rich.size(); ++i) {
        REQUIRE(std::abs(rich[i]) < 1e-11);
    }
    for (double u = -1.0; u <= 1.0; u += 0.01) {
        REQUIRE(evaluate(rich, u) == Approx(cubic(u)).margin(1e-12));
    }
}

TEST_CASE("the fit meets any function at the nodes and converges between them") {
    const auto f = [](double u) { return std::exp(1.5 * u); };
    const auto five = fit<5>(f);
    for (std::size_t i = 0; i < 5; ++i) {
        const double u = chebyshev_node<5>(i);
        REQUIRE(evaluate(five, u) == Approx(f(u)).epsilon(1e-13));
    }
    const auto nine = fit<9>(f);
    for (double u = -1.0; u <= 1.0; u += 0.01) {
        REQUIRE(std::abs(evaluate(five, u) - f(u)) < 1e-2);
        REQUIRE(std::abs(evaluate(nine, u) - f(u)) < 1e-6);
    }
}

TEST_CASE("nodes lie inside the stretch and rise") {
    double before = -1.0;
    for (std::size_t i = 0; i < 7; ++i) {
        const double u = chebyshev_node<7>(i);
        REQUIRE(u > before);
        REQUIRE(u < 1.0);
        before = u;
    }
    constexpr Interval stretch{220.0, 1500.0};
    REQUIRE(stretch.u_of(220.0) == Approx(-1.0));
    REQUIRE(stretch.u_of(1500.0) == Approx(1.0));
    REQUIRE(stretch.half_width() == Approx(640.0));
    for (double x = 220.0; x <= 1500.0; x += 40.0) {
        REQUIRE(stretch.x_of(stretch.u_of(x)) == Approx(x));
    }
}

TEST_CASE("the integral is zero in the middle and has the polynomial as its slope") {
    const Coefficients<4> c{4.0, -3.0, 0.5, 7.0};
    const auto sum = integral(c);
    REQUIRE(evaluate(sum, 0.0) == 0.0);
    constexpr double step = 1e-5;
    for (double u = -0.9; u <= 0.9; u += 0.1) {
        const double slope = (evaluate(sum, u + step) - evaluate(sum, u - step)) / (2.0 * step);
        REQUIRE(slope == Approx(evaluate(c, u)).epsilon(1e-8).margin(1e-8));
    }
}
