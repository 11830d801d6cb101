#include "catch.hpp"
#include "fluewright/physics/friction.hpp"

#include <cmath>

using namespace fluewright;

TEST_CASE("friction is laminar at low Reynolds number, whatever the wall") {
    for (const double roughness : {0.0, 0.01, 0.05}) {
        for (const double re : {1.0, 10.0, 100.0, 1000.0}) {
            REQUIRE(friction::churchill_1977(re, roughness)
                    == Approx(friction::laminar(re)).epsilon(1e-3));
        }
    }
}

TEST_CASE("friction grows with roughness") {
    for (double re = 2500.0; re < 1e7; re *= 1.3) {
        double churchill = 0.0;
        double colebrook = 0.0;
        for (double roughness = 1e-6; roughness <= 0.05; roughness *= 1.5) {
            INFO("re " << re << " roughness " << roughness);
            REQUIRE(friction::churchill_1977(re, roughness) > churchill);
            REQUIRE(friction::colebrook_1939(re, roughness) > colebrook);
            churchill = friction::churchill_1977(re, roughness);
            colebrook = friction::colebrook_1939(re, roughness);
        }
    }
}

TEST_CASE("friction passes from laminar to turbulent without a jump") {
    constexpr double step = 1.0001;
    for (const double roughness : {0.0, 0.001, 0.02, 0.05}) {
        for (double re = 100.0; re < 1e5; re *= step) {
            const double here = friction::churchill_1977(re, roughness);
            const double there = friction::churchill_1977(re * step, roughness);
            // The steepest stretch, near Re 2500, rises as about the twelfth power.
            REQUIRE(std::abs(there / here - 1.0) < 20.0 * (step - 1.0));
        }
    }
}

TEST_CASE("Colebrook's equation is met to round-off") {
    for (double re = 4000.0; re < 1e8; re *= 3.0) {
        for (const double roughness : {0.0, 1e-4, 0.01, 0.05}) {
            const double f = friction::colebrook_1939(re, roughness);
            const double right = -2.0 * std::log10(roughness / 3.7 + 2.51 / (re * std::sqrt(f)));
            REQUIRE(1.0 / std::sqrt(f) == Approx(right).epsilon(1e-12));
        }
    }
}

TEST_CASE("gas next to still has a friction factor with a number") {
    for (const double re : {1e-6, 1e-9, 1e-30, 0.0}) {
        CHECK(friction::churchill_1977(re, 0.01) == Approx(64.0 / 1e-6));
    }
}
