#include "fluewright/physics/door_flow.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/physics/openings.hpp"

#include <cmath>

namespace fluewright::door_flow {
namespace {

/// Below this the pressure is the same over the height, and the integral over it a product.
constexpr double equal_density_kg_m3 = 1e-9;

double lift_pa_m(const Opening& opening) {
    return (opening.room_density_kg_m3 - opening.box_density_kg_m3) * constants::gravity_m_s2;
}

/// x^(3/2), and nought below it.
double power(double pa) {
    return pa > 0.0 ? pa * std::sqrt(pa) : 0.0;
}

} // namespace

Flow through(const Opening& opening, double top_pa) {
    const double lift = lift_pa_m(opening);
    const double width_m = openings::door_discharge * opening.width_m;
    const double in_factor = width_m * std::sqrt(2.0 * opening.room_density_kg_m3);
    const double out_factor = width_m * std::sqrt(2.0 * opening.box_density_kg_m3);
    if (lift * opening.height_m < equal_density_kg_m3) {
        const double root = std::sqrt(std::abs(top_pa)) * opening.height_m;
        return top_pa >= 0.0 ? Flow{.in_kg_s = in_factor * root, .out_kg_s = 0.0}
                             : Flow{.in_kg_s = 0.0, .out_kg_s = out_factor * root};
    }
    const double bottom_pa = top_pa + lift * opening.height_m;
    const double third = 2.0 / (3.0 * lift);
    return {.in_kg_s = third * in_factor * (power(bottom_pa) - power(top_pa)),
            .out_kg_s = third * out_factor * (power(-top_pa) - power(-bottom_pa))};
}

double top_edge_pa(const Opening& opening, double neutral_height_m) {
    return lift_pa_m(opening) * (neutral_height_m - opening.height_m);
}

} // namespace fluewright::door_flow
