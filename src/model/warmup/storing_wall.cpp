#include "fluewright/model/warmup/storing_wall.hpp"

#include "fluewright/physics/air_gap.hpp"
#include "fluewright/physics/wall_layer.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fluewright {
namespace {

constexpr double first_ring_m = 2e-3;
constexpr double ring_growth = 1.25;
constexpr std::size_t most_rings = 16;
constexpr double metal_conductivity_w_mk = 5.0; ///< from here up a sheet has one temperature

constexpr std::size_t most_nodes = most_wall_layers * (most_rings + 2) + 2;

/// Nearer to the air around, the coefficient is that at this distance.
constexpr double least_difference_k = 0.02;

/// Thickness of each ring of a layer, from the inside out.
std::vector<double> rings_of(const WallLayer& layer) {
    std::size_t count = 1;
    double reach_m = first_ring_m;
    double sum = 1.0;
    double next = ring_growth;
    if (layer.conductivity_w_mk < metal_conductivity_w_mk) {
        while (reach_m < layer.thickness_m && count < most_rings) {
            ++count;
            sum += next;
            next *= ring_growth;
            reach_m = first_ring_m * sum;
        }
    }
    std::vector<double> rings;
    double thickness = layer.thickness_m / sum;
    for (std::size_t i = 0; i < count; ++i) {
        rings.push_back(thickness);
        thickness *= ring_growth;
    }
    return rings;
}

} // namespace

StoringWall::StoringWall(const WallPlace& place) : place_(place) {
    const WallBuild& wall = *place.wall;
    outside_m_ = outside_diameter_m(wall, place.inside_diameter_m);
    skin_.outer_emissivity = wall.outer_emissivity;
    capacity_.push_back(0.0);
    double radius_m = 0.5 * place.inside_diameter_m;
    if (wall.fixed_resistance_m2k_w > 0.0 || wall.layer_count == 0) {
        // At least a trace of resistance, so that two faces stay two nodes.
        constexpr double trace_m2k_w = 1e-9;
        Link link;
        link.fixed_m2k_w = std::max(wall.fixed_resistance_m2k_w, trace_m2k_w);
        links_.push_back(link);
        capacity_.push_back(0.0);
    }
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        if (wall.layers[i].air_gap) {
            add_gap(i, radius_m);
        } else {
            add_rings(i, radius_m);
        }
        radius_m += wall.layers[i].thickness_m;
    }
}

/// The last node is the face the layer begins at; the layer adds its rings and its outer face.
void StoringWall::add_rings(std::size_t index, double inner_radius_m) {
    const WallLayer& layer = place_.wall->layers[index];
    const double flue_radius_m = 0.5 * place_.inside_diameter_m;
    const double shape = place_.rectangular ? wall_layer::rectangular_shape_factor : 1.0;
    double inner_m = inner_radius_m;
    double waiting = 0.0; ///< of the ring before, from its middle outwards
    std::size_t ring_before = 0;
    const auto link_to_here = [&](double own, std::size_t ring_behind) {
        Link link;
        link.layer = index;
        link.before_m = waiting;
        link.behind_m = own;
        link.ring_before = ring_before;
        link.ring_behind = ring_behind;
        links_.push_back(link);
    };
    for (const double thickness : rings_of(layer)) {
        const double outer_m = inner_m + thickness;
        const double middle_m = 0.5 * (inner_m + outer_m);
        const std::size_t node = capacity_.size();
        link_to_here(shape * flue_radius_m * std::log(middle_m / inner_m), node);
        capacity_.push_back(layer.density_kg_m3 * layer.specific_heat_j_kgk
                            * (outer_m * outer_m - inner_m * inner_m) / (2.0 * flue_radius_m));
        waiting = shape * flue_radius_m * std::log(outer_m / middle_m);
        ring_before = node;
        inner_m = outer_m;
    }
    link_to_here(0.0, ring_before);
    capacity_.push_back(0.0);
}

void StoringWall::add_gap(std::size_t index, double inner_radius_m) {
    Link link;
    link.layer = index;
    link.inner_radius_m = inner_radius_m;
    link.gap = true;
    links_.push_back(link);
    capacity_.push_back(0.0);
}

double StoringWall::conductance_w_m2k(const Link& link,
                                      std::size_t index,
                                      std::span<const double> nodes_k) const {
    const WallBuild& wall = *place_.wall;
    if (link.fixed_m2k_w > 0.0) {
        return 1.0 / link.fixed_m2k_w;
    }
    const WallLayer& layer = wall.layers[link.layer];
    if (link.gap) {
        const std::size_t i = link.layer;
        const air_gap::Gap gap{
            .width_m = layer.thickness_m,
            .height_m = std::min(place_.height_m, wall_layer::tallest_gap_cell_m),
            .inner_radius_m = link.inner_radius_m,
            .inner_emissivity = i > 0 ? wall.layers[i - 1].emissivity : wall.inner_emissivity,
            .outer_emissivity =
                i + 1 < wall.layer_count ? wall.layers[i + 1].emissivity : wall.outer_emissivity,
            .pressure_pa = place_.air_pressure_pa};
        return air_gap::conductance_w_m2k(gap, nodes_k[index], nodes_k[index + 1])
               * link.inner_radius_m / (0.5 * place_.inside_diameter_m);
    }
    const auto conductivity = [&](std::size_t node) {
        constexpr double least_share = 0.1;
        return std::max(layer.conductivity_w_mk
                            + layer.conductivity_slope_w_mk2
                                  * (nodes_k[node] - wall_layer::conductivity_reference_k),
                        least_share * layer.conductivity_w_mk);
    };
    return 1.0
           / (link.before_m / conductivity(link.ring_before)
              + link.behind_m / conductivity(link.ring_behind));
}

StoringWall::Heat StoringWall::step(const Sides& sides,
                                    double step_s,
                                    std::span<const double> start_k,
                                    std::span<double> nodes_k) const {
    const std::size_t count = capacity_.size();
    std::array<double, most_nodes> upper{};
    std::array<double, most_nodes> right{};
    double before = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const bool last = i + 1 == count;
        const double after = last ? 0.0 : conductance_w_m2k(links_[i], i, nodes_k);
        const double held = capacity_[i] / step_s;
        double diagonal = held + before + after;
        double known = held * start_k[i];
        if (i == 0) {
            diagonal += sides.inside_w_m2k;
            known += sides.inside_w_m2k * sides.gas_k;
        }
        if (last) {
            diagonal += sides.outside_w_m2k;
            known += sides.outside_w_m2k * sides.ambient_k;
        }
        const double pivot = diagonal - (i > 0 ? before * upper[i - 1] : 0.0);
        upper[i] = after / pivot;
        right[i] = (known + (i > 0 ? before * right[i - 1] : 0.0)) / pivot;
        before = after;
    }
    for (std::size_t i = count; i-- > 0;) {
        nodes_k[i] = right[i] + (i + 1 < count ? upper[i] * nodes_k[i + 1] : 0.0);
    }
    return {.in_w_m2 = sides.inside_w_m2k * (sides.gas_k - nodes_k[0]),
            .out_w_m2 = sides.outside_w_m2k * (nodes_k[count - 1] - sides.ambient_k)};
}

double StoringWall::outside_w_m2k(double outer_k) const {
    WallPlace face = place_;
    face.wall = &skin_;
    face.inside_diameter_m = outside_m_;
    double difference_k = outer_k - place_.ambient_k;
    if (std::abs(difference_k) < least_difference_k) {
        difference_k = std::copysign(least_difference_k, difference_k);
    }
    const WallState state = wall_state_from_outer(face, place_.ambient_k + difference_k);
    return state.flux_w_m2 / difference_k * outside_m_ / place_.inside_diameter_m;
}

double StoringWall::heat_j_m2(std::span<const double> nodes_k) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < capacity_.size(); ++i) {
        sum += capacity_[i] * nodes_k[i];
    }
    return sum;
}

double StoringWall::heat_capacity_j_m2k() const {
    double sum = 0.0;
    for (const double capacity : capacity_) {
        sum += capacity;
    }
    return sum;
}

} // namespace fluewright
