// Points spread evenly, quantiles, and the share of a spread that goes with one input.
#include "catch.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/distribution.hpp"
#include "fluewright/core/numeric/latin_hypercube.hpp"
#include "fluewright/core/numeric/sample_statistics.hpp"
#include "fluewright/core/parallel.hpp"

#include <algorithm>
#include <array>
#include <cmath>

using namespace fluewright;

namespace {

std::vector<double> edge(const LatinHypercube& cube, std::size_t dimension) {
    std::vector<double> places;
    for (std::size_t point = 0; point < cube.points(); ++point) {
        places.push_back(cube.at(point, dimension));
    }
    return places;
}

std::vector<std::vector<double>> edges(const LatinHypercube& cube) {
    std::vector<std::vector<double>> all;
    for (std::size_t dimension = 0; dimension < cube.dimensions(); ++dimension) {
        all.push_back(edge(cube, dimension));
    }
    return all;
}

} // namespace

TEST_CASE("each edge of the cube has one point in every piece") {
    constexpr std::size_t points = 500;
    const LatinHypercube cube(points, 3, 7);
    for (std::size_t dimension = 0; dimension < 3; ++dimension) {
        std::vector<int> hits(points);
        for (const double place : edge(cube, dimension)) {
            CHECK(place > 0.0);
            CHECK(place < 1.0);
            ++hits[static_cast<std::size_t>(place * static_cast<double>(points))];
        }
        CHECK(std::all_of(hits.begin(), hits.end(), [](int n) { return n == 1; }));
    }
    CHECK(edge(cube, 0) != edge(cube, 1));
    CHECK(edge(cube, 0) == edge(LatinHypercube(points, 3, 7), 0));
    CHECK(edge(cube, 0) != edge(LatinHypercube(points, 3, 8), 0));
}

TEST_CASE("quantiles lie between neighbours") {
    const std::vector<double> sorted{1.0, 2.0, 4.0};
    CHECK(quantile(sorted, 0.0) == Approx(1.0));
    CHECK(quantile(sorted, 0.5) == Approx(2.0));
    CHECK(quantile(sorted, 0.75) == Approx(3.0));
    CHECK(quantile(sorted, 1.0) == Approx(4.0));
    CHECK(quantile(std::vector<double>{5.0}, 0.3) == Approx(5.0));
}

TEST_CASE("the indices of a sum are the shares of its variances") {
    const LatinHypercube cube(4000, 3, 1);
    std::vector<double> outcome;
    for (std::size_t i = 0; i < cube.points(); ++i) {
        outcome.push_back(3.0 * cube.at(i, 0) + 4.0 * cube.at(i, 1) + 100.0);
    }
    const std::vector<double> index = first_order_indices(edges(cube), outcome);
    CHECK(index[0] == Approx(9.0 / 25.0).margin(0.01));
    CHECK(index[1] == Approx(16.0 / 25.0).margin(0.01));
    CHECK(index[2] == Approx(0.0).margin(0.001));
}

TEST_CASE("the indices of a curved function with inputs that act together") {
    // T. Ishigami, T. Homma, 1990: sin x + 7 sin2 y + 0.1 z4 sin x over -pi to pi. Its indices in
    // closed form, 0.3139, 0.4424 and 0, stand in A. Saltelli et al., Global Sensitivity Analysis,
    // 2008 (both from memory; the closed form is worked out here).
    constexpr double a = 7.0;
    constexpr double b = 0.1;
    const double pi4 = std::pow(constants::pi, 4);
    const double of_x = 0.5 * std::pow(1.0 + b * pi4 / 5.0, 2);
    const double of_y = a * a / 8.0;
    const double whole = a * a / 8.0 + b * pi4 / 5.0 + b * b * pi4 * pi4 / 18.0 + 0.5;
    const LatinHypercube cube(8000, 3, 1);
    std::vector<double> outcome;
    for (std::size_t i = 0; i < cube.points(); ++i) {
        const auto at = [&](std::size_t d) { return constants::pi * (2.0 * cube.at(i, d) - 1.0); };
        outcome.push_back(std::sin(at(0)) + a * std::pow(std::sin(at(1)), 2)
                          + b * std::pow(at(2), 4) * std::sin(at(0)));
    }
    CHECK(of_x / whole == Approx(0.3139).margin(1e-4));
    CHECK(of_y / whole == Approx(0.4424).margin(1e-4));
    const std::vector<double> index = first_order_indices(edges(cube), outcome);
    CHECK(index[0] == Approx(of_x / whole).margin(0.015));
    CHECK(index[1] == Approx(of_y / whole).margin(0.015));
    CHECK(index[2] == Approx(0.0).margin(0.01));
}

TEST_CASE("what does not vary has no causes") {
    const LatinHypercube cube(200, 1, 1);
    CHECK(first_order_indices(edges(cube), std::vector<double>(200, 0.1)).front() == 0.0);
    CHECK(first_order_indices({{0.1, 0.9}}, std::vector<double>{1.0, 2.0}).front() == 0.0);
    CHECK(first_order_indices({}, std::vector<double>(200, 0.1)).empty());
}

TEST_CASE("every index is done once, whatever the number of jobs") {
    for (const unsigned jobs : {1U, 2U, 3U, 7U, 200U}) {
        std::vector<int> seen(100);
        in_parallel(jobs, [&](std::size_t first, std::size_t step) {
            for (std::size_t i = first; i < seen.size(); i += step) {
                ++seen[i];
            }
        });
        CHECK(std::all_of(seen.begin(), seen.end(), [](int n) { return n == 1; }));
    }
}

// Source: scipy.stats 1.10, norm.ppf and triang(c=0.2, loc=3, scale=5).ppf.
TEST_CASE("a value by its place in a distribution is that of a statistics library") {
    const std::array<std::array<double, 2>, 7> normal{{{1e-9, -5.9978070150076865},
                                                       {0.001, -3.090232306167813},
                                                       {0.025, -1.9599639845400545},
                                                       {0.5, 0.0},
                                                       {0.9, 1.2815515655446004},
                                                       {0.975, 1.959963984540054},
                                                       {0.999999, 4.753424308817087}}};
    for (const auto& [share, value] : normal) {
        CHECK(normal_quantile(share) == Approx(value).margin(1e-12).epsilon(1e-12));
    }
    const std::array<std::array<double, 2>, 6> triangular{{{0.0, 3.0},
                                                           {0.1, 3.707106781186548},
                                                           {0.2, 4.0},
                                                           {0.5, 4.83772233983162},
                                                           {0.9, 6.585786437626905},
                                                           {1.0, 8.0}}};
    for (const auto& [share, value] : triangular) {
        CHECK(triangular_quantile(share, 3.0, 4.0, 8.0) == Approx(value).epsilon(1e-12));
    }
    CHECK(triangular_quantile(0.3, 4.0, 4.0, 4.0) == 4.0);
}
