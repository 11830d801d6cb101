#include "kindling.hpp"

#include "fluewright/model/states/vent_limit.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/friction.hpp"
#include "model/march/shift_stations.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fluewright {
namespace {

/// Simpson's rule over one straight.
constexpr std::array<double, 3> places{0.0, 0.5, 1.0};
constexpr std::array<double, 3> weights{1.0 / 6.0, 4.0 / 6.0, 1.0 / 6.0};

/// The exponential fall of temperature is followed in lengths of at most this many transfer units.
constexpr double most_transfer_units = 0.5;
constexpr double most_cells = 200.0;

struct Column {
    const Surroundings& around;
    const GasFit& fit;
    double flow_kg_s;
    double temperature_k;
    double head_pa; ///< velocity head where the gas is
    MarchResult sums{};

    [[nodiscard]] double density_kg_m3(double gas_k) const {
        return around.air_pressure_pa / (fit.gas_constant_j_kgk * gas_k);
    }

    [[nodiscard]] double velocity_head_pa(double area_m2) const {
        const double flux = flow_kg_s / area_m2;
        return 0.5 * flux * flux / density_kg_m3(temperature_k);
    }

    [[nodiscard]] double enthalpy_w() const {
        return flow_kg_s * fit.enthalpy_j_kg(gas_fit_range.u_of(temperature_k));
    }

    /// Static pressure over that at the outlet, outdoors at the same height being nought.
    [[nodiscard]] double pressure_pa() const {
        return sums.buoyancy_pa - sums.friction_pa - sums.fittings_pa - sums.acceleration_pa;
    }

    void fitting(const Section& section);
    void straight(const Section& section);
};

void Column::fitting(const Section& section) {
    const double head_behind_pa = velocity_head_pa(section.area_m2);
    sums.fittings_pa += section.loss * head_behind_pa;
    sums.acceleration_pa += head_behind_pa - head_pa;
    head_pa = head_behind_pa;
}

void Column::straight(const Section& section) {
    const double wall_k = around.temperature_k[static_cast<std::size_t>(section.zone)];
    const double flux = flow_kg_s / section.area_m2;
    const auto exponent_per_m = [&](double gas_k) {
        const double u = gas_fit_range.u_of(gas_k);
        const double re = flux * section.diameter_m / fit.viscosity_pa_s(u);
        const double inside = convection::pipe_gnielinski_gas_floored(re)
                              * fit.conductivity_prandtl_w_mk(u) / section.diameter_m;
        return inside * section.perimeter_m / (flow_kg_s * fit.specific_heat_j_kgk(u));
    };
    const double units = exponent_per_m(temperature_k) * section.length_m;
    const int cells = 1 + static_cast<int>(std::fmin(units / most_transfer_units, most_cells));
    const double length_m = section.length_m / cells;
    const double rise_m = section.rise_m / cells;
    for (int cell = 0; cell < cells; ++cell) {
        const double start_k = temperature_k;
        // The coefficient of the gas half way along the cell.
        const double halfway_k =
            wall_k + (start_k - wall_k) * std::exp(-0.5 * exponent_per_m(start_k) * length_m);
        const double per_m = exponent_per_m(halfway_k);
        for (std::size_t i = 0; i < places.size(); ++i) {
            const double gas_k =
                wall_k + (start_k - wall_k) * std::exp(-per_m * length_m * places[i]);
            const double density = density_kg_m3(gas_k);
            const double re =
                flux * section.diameter_m / fit.viscosity_pa_s(gas_fit_range.u_of(gas_k));
            sums.buoyancy_pa += weights[i] * (around.outdoor_density_kg_m3 - density)
                                * constants::gravity_m_s2 * rise_m;
            sums.friction_pa +=
                weights[i] * friction::churchill_1977(re, section.roughness_m / section.diameter_m)
                * length_m / section.diameter_m * 0.5 * flux * flux / density;
        }
        temperature_k = wall_k + (start_k - wall_k) * std::exp(-per_m * length_m);
    }
    // The momentum flux of a gas that cools in a straight falls by twice the head.
    const double head_behind_pa = velocity_head_pa(section.area_m2);
    sums.acceleration_pa += 2.0 * (head_behind_pa - head_pa);
    head_pa = head_behind_pa;
}

/// The profile, its pressures still counted from nought at the outlet.
class Profile {
public:
    Profile(const Column& column, Detail detail, std::vector<Station>& stations)
        : column_(column), kept_(detail == Detail::stations), stations_(stations) {}

    void add(std::size_t index, const Section& section, double joint_height_m) {
        if (!kept_) {
            return;
        }
        const double flux = column_.flow_kg_s / section.area_m2;
        Station s;
        s.section = index;
        s.distance_m = distance_m_ += section.length_m;
        s.height_m = joint_height_m + section.rise_m;
        s.gas_temperature_k = column_.temperature_k;
        s.inner_wall_k = s.outer_wall_k =
            column_.around.temperature_k[static_cast<std::size_t>(section.zone)];
        s.velocity_m_s = flux / column_.density_kg_m3(column_.temperature_k);
        s.reynolds = flux * section.diameter_m
                     / column_.fit.viscosity_pa_s(gas_fit_range.u_of(column_.temperature_k));
        s.flow_kg_s = column_.flow_kg_s;
        s.joint_pressure_pa =
            pressure_pa_ - column_.around.pressure_pa(section.zone, joint_height_m);
        pressure_pa_ = column_.pressure_pa();
        s.pressure_pa = pressure_pa_;
        s.pressure_in_zone_pa = pressure_pa_ - column_.around.pressure_pa(section.zone, s.height_m);
        if (stations_.empty()) {
            stations_.push_back(s); // the collar has no length: its two ends are one
        }
        stations_.push_back(s);
    }

    void shift(double outlet_pa) { shift_stations(stations_, outlet_pa); }

private:
    const Column& column_;
    bool kept_;
    std::vector<Station>& stations_;
    double distance_m_{};
    double pressure_pa_{};
};

/// With a share of the gas that kindling gives.
void kindle(const FlueModel& model, double share, Detail detail, StateResult& state) {
    const Case& c = model.resolved();
    state.stations.clear();
    Column column{.around = model.surroundings(),
                  .fit = c.gas_low().products(),
                  .flow_kg_s = share * c.kindling.gas_flow_kg_s,
                  .temperature_k = c.kindling.gas_temperature_k,
                  .head_pa = 0.0};
    column.head_pa = column.velocity_head_pa(c.appliance.outlet_area_m2);
    const double enthalpy_before = column.enthalpy_w();
    Profile profile(column, detail, state.stations);
    double height_m = 0.0;
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        const Section& section = c.sections[i];
        column.fitting(section);
        column.sums.greatest_flux_kg_m2s =
            std::max(column.sums.greatest_flux_kg_m2s, column.flow_kg_s / section.area_m2);
        if (section.length_m > 0.0) {
            column.straight(section);
        }
        profile.add(i, section, height_m);
        height_m += section.rise_m;
    }
    MarchResult& flow = column.sums;
    flow.top_pressure_pa = model.surroundings().top_pressure_pa;
    flow.outlet_pressure_pa = flow.top_pressure_pa - column.pressure_pa();
    profile.shift(flow.outlet_pressure_pa);
    flow.enthalpy_in_w = enthalpy_before;
    flow.enthalpy_out_w = column.enthalpy_w();
    flow.heat_loss_w = flow.enthalpy_in_w - flow.enthalpy_out_w;
    flow.top_temperature_k = column.temperature_k;
    flow.top_flow_kg_s = column.flow_kg_s;
    flow.top_velocity_m_s =
        column.flow_kg_s / c.sections.back().area_m2 / column.density_kg_m3(column.temperature_k);
    state.burn_rate_kg_s = share * c.kindling.burn_rate_kg_s;
    state.gas_flow_kg_s = column.flow_kg_s;
    state.gas_temperature_k = c.kindling.gas_temperature_k;
    state.draft_pa = model.draft_pa(flow);
    state.flow = flow;
}

} // namespace

void solve_kindling(const FlueModel& model, Detail detail, StateResult& state) {
    const auto holds = [&] {
        const GasStream stream{.gas = GasChoice::low_fire,
                               .air_share = 0.0,
                               .flow_kg_s = state.gas_flow_kg_s,
                               .temperature_k = state.gas_temperature_k};
        return vent_limit::holds(model, stream, state.flow, state.draft_pa);
    };
    kindle(model, 1.0, detail, state);
    if (holds()) {
        return;
    }
    const double share = vent_limit::greatest_share([&](double tried) {
        kindle(model, tried, Detail::totals, state);
        return holds();
    });
    kindle(model, share, detail, state);
    state.status = Status::cannot_vent;
    state.draft_pa = std::max(state.draft_pa, -vent_limit::overpressure_pa);
}

} // namespace fluewright
