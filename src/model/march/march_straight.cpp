#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/friction.hpp"
#include "straight.hpp"

#include <algorithm>

/// Heat, buoyancy and friction along one straight.   [theory eq. 14 to 17]
///
/// The gas temperature is marched as y = ln((T - T_a)/(T_0 - T_a)), T_a being the air around: under
/// a constant overall coefficient y is a straight line, so that only changes of the coefficient
/// cost accuracy. The independent variable is xi, the cube root of the distance from the last
/// disturbance, in which the entry effect has no corner. Heat, buoyancy and friction are summed
/// over the same two or three points of a cell.
namespace fluewright {
namespace {

using straight_parts::viscosity_power;

/// A straight gets one cell for each of these steps in y, by the loss near its start.
constexpr double cell_transfer_units = 0.4;
constexpr double most_cells = 1000.0;

/// A straight that loses less than this needs only two points.
constexpr double few_transfer_units = 0.2;

/// The loss near the start serves as the first stage where y has changed less than this till there.
constexpr double small_change = 0.01;

/// Nearer than this to the air around, the gas is taken to lose nothing more.
constexpr double equal_temperature_k = 1e-6;

/// Nearer than this, it is taken as equal, and the rest of a straight as one cell: a trickle would
/// take a thousand of them.
constexpr double spent_k = 1e-4;

/// Farther than this from where a stage was taken, its slopes no longer lead to the answer.
constexpr double far_off_y = 0.5;
constexpr double least_steeper = 0.5;
constexpr double most_bend = 0.5;

/// Of the temperature, about: what the other properties grow with.
constexpr double heat_power = 0.17;

/// Of gas in a pipe, about: for a first guess of the wall's temperature only.
constexpr double usual_emissivity = 0.12;

} // namespace

FlueModel::Straight::Straight(const FlueModel& model,
                              const Section& section,
                              const Prepared& prepared,
                              Flow& flow)
    : model_(model), section_(section), prepared_(prepared), flow_(flow), balance_{} {
    const Case& resolved = *model.case_;
    balance_.outside = (*model.heats_)[prepared.heat].get();
    balance_.emission =
        &model.layout_->emissions[static_cast<std::size_t>(flow.choice)][prepared.emission];
    balance_.log_path = flow.log_path;
    balance_.radiating_w_m2k4 = 0.5 * (resolved.walls[section.wall].inner_emissivity + 1.0)
                                * constants::stefan_boltzmann_w_m2k4;
    ambient_k_ = balance_.outside->ambient_k();
    start_difference_k_ = flow.temperature_k - ambient_k_;
    mass_flux_ = flow.flow_kg_s / section.area_m2;
    flux_diameter_ = mass_flux_ * section.diameter_m;
    heated_ = section.perimeter_m / flow.flow_kg_s;
    const double pressure_over_r =
        model.surroundings_.air_pressure_pa / flow.fit.gas_constant_j_kgk;
    natural_scale_ = resolved.inside_heat == InsideHeat::disturbed
                         ? cube(convection::tall_wall_factor_gas) * constants::gravity_m_s2
                               * pressure_over_r * pressure_over_r
                         : 0.0;
    opposed_scale_ =
        resolved.inside_heat == InsideHeat::opposed_upper
            ? constants::gravity_m_s2 * pressure_over_r * pressure_over_r * cube(section.diameter_m)
            : 0.0;
    if (!model.memory_.empty()) {
        remember(model.memory_[static_cast<std::size_t>(&section - resolved.sections.data())]);
    }
}

/// What the gas itself brings to a stage, wherever that lies; `share_left` is exp(y).
void FlueModel::Straight::set_gas(double y, double share_left) {
    y_ = y;
    difference_k_ = start_difference_k_ * share_left;
    set_gas_at(ambient_k_ + difference_k_);
}

void FlueModel::Straight::set_gas_at(double gas_k) {
    const GasFit& fit = flow_.fit;
    const double u = gas_fit_range.u_of(gas_k);
    const double viscosity = fit.viscosity_pa_s(u);
    const double conductivity = fit.conductivity_w_mk(u);
    reynolds_ = flux_diameter_ / viscosity;
    specific_heat_j_kgk_ = fit.specific_heat_j_kgk(u);
    forced_w_m2k_ = convection::pipe_gnielinski_gas_floored(reynolds_)
                    * fit.conductivity_prandtl_w_mk(u) / section_.diameter_m;
    balance_.gas_k = gas_k;
    // A tall wall has h = F k (g dT Pr / (T nu^2))^(1/3); in the cube the powers collapse.
    balance_.natural_cubed_w3_m6k4 = natural_scale_ * conductivity * conductivity
                                     * specific_heat_j_kgk_ / (viscosity * cube(gas_k));
    if (opposed_scale_ > 0.0) {
        const double grashof_per_k = opposed_scale_ / (viscosity * viscosity * cube(gas_k));
        balance_.opposed_per_k = grashof_per_k
                                 * convection::opposed_buoyancy_per_grashof(
                                     reynolds_, specific_heat_j_kgk_ * viscosity / conductivity);
    }
}

/// The loss at a place, for the gas last set.
void FlueModel::Straight::take_stage(double xi) {
    const double entry = entry_at(xi);
    const bool equal = std::abs(difference_k_) < equal_temperature_k;
    WallBalance::Answer answer{.inner_k = balance_.gas_k,
                               .flux_w_m2 = 0.0,
                               .flux_slope_w_m2k = 0.0,
                               .wall_per_gas = 0.0,
                               .wall_per_forced_k = 0.0};
    if (!equal) {
        balance_.forced_w_m2k = entry * forced_w_m2k_;
        balance_.warmer_k = warmer_at(xi);
        answer = balance_.solve(wall_guess_k(entry));
    }
    const double per_wall_k =
        answer.flux_w_m2 != 0.0 ? answer.flux_slope_w_m2k / answer.flux_w_m2 : 0.0;
    last_.xi = xi;
    last_.distance_m = cube(xi);
    last_.y = y_;
    last_.gas_k = balance_.gas_k;
    last_.reynolds = reynolds_;
    last_.loss_per_m =
        equal ? 0.0 : heated_ * answer.flux_w_m2 / (specific_heat_j_kgk_ * difference_k_);
    last_.loss_slope = per_wall_k * answer.wall_per_gas * difference_k_ - 1.0
                       - heat_power * difference_k_ / balance_.gas_k;
    last_.entry = entry;
    last_.loss_per_entry = per_wall_k * answer.wall_per_forced_k;
    last_.wall_k = answer.inner_k;
    last_.wall_per_gas = answer.wall_per_gas;
    last_.wall_per_entry_k = answer.wall_per_forced_k;
    flow_.wall_k = answer.inner_k;
}

/// The loss of the whole straight in y, about, by the coefficients of both sides halfway to the air
/// around; and from them the wall's share of the temperature difference.
double FlueModel::Straight::expected_transfer_units(double xi) {
    if (std::abs(difference_k_) < equal_temperature_k) {
        return 0.0;
    }
    const double half_k = 0.5 * difference_k_;
    const double outside_w_m2k = balance_.outside->at(ambient_k_ + half_k).flux_w_m2 / half_k;
    const double radiated_w_m2k =
        4.0 * usual_emissivity * balance_.radiating_w_m2k4 * cube(ambient_k_ + half_k);
    balance_.forced_w_m2k = entry_at(xi) * forced_w_m2k_;
    const double inside_w_m2k = balance_.carried_at(half_k).w_m2k + radiated_w_m2k;
    expected_share_ = inside_w_m2k / (inside_w_m2k + outside_w_m2k);
    return heated_ * outside_w_m2k * expected_share_ / specific_heat_j_kgk_ * section_.length_m;
}

/// All stages known, y at each is known better than when it was predicted, and the loss follows by
/// its slope.
template <std::size_t Points>
void FlueModel::Straight::correct(std::array<Stage, Points>& stages, double step, double y) const {
    std::array<double, Points> change{};
    for (std::size_t i = 0; i < Points; ++i) {
        change[i] = -3.0 * step * stages[i].xi * stages[i].xi * stages[i].loss_per_m;
    }
    for (std::size_t i = 0; i < Points; ++i) {
        Stage& stage = stages[i];
        double y_here = y;
        for (std::size_t j = 0; j < Points; ++j) {
            y_here += Gauss<Points>::weights_to_point[i][j] * change[j];
        }
        // A trickle may come out far from where it was looked for: no hotter than it came in, then.
        const bool far_off = std::abs(y_here - stage.y) > far_off_y;
        y_here = far_off ? std::fmin(y_here, 0.0) : y_here;
        const double late = y_here - stage.y;
        const double excess_k = stage.gas_k - ambient_k_;
        const double warmer_k = far_off ? start_difference_k_ * std::exp(y_here) - excess_k
                                        : excess_k * late * (1.0 + 0.5 * late);
        stage.reynolds *= far_off ? std::pow(1.0 + warmer_k / stage.gas_k, -viscosity_power)
                                  : 1.0 - viscosity_power * warmer_k / stage.gas_k;
        stage.gas_k += warmer_k;
        const double steeper = 1.0 + late * stage.loss_slope;
        stage.loss_per_m *=
            far_off ? std::clamp(steeper, least_steeper, 1.0 / least_steeper) : steeper;
        stage.y = y_here;
    }
}

/// The wall's temperature by that of the last stage and its slopes, or by what is expected.
double FlueModel::Straight::wall_guess_k(double entry) const {
    if (last_.wall_k <= 0.0) {
        return ambient_k_ + expected_share_ * difference_k_;
    }
    return last_.wall_k + last_.wall_per_gas * (balance_.gas_k - last_.gas_k)
           + last_.wall_per_entry_k * (entry / last_.entry - 1.0);
}

/// Marches one cell from `y` on and returns y at its end. When `first_is_known`, the last stage
/// taken is its first.
template <std::size_t Points>
double FlueModel::Straight::cell(double xi, double step, double y, bool first_is_known) {
    std::array<Stage, Points> stages;
    double xi_here = xi;
    double y_here = y;
    for (std::size_t i = 0; i < stages.size(); ++i) {
        const double next = xi + Gauss<Points>::points[i] * step;
        // The cubes' difference over the roots': the mean of 1/xi^2 over the distance is 3 over it.
        const double squares = next * next + next * xi_here + xi_here * xi_here;
        const double along_m = (next - xi_here) * squares;
        // What the stage before tells of the mean loss from here to there.
        const double mean_entry = 1.0 + 3.0 * prepared_.entry_scale / squares;
        const double by_entry = last_.loss_per_entry * (mean_entry / last_.entry - 1.0);
        const double change = -last_.loss_per_m * along_m;
        // Over many transfer units, as of a trickle, a slope tells no more than the direction.
        const double bend = std::clamp(0.5 * last_.loss_slope * change, -most_bend, most_bend);
        y_here += change * (1.0 + by_entry + bend);
        if (i > 0 || !first_is_known) {
            set_gas(y_here, std::exp(y_here));
            take_stage(next);
        }
        stages[i] = last_;
        xi_here = next;
    }
    correct(stages, step, y);
    correct(stages, step, y);
    add_pressures(stages, step);
    for (std::size_t i = 0; i < stages.size(); ++i) {
        y -= step * Gauss<Points>::weights[i] * 3.0 * stages[i].xi * stages[i].xi
             * stages[i].loss_per_m;
    }
    return y;
}

/// Marches all cells and returns y at the end. There is but one in most straights; else its length
/// is chosen by the loss near the start. The gas is set to what enters.
template <std::size_t Points>
double FlueModel::Straight::cells(double xi_start, double xi_length) {
    take_stage(xi_start + Gauss<Points>::points[0] * xi_length);
    flow_.wall_start_k = last_.wall_k;
    const double transfer_units = std::abs(last_.loss_per_m) * section_.length_m;
    // A trickle has the temperature around it long before cells of that length could follow.
    if (transfer_units > most_cells * cell_transfer_units) {
        last_.loss_per_m = 0.0;
        const double spent = std::log(0.5 * equal_temperature_k / std::abs(start_difference_k_));
        return cell<Points>(xi_start, xi_length, spent, false);
    }
    const double many = std::fmin(transfer_units / cell_transfer_units, most_cells);
    const int count = model_.case_->cells_factor * (1 + static_cast<int>(many));
    const bool first_is_known =
        count == 1
        && std::abs(last_.loss_per_m) * (last_.distance_m - prepared_.start_m) < small_change;
    const double step = xi_length / count;
    double y = 0.0;
    for (int i = 0; i < count; ++i) {
        y = cell<Points>(xi_start + step * i, step, y, i == 0 && first_is_known);
        if (i + 1 < count && std::abs(start_difference_k_) * std::exp(y) < spent_k) {
            y = std::log(0.5 * equal_temperature_k / std::abs(start_difference_k_));
            last_.loss_per_m = 0.0;
            const double xi = xi_start + step * (i + 1);
            return cell<Points>(xi, xi_start + xi_length - xi, y, false);
        }
    }
    return y;
}

void FlueModel::Straight::march() {
    const double enthalpy_before = flow_.enthalpy_j_kg();
    const double temperature_before = flow_.temperature_k;
    const double friction_before = flow_.sums.friction_pa;
    if (memory_ != nullptr) {
        march_beside_memory();
    } else {
        march_balanced();
    }
    flow_.sums.heat_loss_w += flow_.flow_kg_s * (enthalpy_before - flow_.enthalpy_j_kg());
    // The gas speeds up or slows down with its volume.
    const double acceleration = mass_flux_ * mass_flux_ * flow_.fit.gas_constant_j_kgk
                                / model_.surroundings_.air_pressure_pa
                                * (flow_.temperature_k - temperature_before);
    flow_.pressure_pa -= acceleration;
    flow_.sums.acceleration_pa += acceleration;
    flow_.distance_m += section_.length_m;
    flow_.height_m += section_.rise_m;
    if (flow_.answers_asked) {
        carry_answers(temperature_before, flow_.sums.friction_pa - friction_before, acceleration);
    }
}

/// With the mean of both ends for the temperature along the straight.
void FlueModel::Straight::carry_answers(double temperature_before_k,
                                        double friction_pa,
                                        double acceleration_pa) {
    constexpr double friction_power = 1.8; // of the flow
    const double mean_k = 0.5 * (temperature_before_k + flow_.temperature_k);
    const double weight_pa_k = model_.surroundings_.air_pressure_pa
                               / (flow_.fit.gas_constant_j_kgk * mean_k * mean_k)
                               * constants::gravity_m_s2 * section_.rise_m;
    const double expansion_pa_k = mass_flux_ * mass_flux_ * flow_.fit.gas_constant_j_kgk
                                  / model_.surroundings_.air_pressure_pa;
    for (FlowAnswer& answer : flow_.answers) {
        const double by_flow = answer.flow_kg_s / flow_.flow_kg_s;
        const double before_k = answer.temperature_k;
        answer.temperature_k = kept_per_k_ * before_k + kept_per_flow_k_ * by_flow;
        const double warmer_k = 0.5 * (before_k + answer.temperature_k);
        answer.pressure_pa +=
            weight_pa_k * warmer_k - friction_pa * (friction_power * by_flow + warmer_k / mean_k)
            - acceleration_pa * 2.0 * by_flow - expansion_pa_k * (answer.temperature_k - before_k);
    }
}

/// Along walls in balance with the gas.
void FlueModel::Straight::march_balanced() {
    const double xi_start = prepared_.xi_start;
    const double xi_length = prepared_.xi_length;
    set_gas(0.0, 1.0);
    const bool loses_little =
        expected_transfer_units(xi_start + Gauss<2>::points[0] * xi_length) < few_transfer_units;
    const double y = loses_little ? cells<2>(xi_start, xi_length) : cells<3>(xi_start, xi_length);
    const double share_left = std::exp(y);
    if (flow_.wants_wall) {
        set_gas(y, share_left);
        take_stage(xi_start + xi_length);
    }
    flow_.temperature_k = ambient_k_ + start_difference_k_ * share_left;
    if (flow_.answers_asked) {
        kept_per_k_ = share_left * (1.0 + y * last_.loss_slope);
        kept_per_flow_k_ = start_difference_k_ * share_left * y
                           * (straight_parts::carried_power * last_.loss_per_entry - 1.0);
    }
}

void FlueModel::march_straight(Flow& flow, const Section& section, const Prepared& prepared) const {
    Straight(*this, section, prepared, flow).march();
}

} // namespace fluewright
