#pragma once

#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/model/march/wall_heat.hpp"

#include <cmath>

namespace fluewright {

/// One cross-section of a straight: gas inside, a wall, the air outside.
struct WallBalance {
    const WallHeat* outside;
    const EmissionFit* emission;
    double log_path;
    double radiating_w_m2k4; ///< (1 + wall emissivity)/2 times sigma
    double gas_k;
    double forced_w_m2k;
    double natural_cubed_w3_m6k4; ///< cube of the free-convection coefficient over the temperature
                                  ///< difference between gas and wall
    double opposed_per_k{}; ///< InsideHeat::opposed_upper: buoyancy of convection::opposed_factor()
                            ///< per kelvin between gas and wall; 0: the two add by their cubes
    double warmer_k{};      ///< what is round the wall than its place, by the heater
    double kept_w_m2k{};    ///< what a wall that was at `before_k` gives per kelvin it has cooled
    double before_k{};

    struct Answer {
        double inner_k;
        double flux_w_m2;
        double flux_slope_w_m2k;  ///< derivative of the flux by the temperature of the wall
        double wall_per_gas;      ///< and of that temperature by the gas's, to some 5 %
        double wall_per_forced_k; ///< and by the logarithm of the forced coefficient
    };

    /// The wall temperature at which the inside gives what the outside takes:
    ///
    ///   (h_f^3 + h_n^3)^(1/3) (T_g - T_w) + E (eps T_g^4 - alpha T_w^4)
    ///       = q_out(T_w) + k (T_w - T_before)
    ///
    /// Newton with all slopes, kept inside the bracket of gas and ambient. The last step is applied
    /// to the flux by its slope, so that the answer is good to the square of that step.
    [[nodiscard]] Answer solve(double guess_k);

    /// Convection to the wall at a difference between gas and wall.
    struct Carried {
        double w_m2k;
        double growth_w_m2k; ///< its derivative by that difference, times the difference
    };

    [[nodiscard]] Carried carried_at(double difference_k) const {
        if (opposed_per_k > 0.0) {
            return opposed_at(difference_k);
        }
        // h_n ~ |dT|^(1/3): its cube is linear, and the blend takes one root.
        const double natural_cubed = natural_cubed_w3_m6k4 * std::abs(difference_k);
        const double carried =
            cube_root(forced_w_m2k * forced_w_m2k * forced_w_m2k + natural_cubed);
        return {.w_m2k = carried, .growth_w_m2k = natural_cubed / (3.0 * carried * carried)};
    }

    [[nodiscard]] Carried opposed_at(double difference_k) const; ///< of opposed_per_k

    /// The absorptivity for a wall at this temperature, by its slopes where it is known nearby.
    EmissionFit::Absorbed absorbed_at(double wall_k);

    struct Known {
        EmissionFit::Absorbed absorbed;
        double gas_k; ///< 0 for nowhere
        double wall_k;
    };

    Known known{};
};

} // namespace fluewright
