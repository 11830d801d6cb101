#include "fluewright/physics/air_gap.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/physics/air.hpp"

#include <cmath>

namespace fluewright::air_gap {
namespace {

constexpr double conduction_end = 1e4;
constexpr double middle_end = 5e4;

/// Where Ra width/height is below this, Nu2 is below 1, which Nu1 never is.
constexpr double second_law_from = 184.0;

double tall_cavity(double ra) {
    if (ra > middle_end) {
        return 0.0673838 * cube_root(ra);
    }
    if (ra > conduction_end) {
        return 0.028154 * std::pow(ra, 0.4134);
    }
    return 1.0 + 1.7596678e-10 * std::pow(ra, 2.2984755);
}

} // namespace

double nusselt(double ra, double height_over_width) {
    const double nu1 = tall_cavity(ra);
    const double slender_ra = ra / height_over_width;
    if (slender_ra < second_law_from) {
        return nu1;
    }
    return std::fmax(nu1, 0.242 * std::pow(slender_ra, 0.272));
}

double conductance_w_m2k(const Gap& gap, double hot_face_k, double cold_face_k) {
    const double ra = air::rayleigh(hot_face_k, cold_face_k, gap.width_m, gap.pressure_pa);
    const double convection = nusselt(ra, gap.height_m / gap.width_m)
                              * air::conductivity_w_mk(0.5 * (hot_face_k + cold_face_k))
                              / gap.width_m;
    const double radius_ratio = gap.inner_radius_m / (gap.inner_radius_m + gap.width_m);
    const double exchange =
        1.0 / gap.inner_emissivity + radius_ratio * (1.0 / gap.outer_emissivity - 1.0);
    const double radiation = constants::stefan_boltzmann_w_m2k4
                             * (hot_face_k * hot_face_k + cold_face_k * cold_face_k)
                             * (hot_face_k + cold_face_k) / exchange;
    return convection + radiation;
}

} // namespace fluewright::air_gap
