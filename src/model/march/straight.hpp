#pragma once

#include "flow.hpp"
#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/physics/friction.hpp"
#include "gauss.hpp"
#include "wall_balance.hpp"

#include <array>

namespace fluewright {
namespace straight_parts {

/// Of the temperature, about: what viscosity grows with.
inline constexpr double viscosity_power = 0.7;

/// Of the flow, about: what heat carried to the wall grows with.
inline constexpr double carried_power = 0.8;

} // namespace straight_parts

/// One straight in the course of a march, and what stays the same along it.
class FlueModel::Straight {
public:
    Straight(const FlueModel& model, const Section& section, const Prepared& prepared, Flow& flow);

    void march();

private:
    /// A point of a cell.
    struct Stage {
        double xi;
        double distance_m; ///< xi cubed
        double y;          ///< as predicted when the stage was computed
        double gas_k;      ///< at that y
        double reynolds;
        double loss_per_m; ///< -dy/dx there
        double loss_slope; ///< derivative of its logarithm by y
        double entry;
        double loss_per_entry; ///< derivative of its logarithm by that of the entry factor
        double wall_k;
        double wall_per_gas;     ///< derivative by the gas temperature
        double wall_per_entry_k; ///< and by the logarithm of the entry factor
    };

    /// convection::entry_factor_local() without its root: xi is the cube root of the distance.
    [[nodiscard]] double entry_at(double xi) const {
        return 1.0 + prepared_.entry_scale / (xi * xi);
    }

    /// How much warmer than its zone it is round the pipe there, for the gas last set.
    [[nodiscard]] double warmer_at(double xi) const {
        return flow_.warmer_k(section_.zone,
                              flow_.distance_m + cube(xi) - prepared_.start_m,
                              balance_.gas_k - ambient_k_);
    }

    void remember(const WallMemory& memory);
    WallBalance::Answer balance_beside_memory(double xi);
    [[nodiscard]] Stage stage_along(double xi, double gas_k) const;
    void march_beside_memory();
    void march_balanced();
    void carry_answers(double temperature_before_k, double friction_pa, double acceleration_pa);
    void set_gas(double y, double share_left);
    void set_gas_at(double gas_k);
    void take_stage(double xi);
    double expected_transfer_units(double xi);
    [[nodiscard]] double wall_guess_k(double entry) const;
    template <std::size_t Points>
    void correct(std::array<Stage, Points>& stages, double step, double y) const;
    template <std::size_t Points>
    void add_pressures(const std::array<Stage, Points>& stages, double step);
    template <std::size_t Points>
    [[nodiscard]] double cell(double xi, double step, double y, bool first_is_known);
    template <std::size_t Points>
    [[nodiscard]] double cells(double xi_start, double xi_length);

    const FlueModel& model_;
    const Section& section_;
    const Prepared& prepared_;
    Flow& flow_;
    WallBalance balance_;
    Stage last_{}; ///< the last one taken
    double ambient_k_;
    double start_difference_k_;
    double mass_flux_;
    double flux_diameter_;
    double heated_; ///< inside area per metre over mass flow [m s/kg]
    double natural_scale_;
    double opposed_scale_; ///< of the Grashof number; 0 where the two convections add
    const WallMemory* memory_{};
    double memory_start_{};   ///< logarithm of what the wall was hotter by than the air
    double memory_rise_{};    ///< and its growth along the straight
    double memory_lag_k_{};   ///< what the wall of the cell before has cooled by, negative
    double expected_share_{}; ///< of the wall in the difference between gas and air

    // What the gas keeps of a change at the lower end, for the slopes of the march.
    double kept_per_k_{};      ///< of its temperature
    double kept_per_flow_k_{}; ///< of the logarithm of the flow

    // The gas last set.
    double y_{};
    double difference_k_{};
    double reynolds_{};
    double specific_heat_j_kgk_{};
    double forced_w_m2k_{}; ///< without the entry factor
};

/// Buoyancy and friction of one cell.
template <std::size_t Points>
void FlueModel::Straight::add_pressures(const std::array<Stage, Points>& stages, double step) {
    const Surroundings& around = model_.surroundings_;
    const double steepness = section_.rise_m / section_.length_m;
    const double roughness = section_.roughness_m / section_.diameter_m;
    const double density_k = around.air_pressure_pa / flow_.fit.gas_constant_j_kgk;
    // Both columns get lighter with height by the same share; to first order.
    const double thinning_per_m =
        around.outdoor_density_kg_m3 * constants::gravity_m_s2 / around.air_pressure_pa;
    double buoyancy = 0.0;
    double friction = 0.0;
    for (std::size_t i = 0; i < Points; ++i) {
        const Stage& stage = stages[i];
        const double density = density_k / stage.gas_k;
        const double height_m = flow_.height_m + steepness * (stage.distance_m - prepared_.start_m);
        const double stretch = Gauss<Points>::weights[i] * step * 3.0 * stage.xi * stage.xi;
        buoyancy +=
            stretch * (around.outdoor_density_kg_m3 - density) * (1.0 - thinning_per_m * height_m);
        friction += stretch * friction::churchill_1977(stage.reynolds, roughness) / density;
    }
    buoyancy *= constants::gravity_m_s2 * steepness;
    friction *= 0.5 * mass_flux_ * mass_flux_ / section_.diameter_m;
    flow_.sums.buoyancy_pa += buoyancy;
    flow_.sums.friction_pa += friction;
    flow_.pressure_pa += buoyancy - friction;
}

} // namespace fluewright
