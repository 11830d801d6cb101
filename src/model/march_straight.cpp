#include "flow.hpp"
#include "fluewright/core/cube_root.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/friction.hpp"
#include "wall_balance.hpp"

#include <algorithm>

/// Heat, buoyancy and friction along one straight.   [theory: march]
///
/// The gas temperature is marched as y = ln((T - T_a)/(T_0 - T_a)), T_a being the air around: under
/// a constant overall coefficient y is a straight line, so that only changes of the coefficient
/// cost accuracy. The independent variable is xi, the cube root of the distance from the last
/// disturbance, in which the entry effect has no corner. Buoyancy and friction are then integrated
/// by Gauss' rule over the cubic through the ends and slopes of y.
namespace fluewright {
namespace {

constexpr double gravity = constants::gravity_m_s2;

/// Hausen's entry factor is held at its value a tenth of a diameter behind a disturbance, where
/// separation makes the formula's infinity meaningless.
constexpr double entry_start_over_diameter = 0.1;

/// A straight gets one cell for each of these steps in y, by the loss at its start.
constexpr double cell_transfer_units = 0.3;
constexpr double most_cells = 1000.0;

/// Nearer than this to the air around, the gas is taken to lose nothing more.
constexpr double equal_temperature_k = 1e-6;

/// Gauss-Legendre points and weights on [0, 1].
constexpr std::array<double, 3> gauss_points{0.11270166537925831, 0.5, 0.88729833462074169};
constexpr std::array<double, 3> gauss_weights{5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0};

double cube(double x) {
    return x * x * x;
}

/// The cubic through two values and the slopes there, over a step.
double hermite(double share, double step, double y_0, double y_1, double slope_0, double slope_1) {
    const double rest = 1.0 - share;
    return rest * rest * ((1.0 + 2.0 * share) * y_0 + share * step * slope_0)
           + share * share * ((1.0 + 2.0 * rest) * y_1 - rest * step * slope_1);
}

} // namespace

/// One straight in the course of a march, and what stays the same along it.
class FlueModel::Straight {
public:
    Straight(const FlueModel& model, const Section& section, const Prepared& prepared, Flow& flow);

    void march();

private:
    [[nodiscard]] double slope_at(double y, double xi);
    void add_pressures(double xi, double step, const std::array<double, 4>& cubic);

    [[nodiscard]] double temperature_k(double y) const {
        return ambient_k_ + start_difference_k_ * std::exp(y);
    }

    const FlueModel& model_;
    const Section& section_;
    Flow& flow_;
    WallBalance balance_;
    double ambient_k_;
    double start_difference_k_;
    double start_; ///< distance from the disturbance and the tenth of a diameter [m]
    double mass_flux_;
    double heated_; ///< inside area per metre over mass flow [m s/kg]
    double entry_scale_;
    double natural_scale_;
};

FlueModel::Straight::Straight(const FlueModel& model,
                              const Section& section,
                              const Prepared& prepared,
                              Flow& flow)
    : model_(model), section_(section), flow_(flow), balance_{} {
    const Case& installation = *model.case_;
    balance_.outside = &model.heats_[prepared.heat];
    balance_.emission = &model.emissions_[static_cast<std::size_t>(flow.choice)][prepared.emission];
    balance_.log_path = flow.log_path;
    balance_.radiating_w_m2k4 = 0.5 * (installation.walls[section.wall].inner_emissivity + 1.0)
                                * constants::stefan_boltzmann_w_m2k4;
    ambient_k_ = balance_.outside->ambient_k();
    start_difference_k_ = flow.temperature_k - ambient_k_;
    start_ = entry_start_over_diameter * section.diameter_m + flow.since_disturbance_m;
    mass_flux_ = flow.flow_kg_s / section.area_m2;
    heated_ = section.perimeter_m / flow.flow_kg_s;
    entry_scale_ = (convection::entry_factor_local(1.0) - 1.0)
                   * cube_root(section.diameter_m * section.diameter_m);
    const double pressure_over_r =
        model.surroundings_.air_pressure_pa / flow.fit.gas_constant_j_kgk;
    natural_scale_ =
        installation.inside_heat == InsideHeat::disturbed
            ? cube(convection::tall_wall_factor_gas) * gravity * pressure_over_r * pressure_over_r
            : 0.0;
}

/// dy/dxi.
double FlueModel::Straight::slope_at(double y, double xi) {
    const double gas_k = temperature_k(y);
    const double difference_k = gas_k - ambient_k_;
    if (std::abs(difference_k) < equal_temperature_k) {
        return 0.0;
    }
    const GasFit& fit = flow_.fit;
    const double u = gas_fit_range.u_of(gas_k);
    const double viscosity = fit.viscosity_pa_s(u);
    const double conductivity = fit.conductivity_w_mk(u);
    const double specific_heat = fit.specific_heat_j_kgk(u);
    const double re = mass_flux_ * section_.diameter_m / viscosity;

    // convection::entry_factor_local() without its root: xi is the cube root of the distance.
    const double entry = 1.0 + entry_scale_ / (xi * xi);
    balance_.gas_k = gas_k;
    balance_.forced_w_m2k = entry * convection::pipe_gnielinski_gas_floored(re)
                            * fit.conductivity_prandtl_w_mk(u) / section_.diameter_m;
    // A tall wall has h = F k (g dT Pr / (T nu^2))^(1/3); in the cube the powers collapse.
    balance_.natural_cubed_w3_m6k4 =
        natural_scale_ * conductivity * conductivity * specific_heat / (viscosity * cube(gas_k));
    const WallBalance::Answer answer = balance_.solve(ambient_k_ + flow_.wall_share * difference_k);
    flow_.wall_k = answer.inner_k;
    flow_.wall_share = (answer.inner_k - ambient_k_) / difference_k;
    return -3.0 * xi * xi * heated_ * answer.flux_w_m2 / (specific_heat * difference_k);
}

/// Buoyancy and friction of one cell; `cubic` holds y and its slope at both ends.
void FlueModel::Straight::add_pressures(double xi,
                                        double step,
                                        const std::array<double, 4>& cubic) {
    const Surroundings& around = model_.surroundings_;
    const double steepness = section_.rise_m / section_.length_m;
    const double roughness = section_.roughness_m / section_.diameter_m;
    const double density_k = around.air_pressure_pa / flow_.fit.gas_constant_j_kgk;
    double buoyancy = 0.0;
    double friction = 0.0;
    for (std::size_t i = 0; i < gauss_points.size(); ++i) {
        const double share = gauss_points[i];
        const double y = hermite(share, step, cubic[0], cubic[1], cubic[2], cubic[3]);
        const double gas_k = temperature_k(y);
        const double density = density_k / gas_k;
        const double here = xi + share * step;
        const double distance = cube(here);
        const double height_m = flow_.height_m + steepness * (distance - start_);
        // Both columns get lighter with height by the same share; to first order.
        const double thinning =
            1.0 - around.outdoor_density_kg_m3 * gravity * height_m / around.air_pressure_pa;
        const double re =
            mass_flux_ * section_.diameter_m / flow_.fit.viscosity_pa_s(gas_fit_range.u_of(gas_k));
        const double stretch = gauss_weights[i] * step * 3.0 * here * here;
        buoyancy += stretch * (around.outdoor_density_kg_m3 - density) * thinning;
        friction += stretch * friction::churchill_1977(re, roughness) / density;
    }
    buoyancy *= gravity * steepness;
    friction *= 0.5 * mass_flux_ * mass_flux_ / section_.diameter_m;
    flow_.sums.buoyancy_pa += buoyancy;
    flow_.sums.friction_pa += friction;
    flow_.pressure_pa += buoyancy - friction;
}

void FlueModel::Straight::march() {
    const double enthalpy_before = flow_.enthalpy_j_kg();
    const double temperature_before = flow_.temperature_k;
    const double xi_start = cube_root(start_);
    const double xi_length = cube_root(start_ + section_.length_m) - xi_start;
    double slope = slope_at(0.0, xi_start);
    const double transfer_units = std::abs(slope) * section_.length_m / (3.0 * xi_start * xi_start);
    const int cells =
        model_.case_->cells_factor
        * (1 + static_cast<int>(std::fmin(transfer_units / cell_transfer_units, most_cells)));
    const double step = xi_length / cells;
    double y = 0.0;
    for (int cell = 0; cell < cells; ++cell) {
        const double xi = xi_start + step * cell;
        const double k1 = cell == 0 ? slope : slope_at(y, xi);
        const double k2 = slope_at(y + 0.5 * step * k1, xi + 0.5 * step);
        const double k3 = slope_at(y + 0.5 * step * k2, xi + 0.5 * step);
        const double k4 = slope_at(y + step * k3, xi + step);
        const double next = y + step / 6.0 * (k1 + 2.0 * (k2 + k3) + k4);
        add_pressures(xi, step, {y, next, k1, k4});
        y = next;
    }
    flow_.temperature_k = temperature_k(y);
    flow_.sums.heat_loss_w += flow_.flow_kg_s * (enthalpy_before - flow_.enthalpy_j_kg());
    // The gas speeds up or slows down with its volume.
    const double acceleration = mass_flux_ * mass_flux_ * flow_.fit.gas_constant_j_kgk
                                / model_.surroundings_.air_pressure_pa
                                * (flow_.temperature_k - temperature_before);
    flow_.pressure_pa -= acceleration;
    flow_.sums.acceleration_pa += acceleration;
    flow_.distance_m += section_.length_m;
    flow_.height_m += section_.rise_m;
    flow_.since_disturbance_m += section_.length_m;
}

void FlueModel::march_straight(Flow& flow, const Section& section, const Prepared& prepared) const {
    Straight(*this, section, prepared, flow).march();
}

} // namespace fluewright
