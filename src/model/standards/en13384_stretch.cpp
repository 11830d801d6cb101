#include "fluewright/model/march/wall_heat.hpp"
#include "fluewright/model/standards/en13384.hpp"
#include "fluewright/physics/air_gap.hpp"
#include "fluewright/physics/european_chimney.hpp"
#include "fluewright/physics/wall_layer.hpp"

#include <cmath>

namespace fluewright::european {
namespace {

constexpr double layers_at_k = 473.15;
constexpr double gap_hot_k = 448.15;
constexpr double gap_cold_k = 398.15;

double gap_resistance_m2k_w(const WallBuild& wall, std::size_t index, double inner_radius_m) {
    const double hot = index > 0 ? wall.layers[index - 1].emissivity : wall.inner_emissivity;
    const double cold =
        index + 1 < wall.layer_count ? wall.layers[index + 1].emissivity : wall.outer_emissivity;
    const air_gap::Gap gap{.width_m = wall.layers[index].thickness_m,
                           .height_m = wall_layer::tallest_gap_cell_m,
                           .inner_radius_m = inner_radius_m,
                           .inner_emissivity = hot,
                           .outer_emissivity = cold,
                           .pressure_pa = constants::standard_pressure_pa};
    return 1.0 / air_gap::conductance_w_m2k(gap, gap_hot_k, gap_cold_k);
}

} // namespace

StretchTerms solve_stretch(const Stretch& s, const GasFit& gas) {
    StretchTerms t{};
    t.psi = t.psi_smooth = 0.0;
    t.mean_k = s.entry_k;
    constexpr int most_steps = 100;
    for (int step = 0; step < most_steps; ++step) {
        t.specific_heat_j_kgk = gas.specific_heat_j_kgk(gas_fit_range.u_of(t.mean_k));
        t.conductivity_w_mk = conductivity_w_mk(t.mean_k);
        t.viscosity_pa_s = viscosity_pa_s(t.mean_k);
        t.prandtl = t.viscosity_pa_s * t.specific_heat_j_kgk / t.conductivity_w_mk;
        t.density_kg_m3 = s.air_pressure_pa / (gas.gas_constant_j_kgk * t.mean_k);
        t.velocity_m_s = s.flow_kg_s / (s.area_m2 * t.density_kg_m3);
        t.reynolds = s.flow_kg_s * s.diameter_m / (s.area_m2 * t.viscosity_pa_s);
        t.psi = friction_factor(t.reynolds, s.roughness_m / s.diameter_m);
        t.psi_smooth = friction_factor(t.reynolds, 0.0);
        t.nusselt = nusselt({.re = t.reynolds,
                             .pr = t.prandtl,
                             .psi = t.psi,
                             .psi_smooth = t.psi_smooth,
                             .diameter_over_length = s.diameter_m / s.entry_length_m});
        t.inside_w_m2k = t.conductivity_w_mk * t.nusselt / s.diameter_m;
        t.overall_w_m2k = overall_coefficient_w_m2k(
            {.inside_w_m2k = t.inside_w_m2k,
             .resistance_m2k_w = s.resistance_m2k_w,
             .inside_over_outside_diameter = s.diameter_m / s.outside_diameter_m,
             .outside_w_m2k = s.outside_w_m2k,
             .warm_factor = s.warm_factor});
        t.cooling_number =
            s.perimeter_m * t.overall_w_m2k * s.length_m / (s.flow_kg_s * t.specific_heat_j_kgk);
        const Cooling cooling{
            .entry_k = s.entry_k, .ambient_k = s.ambient_k, .number = t.cooling_number};
        t.outlet_k = outlet_temperature_k(cooling);
        const double before_k = t.mean_k;
        t.mean_k = mean_temperature_k(cooling);
        if (std::abs(t.mean_k - before_k) < 1e-11 * t.mean_k) {
            break;
        }
    }
    t.velocity_head_pa = 0.5 * t.density_kg_m3 * t.velocity_m_s * t.velocity_m_s;
    t.draught_pa = s.rise_m * gravity_m_s2 * (s.outdoor_density_kg_m3 - t.density_kg_m3);
    t.resistance_pa = (t.psi * s.length_m / s.diameter_m + s.zeta) * t.velocity_head_pa;
    return t;
}

double wall_resistance_m2k_w(const WallBuild& wall, double inside_diameter_m, double shape_factor) {
    double sum = wall.fixed_resistance_m2k_w;
    double inner_m = inside_diameter_m;
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        const WallLayer& layer = wall.layers[i];
        const double outer_m = inner_m + 2.0 * layer.thickness_m;
        if (layer.air_gap) {
            sum += gap_resistance_m2k_w(wall, i, 0.5 * inner_m) * inside_diameter_m / inner_m;
        } else {
            const double conductivity =
                layer.conductivity_w_mk
                + layer.conductivity_slope_w_mk2
                      * (layers_at_k - wall_layer::conductivity_reference_k);
            sum += layer_resistance_m2k_w(
                inside_diameter_m, inner_m, outer_m, conductivity, shape_factor);
        }
        inner_m = outer_m;
    }
    return sum;
}

FlowFactors flow_factors(const combustion::FuelAnalysis& fuel, double moisture) {
    const double net_j_kg = combustion::net_heating_value_j_kg(fuel, moisture);
    const auto per_heat = [&](double air_ratio) {
        const combustion::Products gas =
            combustion::burn(fuel, {.moisture = moisture, .air_ratio = air_ratio});
        struct Pair {
            double inverse_pct;
            double flow;
        };
        return Pair{1.0 / (100.0 * gas.carbon_dioxide_dry),
                    1e6 * gas.gas_per_fuel_kg_kg / net_j_kg}; // g per kW s
    };
    // Two points fix the line.
    const auto rich = per_heat(1.3);
    const auto lean = per_heat(2.6);
    const double slope = (lean.flow - rich.flow) / (lean.inverse_pct - rich.inverse_pct);
    return {.fm1_g_pct_per_kw_s = slope, .fm2_g_per_kw_s = rich.flow - slope * rich.inverse_pct};
}

} // namespace fluewright::european
