#pragma once

#include "fluewright/model/march/wall_heat.hpp"
#include "fluewright/physics/air_gap.hpp"

namespace fluewright {

/// A wall in its place with all that does not depend on temperature worked out once.
class LayeredWall {
public:
    explicit LayeredWall(const WallPlace& place);

    /// As wall_state_from_outer().
    [[nodiscard]] WallState from_outer(double outer_k) const;

private:
    struct Layer {
        bool air_gap;
        double conductivity_w_mk;
        double half_slope_w_mk2;
        double half_log;   ///< half the logarithm of its radii, with the shape factor
        double flux_share; ///< flux on the gap's hot face over heat per length and pi
        air_gap::Gap gap;
    };

    [[nodiscard]] double outside_coefficient_w_m2k(double outer_k) const;

    const WallPlace& place_;
    double outside_m_;
    std::array<Layer, most_wall_layers> layers_{}; ///< from the outside in
    std::size_t layer_count_{};
};

} // namespace fluewright
