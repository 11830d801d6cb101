#pragma once

#include "fluewright/model/march/wall_heat.hpp"

#include <span>
#include <vector>

/// A wall that stores heat: its layers cut into rings, for the warm-up.   [theory eq. 57]
namespace fluewright {

/// Heat flows and heat contents are per area of the inner face.
///
/// Nodes, from the inside out: the inner face, the middle of each ring, both faces of each air gap,
/// the outer face. Faces hold no heat. Rings grow outwards by a quarter, since the swings come from
/// the inside. A wall known by its resistance only stores none.
class StoringWall {
public:
    explicit StoringWall(const WallPlace& place);

    [[nodiscard]] std::size_t node_count() const { return capacity_.size(); }

    /// What the sides do in a step. Heat from the gas is inside_w_m2k (gas_k - inner face).
    struct Sides {
        double inside_w_m2k;
        double gas_k;
        double outside_w_m2k; ///< on the inner area
        double ambient_k;
    };

    struct Heat {
        double in_w_m2;  ///< from the gas
        double out_w_m2; ///< to the air around
    };

    /// Implicit step of `step_s` from the node temperatures `start_k` to `nodes_k`:
    ///
    ///   C_i (T_i - S_i)/step = g_(i-1) (T_(i-1) - T_i) + g_i (T_(i+1) - T_i) + sides
    ///
    /// `nodes_k` comes with a guess, by which conductivities and gaps are taken, and leaves with
    /// the answer to the linear system; repeat until it stands still. An endless step gives the
    /// steady state.
    Heat step(const Sides& sides,
              double step_s,
              std::span<const double> start_k,
              std::span<double> nodes_k) const;

    /// Convection and radiation outside at a temperature of the outer face [W/(m2 K)], on the inner
    /// area.
    [[nodiscard]] double outside_w_m2k(double outer_k) const;

    /// Heat held above 0 K at constant specific heats [J/m2].
    [[nodiscard]] double heat_j_m2(std::span<const double> nodes_k) const;

    /// Heat it takes to warm the whole wall by a kelvin [J/(m2 K)].
    [[nodiscard]] double heat_capacity_j_m2k() const;

    [[nodiscard]] const WallPlace& place() const { return place_; }

private:
    /// What passes heat between a node and the next: the halves of two rings, or a gap.
    struct Link {
        std::size_t layer{};
        double before_m{};         ///< resistance times conductivity of the ring before
        double behind_m{};         ///< of the ring behind
        std::size_t ring_before{}; ///< the nodes whose temperatures give the conductivities
        std::size_t ring_behind{};
        double fixed_m2k_w{};    ///< a known resistance, instead
        double inner_radius_m{}; ///< of a gap
        bool gap{};
    };

    void add_rings(std::size_t layer, double inner_radius_m);
    void add_gap(std::size_t layer, double inner_radius_m);
    [[nodiscard]] double
    conductance_w_m2k(const Link& link, std::size_t index, std::span<const double> nodes_k) const;

    WallPlace place_;
    WallBuild skin_;               ///< no layers: the outer face alone, for the air around
    std::vector<double> capacity_; ///< J/(m2 K)
    std::vector<Link> links_;      ///< one fewer than nodes
    double outside_m_{};
};

} // namespace fluewright
