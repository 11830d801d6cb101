#include "en13384_run.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/march/wall_heat.hpp"
#include "fluewright/physics/atmosphere.hpp"
#include "fluewright/physics/european_chimney.hpp"
#include "fluewright/physics/wall_layer.hpp"

#include <algorithm>

namespace fluewright::european {
namespace {

constexpr double unheated_k = 273.15;
constexpr double outdoor_wet_k = 273.15;
constexpr double short_outside_over_diameter = 3.0;

double value_of(DefaultId id) {
    return catalog::default_of(id).value;
}

double zeta_of(const Case& c, std::size_t index) {
    const Section& s = c.sections[index];
    if (s.loss_given || index == 0) {
        return s.loss;
    }
    switch (s.kind) {
    case PartKind::elbow:
        return bend_zeta(s.turn_rad, straight_behind_m(c, index) / s.diameter_m);
    case PartKind::tee:
        return s.turn_rad > 0.0 ? tee_zeta(s.turn_rad) : std::max(s.loss, 0.0);
    case PartKind::reducer: {
        const double ratio = std::min(s.area_m2 / c.sections[index - 1].area_m2, 1.0);
        return std::min(s.loss, sudden_reduction_zeta(ratio));
    }
    case PartKind::increaser: {
        // The table's velocity is that before the step, the section's own that behind it.
        const double ratio = std::min(c.sections[index - 1].area_m2 / s.area_m2, 1.0);
        return std::min(s.loss, sudden_enlargement_zeta(ratio) / (ratio * ratio));
    }
    default:
        return s.loss;
    }
}

double ambient_k(Zone zone, const Conditions& conditions) {
    if (conditions.purpose == Purpose::draught || zone == Zone::outdoors) {
        return conditions.outdoor_k;
    }
    return zone == Zone::room ? value_of(DefaultId::room_temperature_k) : unheated_k;
}

double outside_w_m2k(const Section& s, double length_m) {
    const bool outdoors =
        s.zone == Zone::outdoors && length_m >= short_outside_over_diameter * s.diameter_m;
    return value_of(outdoors ? DefaultId::outer_coefficient_outdoors_w_m2k
                             : DefaultId::outer_coefficient_indoors_w_m2k);
}

} // namespace

Conditions conditions_of(const Case& c, Purpose purpose) {
    Conditions made;
    made.purpose = purpose;
    made.warm_factor =
        purpose == Purpose::draught ? value_of(DefaultId::wall_not_warm_factor) : 1.0;
    switch (purpose) {
    case Purpose::draught:
        made.outdoor_k = value_of(DefaultId::outdoor_temperature_mild_k);
        break;
    case Purpose::wall_dry:
        made.outdoor_k = value_of(DefaultId::outdoor_temperature_wall_check_k);
        break;
    case Purpose::wall_wet:
        made.outdoor_k = outdoor_wet_k;
        break;
    }
    // The pressure of the least draught serves all checks: it hardly moves a wall temperature.
    made.air_pressure_pa = air_pressure_pa(value_of(DefaultId::reference_pressure_pa),
                                           atmosphere::altitude_m(c.air_pressure_pa),
                                           value_of(DefaultId::outdoor_temperature_mild_k));
    made.outdoor_density_kg_m3 = made.air_pressure_pa / (air_gas_constant_j_kgk * made.outdoor_k);
    return made;
}

double resistance_with_safety_pa(double resistance_pa, double velocity_change_pa) {
    const double se = value_of(DefaultId::flow_resistance_factor);
    return se * resistance_pa + (velocity_change_pa >= 0.0 ? se : 1.0) * velocity_change_pa;
}

RunTerms run_terms(const Case& c, const Firing& firing, const GasFit& gas, Purpose purpose) {
    RunTerms run;
    run.conditions = conditions_of(c, purpose);
    run.parts = stretches_of(c, zeta_of);
    std::array<double, 2> lengths{};
    for (const MethodStretch& part : run.parts) {
        lengths[part.connector ? 1 : 0] += part.length_m;
    }
    double temperature_k = firing.gas_temperature_k;
    run.chimney_entry_k = temperature_k;
    const double outlet_density =
        run.conditions.air_pressure_pa / (gas.gas_constant_j_kgk * temperature_k);
    const double outlet_velocity =
        firing.gas_flow_kg_s / (outlet_density * c.appliance.outlet_area_m2);
    double head_before_pa = 0.5 * outlet_density * outlet_velocity * outlet_velocity;
    for (const MethodStretch& part : run.parts) {
        const Section& s = part.at(c);
        const WallBuild& wall = c.walls[s.wall];
        const Stretch given{
            .flow_kg_s = firing.gas_flow_kg_s,
            .entry_k = temperature_k,
            .ambient_k = ambient_k(s.zone, run.conditions),
            .air_pressure_pa = run.conditions.air_pressure_pa,
            .outdoor_density_kg_m3 = run.conditions.outdoor_density_kg_m3,
            .length_m = part.length_m,
            .rise_m = part.rise_m,
            .entry_length_m = lengths[part.connector ? 1 : 0],
            .diameter_m = s.diameter_m,
            .area_m2 = s.area_m2,
            .perimeter_m = s.perimeter_m,
            .roughness_m = s.roughness_m,
            .zeta = part.zeta,
            .outside_diameter_m = outside_diameter_m(wall, s.diameter_m),
            .resistance_m2k_w = wall_resistance_m2k_w(
                wall, s.diameter_m, s.rectangular ? wall_layer::rectangular_shape_factor : 1.0),
            .outside_w_m2k = outside_w_m2k(s, part.length_m),
            .warm_factor = run.conditions.warm_factor};
        const StretchTerms found = solve_stretch(given, gas);
        const double change_pa = found.velocity_head_pa - head_before_pa;
        head_before_pa = found.velocity_head_pa;
        temperature_k = found.outlet_k;
        const double resistance = resistance_with_safety_pa(found.resistance_pa, change_pa);
        if (part.connector) {
            run.connector_draught_pa += found.draught_pa;
            run.connector_resistance_pa += resistance;
            run.chimney_entry_k = temperature_k;
        } else {
            run.draught_pa += found.draught_pa;
            run.resistance_pa += resistance;
        }
        run.given.push_back(given);
        run.found.push_back(found);
        run.velocity_change_pa.push_back(change_pa);
    }
    run.outlet_k = temperature_k;
    if (!run.given.empty()) {
        const Stretch& last = run.given.back();
        const double inside = run.found.back().inside_w_m2k;
        run.last_overall_w_m2k = overall_coefficient_w_m2k(
            {.inside_w_m2k = inside,
             .resistance_m2k_w = last.resistance_m2k_w,
             .inside_over_outside_diameter = last.diameter_m / last.outside_diameter_m,
             .outside_w_m2k = value_of(DefaultId::outer_coefficient_outdoors_w_m2k),
             .warm_factor = 1.0});
        run.inner_wall_k =
            inner_wall_k(run.outlet_k, run.conditions.outdoor_k, run.last_overall_w_m2k, inside);
    }
    return run;
}

} // namespace fluewright::european
