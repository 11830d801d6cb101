#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/model/march/wall_heat.hpp"
#include "fluewright/physics/air.hpp"
#include "fluewright/physics/air_gap.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/wall_layer.hpp"
#include "layered_wall.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

/// A falling line is not followed to nothing; it is met only beyond any flue gas.
constexpr double least_conductivity_share = 0.15;
constexpr double gap_tolerance = 1e-7; ///< of the flux
/// No face of a wall is colder. A search that asks a gap for more cold than it can pass ends there,
/// not below absolute zero.
constexpr double coldest_face_k = 100.0;

/// Temperature of the inner face of a conducting layer; its conductivity follows its mean
/// temperature, which makes the drop a root of a parabola.
double through_layer(double conductivity_w_mk,
                     double half_slope_w_mk2,
                     double outer_k,
                     double drop_times_conductivity) {
    const double k_outer =
        conductivity_w_mk
        + 2.0 * half_slope_w_mk2 * (outer_k - wall_layer::conductivity_reference_k);
    const double k_least = least_conductivity_share * conductivity_w_mk;
    if (k_outer < k_least) {
        return outer_k + drop_times_conductivity / k_least;
    }
    // (k_outer + half_slope drop) drop = drop_times_conductivity
    const double inside_root = k_outer * k_outer + 4.0 * half_slope_w_mk2 * drop_times_conductivity;
    const double root = std::sqrt(std::max(inside_root, 0.01 * k_outer * k_outer));
    return outer_k + 2.0 * drop_times_conductivity / (k_outer + root);
}

/// Temperature of the hot face of an air gap that passes `flux_w_m2` on that face.
double through_gap(const air_gap::Gap& gap, double cold_k, double flux_w_m2) {
    if (flux_w_m2 == 0.0) {
        return cold_k;
    }
    // The conductance grows slowly with the drop: substitution with the secant's help closes fast.
    const double furthest_down = coldest_face_k - cold_k;
    double drop =
        std::max(flux_w_m2 / air_gap::conductance_w_m2k(gap, cold_k, cold_k + 1.0), furthest_down);
    double previous_drop = 0.0;
    double previous_miss = -flux_w_m2;
    for (int step = 0; step < 40; ++step) {
        const double miss =
            air_gap::conductance_w_m2k(gap, cold_k + drop, cold_k) * drop - flux_w_m2;
        if (std::abs(miss) <= gap_tolerance * std::abs(flux_w_m2) || miss == previous_miss) {
            break;
        }
        const double next = drop - miss * (drop - previous_drop) / (miss - previous_miss);
        previous_drop = drop;
        previous_miss = miss;
        drop = std::max(next, furthest_down);
    }
    return cold_k + drop;
}

} // namespace

double outside_diameter_m(const WallBuild& wall, double inside_diameter_m) {
    double layered_m = inside_diameter_m;
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        layered_m += 2.0 * wall.layers[i].thickness_m;
    }
    return std::max(layered_m, wall.outside_diameter_m);
}

LayeredWall::LayeredWall(const WallPlace& place)
    : place_(place), outside_m_(outside_diameter_m(*place.wall, place.inside_diameter_m)),
      layer_count_(place.wall->layer_count) {
    const WallBuild& wall = *place.wall;
    const double shape = place.rectangular ? wall_layer::rectangular_shape_factor : 1.0;
    double inner_r = 0.5 * place.inside_diameter_m;
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        const WallLayer& written = wall.layers[i];
        const double outer_r = inner_r + written.thickness_m;
        Layer& layer = layers_[wall.layer_count - 1 - i];
        layer.air_gap = written.air_gap;
        if (written.air_gap) {
            layer.flux_share = 0.5 / inner_r;
            layer.gap = {
                .width_m = written.thickness_m,
                .height_m = std::min(place.height_m, wall_layer::tallest_gap_cell_m),
                .inner_radius_m = inner_r,
                .inner_emissivity = i > 0 ? wall.layers[i - 1].emissivity : wall.inner_emissivity,
                .outer_emissivity = i + 1 < wall.layer_count ? wall.layers[i + 1].emissivity
                                                             : wall.outer_emissivity,
                .pressure_pa = place.air_pressure_pa};
        } else {
            layer.conductivity_w_mk = written.conductivity_w_mk;
            layer.half_slope_w_mk2 = 0.5 * written.conductivity_slope_w_mk2;
            layer.half_log = 0.5 * shape * std::log(outer_r / inner_r);
        }
        inner_r = outer_r;
    }
}

double LayeredWall::outside_coefficient_w_m2k(double outer_k) const {
    const double length_m = place_.upright ? place_.height_m : outside_m_;
    const double film_k = 0.5 * (outer_k + place_.ambient_k);
    const double conductivity = air::conductivity_w_mk(film_k);
    const double ra = air::rayleigh(outer_k, place_.ambient_k, length_m, place_.air_pressure_pa);
    const double natural = conductivity / length_m
                           * (place_.upright ? convection::vertical_plate_in_air(ra)
                                             : convection::horizontal_cylinder_in_air(ra));
    double carried = natural;
    if (place_.wind_m_s > 0.0) {
        const double re = place_.wind_m_s * outside_m_
                          * air::density_kg_m3(film_k, place_.air_pressure_pa)
                          / air::viscosity_pa_s(film_k);
        const double forced = conductivity / outside_m_ * convection::cross_wind_in_air(re);
        carried = convection::blend(forced, natural);
    }
    const double radiated = place_.wall->outer_emissivity * constants::stefan_boltzmann_w_m2k4
                            * (outer_k * outer_k + place_.ambient_k * place_.ambient_k)
                            * (outer_k + place_.ambient_k);
    return carried + radiated;
}

WallState LayeredWall::from_outer(double outer_k) const {
    const double flux_outer = outside_coefficient_w_m2k(outer_k) * (outer_k - place_.ambient_k);
    const double heat_over_pi_w_m = flux_outer * outside_m_;
    const double flux_inner = heat_over_pi_w_m / place_.inside_diameter_m;
    double face_k = outer_k;
    for (std::size_t i = 0; i < layer_count_; ++i) {
        const Layer& layer = layers_[i];
        face_k = layer.air_gap ? through_gap(layer.gap, face_k, heat_over_pi_w_m * layer.flux_share)
                               : through_layer(layer.conductivity_w_mk,
                                               layer.half_slope_w_mk2,
                                               face_k,
                                               heat_over_pi_w_m * layer.half_log);
        face_k = std::max(face_k, coldest_face_k);
    }
    face_k += flux_inner * place_.wall->fixed_resistance_m2k_w;
    return {.flux_w_m2 = flux_inner, .inner_k = face_k, .outer_k = outer_k};
}

WallState wall_state_from_outer(const WallPlace& place, double outer_k) {
    return LayeredWall(place).from_outer(outer_k);
}

WallState wall_state_from_inner(const WallPlace& place, double inner_k) {
    const double difference_k = std::abs(inner_k - place.ambient_k);
    if (difference_k == 0.0) {
        return {.flux_w_m2 = 0.0, .inner_k = inner_k, .outer_k = inner_k};
    }
    const LayeredWall wall(place);
    const double sign = inner_k > place.ambient_k ? 1.0 : -1.0;
    const auto miss = [&](double step_k) {
        return sign * (wall.from_outer(place.ambient_k + sign * step_k).inner_k - inner_k);
    };
    // The outer face steps away from ambient until the inner one has gone far enough, so that no
    // temperature below absolute zero is ever asked for.
    double low_k = 0.0;
    double high_k = 0.01 * difference_k;
    while (miss(high_k) < 0.0 && high_k < difference_k) {
        low_k = high_k;
        high_k = std::min(1.5 * high_k, difference_k);
    }
    const Root root =
        find_root(miss, low_k, high_k, {.x_tolerance = 1e-10, .residual_tolerance = 1e-9});
    return wall.from_outer(place.ambient_k + sign * root.x);
}

} // namespace fluewright
