#include "catch.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/physics/air_gap.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/fittings.hpp"

#include <cmath>

using namespace fluewright;

namespace {

constexpr double degree = constants::pi / 180.0;

/// Walks along `f` and demands that no step is larger than `steepest` slopes allow, so that a jump
/// anywhere shows.
template <class Function>
void require_no_jump(const Function& f, double low, double high, double steepest) {
    constexpr int steps = 20000;
    const double step = (high - low) / steps;
    double before = f(low);
    for (int i = 1; i <= steps; ++i) {
        const double x = low + step * i;
        const double now = f(x);
        INFO("at " << x);
        REQUIRE(std::isfinite(now));
        REQUIRE(std::abs(now - before) <= steepest * step);
        before = now;
    }
}

fittings::Cone cone_of(double angle_deg, double small_m = 0.15, double large_m = 0.2) {
    return {.small_diameter_m = small_m,
            .large_diameter_m = large_m,
            .length_m = 0.5 * (large_m - small_m) / std::tan(0.5 * angle_deg * degree)};
}

} // namespace

TEST_CASE("bend tables run on without a jump in angle and radius") {
    const auto smooth = [](double radius) {
        return [radius](double a) { return fittings::bend_smooth(a * degree, radius); };
    };
    for (const double radius : {0.5, 0.75, 0.9, 1.0, 1.2, 1.5, 3.0}) {
        require_no_jump(smooth(radius), 0.0, 180.0, 0.02);
    }
    require_no_jump([](double a) { return fittings::bend_gored(a * degree); }, 0.0, 180.0, 0.02);
    require_no_jump([](double a) { return fittings::bend_mitered(a * degree); }, 0.0, 180.0, 0.03);
    for (const double angle : {10.0, 45.0, 90.0, 120.0}) {
        require_no_jump(
            [angle](double r) { return fittings::bend_smooth(angle * degree, r); }, 0.3, 2.5, 1.2);
    }
}

TEST_CASE("bends lose more the sharper they turn, less the wider they sweep") {
    for (double angle = 1.0; angle < 180.0; angle += 1.0) {
        const double a = angle * degree;
        const double b = (angle + 1.0) * degree;
        REQUIRE(fittings::bend_smooth(b, 1.0) > fittings::bend_smooth(a, 1.0));
        REQUIRE(fittings::bend_gored(b) > fittings::bend_gored(a));
        REQUIRE(fittings::bend_mitered(b) > fittings::bend_mitered(a));
        REQUIRE(fittings::bend_smooth(a, 0.75) >= fittings::bend_smooth(a, 1.0));
        REQUIRE(fittings::bend_smooth(a, 1.0) >= fittings::bend_smooth(a, 1.5));
    }
    REQUIRE(fittings::bend_smooth(0.0, 1.0) == 0.0);
    REQUIRE(fittings::bend_gored(0.0) == 0.0);
    REQUIRE(fittings::bend_mitered(0.0) == 0.0);
}

TEST_CASE("the bend factor fades out with the straight behind the bend") {
    for (double angle = 0.0; angle <= 90.0; angle += 5.0) {
        const double a = angle * degree;
        const double near = fittings::bend_spacing_factor(a, 0.0);
        REQUIRE(near >= 1.0);
        REQUIRE(near <= 1.5);
        REQUIRE(fittings::bend_spacing_factor(a, 2.0) == Approx(near));
        REQUIRE(fittings::bend_spacing_factor(a, 30.0) == Approx(1.0));
        REQUIRE(fittings::bend_spacing_factor(a, 1e6) == Approx(1.0));
        REQUIRE(fittings::bend_spacing_factor(a, 16.0) == Approx(0.5 * (1.0 + near)));
        require_no_jump([a](double spacing) { return fittings::bend_spacing_factor(a, spacing); },
                        0.0,
                        40.0,
                        0.05);
    }
    require_no_jump(
        [](double a) { return fittings::bend_spacing_factor(a * degree, 1.0); }, 0.0, 180.0, 0.05);
}

TEST_CASE("cones run on without a jump from straight pipe to step") {
    require_no_jump([](double a) { return fittings::increaser(cone_of(a)); }, 0.5, 179.0, 0.01);
    require_no_jump([](double a) { return fittings::reducer(cone_of(a)); }, 0.5, 179.0, 0.02);
    const fittings::Cone step{.small_diameter_m = 0.1, .large_diameter_m = 0.15, .length_m = 0.0};
    const double ratio = 0.1 * 0.1 / (0.15 * 0.15);
    REQUIRE(fittings::increaser(step) == Approx(fittings::sudden_enlargement(ratio)));
    REQUIRE(fittings::reducer(step) == Approx(fittings::sudden_contraction(ratio)));
    REQUIRE(fittings::sudden_enlargement(1.0) == 0.0);
    REQUIRE(fittings::sudden_contraction(1.0) == 0.0);
}

TEST_CASE("a damper has no jump and loses more the further it shuts") {
    double before = 0.0;
    for (double angle = 0.0; angle < 90.0; angle += 0.01) {
        const double open = fittings::disc_damper(angle * degree, 0.0);
        REQUIRE(open > before);
        // A jump would exceed the steepest stretch: a factor of three within five degrees.
        REQUIRE((angle == 0.0 || open < 1.01 * before));
        before = open;
    }
}

TEST_CASE("gas left past a damper's edge keeps its loss finite") {
    for (double angle = 0.0; angle <= 90.0; angle += 1.0) {
        const double sealed = fittings::disc_damper(angle * degree, 0.0);
        const double leaky = fittings::disc_damper(angle * degree, 0.2);
        REQUIRE(leaky < sealed);
        REQUIRE(leaky < fittings::obstruction(0.2));
    }
    REQUIRE(fittings::disc_damper(90.0 * degree, 0.2)
            == Approx(fittings::obstruction(0.2)).epsilon(0.1));
}

TEST_CASE("a free passage loses nothing and a narrow one more and more") {
    REQUIRE(fittings::obstruction(1.0) == 0.0);
    REQUIRE(fittings::screen(1.0) == 0.0);
    for (double free = 0.05; free < 0.99; free += 0.01) {
        REQUIRE(fittings::obstruction(free) > fittings::obstruction(free + 0.01));
        REQUIRE(fittings::screen(free) > fittings::screen(free + 0.01));
    }
}

TEST_CASE("a tee without flow from the branch is straight pipe along the main") {
    for (const double area : {0.5, 0.8, 1.0}) {
        const fittings::Junction still{
            .angle_rad = 90.0 * degree, .area_ratio = area, .branch_flow = 0.0};
        REQUIRE(fittings::tee_along_main(still) == Approx(0.03));
        REQUIRE(fittings::tee_from_branch(still) == Approx(-0.92));
    }
}

TEST_CASE("the closed gap grows its convection without a large step at the joints of its law") {
    // The published pieces part by up to 1.2 % where they meet, at Ra 1e4 and 5e4.
    for (const double joint : {1e4, 5e4}) {
        const double below = air_gap::nusselt(joint * (1.0 - 1e-9), 1e9);
        const double above = air_gap::nusselt(joint * (1.0 + 1e-9), 1e9);
        REQUIRE(above == Approx(below).epsilon(0.012));
    }
    REQUIRE(air_gap::nusselt(0.0, 10.0) == Approx(1.0));
}

TEST_CASE("the floored Reynolds number is 2300 in still gas and the true one in fast flow") {
    REQUIRE(convection::floored_reynolds(0.0) == Approx(2300.0));
    REQUIRE(convection::floored_reynolds(500.0) == Approx(2300.0).epsilon(1e-5));
    REQUIRE(convection::floored_reynolds(2300.0) == Approx(2300.0 * std::pow(2.0, 0.125)));
    REQUIRE(convection::floored_reynolds(10000.0) == Approx(10000.0).epsilon(1e-5));
    double before = 0.0;
    for (double re = 0.0; re < 2e4; re += 10.0) {
        const double now = convection::floored_reynolds(re);
        REQUIRE(now >= before);
        REQUIRE(now >= re);
        before = now;
    }
}

TEST_CASE("convection falls back to its limits") {
    REQUIRE(convection::pipe_laminar_hausen_1943(0.0) == Approx(3.66));
    REQUIRE(convection::entry_factor_local(0.0) == Approx(1.0));
    REQUIRE(convection::blend(5.0, 0.0) == Approx(5.0));
    REQUIRE(convection::blend(0.0, 3.0) == Approx(3.0));
    REQUIRE(convection::opposed_factor(0.0) == Approx(1.0));
    // By hand: at Re 10000, Pr 0.72 and Gr 1e8 the buoyancy is 4500e8 / (10^10.5 0.8485) = 16.8.
    REQUIRE(convection::opposed_buoyancy_per_grashof(1e4, 0.72) * 1e8
            == Approx(16.77).epsilon(2e-3));
    REQUIRE(convection::opposed_factor(16.77) == Approx(2.441).epsilon(1e-3));
    REQUIRE(convection::blend(2.0, 2.0) == Approx(2.0 * std::cbrt(2.0)));
    const double ra = 1e18;
    REQUIRE(convection::vertical_plate_churchill_1975(ra, 0.7) / std::cbrt(ra)
            == Approx(convection::tall_wall_factor(0.7)).epsilon(1e-2));
}
