#include "catch.hpp"
#include "fluewright/physics/chimney_top.hpp"

#include <cmath>

using namespace fluewright;

TEST_CASE("the Froude number at the top is what its equation says") {
    const chimney_top::Outflow slow{.velocity_m_s = 0.48,
                                    .diameter_m = 0.15,
                                    .gas_density_kg_m3 = 0.83,
                                    .outdoor_density_kg_m3 = 1.35};
    CHECK(chimney_top::froude(slow) == Approx(0.4999).epsilon(1e-3));
    chimney_top::Outflow other = slow;
    other.velocity_m_s *= 2.0;
    CHECK(chimney_top::froude(other) == Approx(2.0 * chimney_top::froude(slow)));
    other = slow;
    other.diameter_m *= 4.0;
    CHECK(chimney_top::froude(other) == Approx(0.5 * chimney_top::froude(slow)));
    // Gas as heavy as the air has nothing fall in beside it.
    other = slow;
    other.gas_density_kg_m3 = other.outdoor_density_kg_m3;
    CHECK(std::isinf(chimney_top::froude(other)));
}
