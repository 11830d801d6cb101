#include "fluewright/core/constants.hpp"
#include "fluewright/core/root.hpp"
#include "fluewright/model/wall_heat.hpp"
#include "fluewright/physics/air.hpp"
#include "fluewright/physics/air_gap.hpp"
#include "fluewright/physics/convection.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double conductivity_reference_k = 293.15;
constexpr double rectangular_shape_factor = 1.1;
constexpr double tallest_gap_cell_m = 1.0; ///< gaps are closed at the joints of pipe lengths

double outside_coefficient_w_m2k(const WallPlace& place, double outside_m, double outer_k) {
    const double length_m = place.upright ? place.height_m : outside_m;
    const double film_k = 0.5 * (outer_k + place.ambient_k);
    const double conductivity = air::conductivity_w_mk(film_k);
    const double ra = air::rayleigh(outer_k, place.ambient_k, length_m, place.air_pressure_pa);
    const double natural =
        conductivity / length_m
        * (place.upright ? convection::vertical_plate_churchill_1975(ra, air::prandtl)
                         : convection::horizontal_cylinder_churchill_1975(ra, air::prandtl));
    double carried = natural;
    if (place.wind_m_s > 0.0) {
        const double re = place.wind_m_s * outside_m
                          * air::density_kg_m3(film_k, place.air_pressure_pa)
                          / air::viscosity_pa_s(film_k);
        const double forced =
            conductivity / outside_m * convection::cross_wind_churchill_1977(re, air::prandtl);
        carried = convection::blend(forced, natural);
    }
    const double radiated = place.wall->outer_emissivity * constants::stefan_boltzmann_w_m2k4
                            * (outer_k * outer_k + place.ambient_k * place.ambient_k)
                            * (outer_k + place.ambient_k);
    return carried + radiated;
}

/// Temperature of the inner face of a conducting layer; its conductivity follows its mean
/// temperature, which makes the drop a root of a parabola.
double through_layer(const WallLayer& layer, double outer_k, double drop_times_conductivity) {
    const double k_outer = layer.conductivity_w_mk
                           + layer.conductivity_slope_w_mk2 * (outer_k - conductivity_reference_k);
    const double half_slope = 0.5 * layer.conductivity_slope_w_mk2;
    // (k_outer + half_slope drop) drop = drop_times_conductivity
    const double inside_root = k_outer * k_outer + 4.0 * half_slope * drop_times_conductivity;
    const double root = std::sqrt(std::max(inside_root, 0.01 * k_outer * k_outer));
    return outer_k + 2.0 * drop_times_conductivity / (k_outer + root);
}

/// Temperature of the hot face of an air gap that passes `flux_w_m2` on that face.
double through_gap(const air_gap::Gap& gap, double cold_k, double flux_w_m2) {
    if (flux_w_m2 == 0.0) {
        return cold_k;
    }
    // The conductance grows slowly with the drop: substitution with the secant's help closes fast.
    double drop = flux_w_m2 / air_gap::conductance_w_m2k(gap, cold_k, cold_k + 1.0);
    double previous_drop = 0.0;
    double previous_miss = -flux_w_m2;
    for (int step = 0; step < 40; ++step) {
        const double miss =
            air_gap::conductance_w_m2k(gap, cold_k + drop, cold_k) * drop - flux_w_m2;
        if (std::abs(miss) <= 1e-12 * std::abs(flux_w_m2) || miss == previous_miss) {
            break;
        }
        const double next = drop - miss * (drop - previous_drop) / (miss - previous_miss);
        previous_drop = drop;
        previous_miss = miss;
        drop = next;
    }
    return cold_k + drop;
}

struct Radii {
    std::array<double, most_wall_layers + 1> r{};
};

Radii radii_of(const WallBuild& wall, double inside_diameter_m) {
    Radii radii;
    radii.r[0] = 0.5 * inside_diameter_m;
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        radii.r[i + 1] = radii.r[i] + wall.layers[i].thickness_m;
    }
    return radii;
}

} // namespace

double outside_diameter_m(const WallBuild& wall, double inside_diameter_m) {
    const double layered = 2.0 * radii_of(wall, inside_diameter_m).r[wall.layer_count];
    return std::max(layered, wall.outside_diameter_m);
}

WallState wall_state_from_outer(const WallPlace& place, double outer_k) {
    const WallBuild& wall = *place.wall;
    const Radii radii = radii_of(wall, place.inside_diameter_m);
    const double outside_m = outside_diameter_m(wall, place.inside_diameter_m);
    const double flux_outer =
        outside_coefficient_w_m2k(place, outside_m, outer_k) * (outer_k - place.ambient_k);
    const double heat_over_pi_w_m = flux_outer * outside_m;
    const double shape = place.rectangular ? rectangular_shape_factor : 1.0;
    const double flux_inner = heat_over_pi_w_m / place.inside_diameter_m;

    double face_k = outer_k;
    for (std::size_t i = wall.layer_count; i-- > 0;) {
        const WallLayer& layer = wall.layers[i];
        const double inner_r = radii.r[i];
        if (layer.air_gap) {
            const double hot_emissivity =
                i > 0 ? wall.layers[i - 1].emissivity : wall.inner_emissivity;
            const double cold_emissivity =
                i + 1 < wall.layer_count ? wall.layers[i + 1].emissivity : wall.outer_emissivity;
            const air_gap::Gap gap{.width_m = layer.thickness_m,
                                   .height_m = std::min(place.height_m, tallest_gap_cell_m),
                                   .inner_radius_m = inner_r,
                                   .inner_emissivity = hot_emissivity,
                                   .outer_emissivity = cold_emissivity,
                                   .pressure_pa = place.air_pressure_pa};
            face_k = through_gap(gap, face_k, heat_over_pi_w_m / (2.0 * inner_r));
        } else {
            const double logarithm = std::log(radii.r[i + 1] / inner_r);
            face_k = through_layer(layer, face_k, 0.5 * shape * heat_over_pi_w_m * logarithm);
        }
    }
    face_k += flux_inner * wall.fixed_resistance_m2k_w;
    return {.flux_w_m2 = flux_inner, .inner_k = face_k, .outer_k = outer_k};
}

WallState wall_state_from_inner(const WallPlace& place, double inner_k) {
    const auto miss = [&](double outer_k) {
        return wall_state_from_outer(place, outer_k).inner_k - inner_k;
    };
    const double low = std::min(inner_k, place.ambient_k);
    const double high = std::max(inner_k, place.ambient_k);
    const Root root =
        find_root(miss, low, high, {.x_tolerance = 1e-10, .residual_tolerance = 1e-9});
    return wall_state_from_outer(place, root.x);
}

} // namespace fluewright
