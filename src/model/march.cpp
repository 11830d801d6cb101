#include "fluewright/model/march.hpp"

#include "flow.hpp"
#include "fluewright/core/root.hpp"

#include <algorithm>

namespace fluewright {

void FlueModel::pass_joint(Flow& flow, const Section& section) const {
    const auto zone = static_cast<std::size_t>(section.zone);
    const double excess_pa =
        flow.pressure_pa - surroundings_.pressure_pa(section.zone, flow.height_m);
    constexpr double discharge = 0.6;
    const double area_m2 = discharge * section.joint_leak_m2;
    if (excess_pa >= 0.0) {
        const double out = std::fmin(
            area_m2
                * std::sqrt(2.0 * flow.density_kg_m3(surroundings_.air_pressure_pa) * excess_pa),
            0.999 * flow.flow_kg_s);
        flow.flow_kg_s -= out;
        flow.sums.leak_out_kg_s += out;
        flow.sums.enthalpy_leak_w -= out * flow.enthalpy_j_kg();
        return;
    }
    const double in = area_m2 * std::sqrt(-2.0 * surroundings_.density_kg_m3[zone] * excess_pa);
    const double u = gas_fit_range.u_of(surroundings_.temperature_k[zone]);
    const double air_enthalpy = flow.gas->air().enthalpy_j_kg(u);
    const double total = flow.flow_kg_s + in;
    const double mixed = (flow.flow_kg_s * flow.enthalpy_j_kg() + in * air_enthalpy) / total;
    flow.sums.leak_in_kg_s += in;
    flow.sums.enthalpy_leak_w += in * air_enthalpy;
    flow.set_dilution((flow.flow_kg_s * flow.air_share + in) / total);
    flow.flow_kg_s = total;
    flow.temperature_k = flow.fit.temperature_k(mixed, flow.temperature_k);
}

void FlueModel::pass_fitting(Flow& flow, const Section& section) const {
    const double air_pa = surroundings_.air_pressure_pa;
    const double head_before = flow.velocity_head_pa(air_pa, flow.area_m2);
    const double head_after = flow.velocity_head_pa(air_pa, section.area_m2);
    const double lost = section.loss * head_after;
    const double acceleration = head_after - head_before;
    flow.pressure_pa -= lost + acceleration;
    flow.sums.fittings_pa += lost;
    flow.sums.acceleration_pa += acceleration;
    flow.area_m2 = section.area_m2;
    if (section.disturbs) {
        flow.since_disturbance_m = 0.0;
    }
}

Station FlueModel::station_at(const Flow& flow, std::size_t index) const {
    const Section& section = case_->sections[index];
    Station s;
    s.section = index;
    s.distance_m = flow.distance_m;
    s.height_m = flow.height_m;
    s.gas_temperature_k = flow.temperature_k;
    s.flow_kg_s = flow.flow_kg_s;
    s.velocity_m_s =
        flow.flow_kg_s / (section.area_m2 * flow.density_kg_m3(surroundings_.air_pressure_pa));
    s.reynolds = flow.flow_kg_s / section.area_m2 * section.diameter_m
                 / flow.fit.viscosity_pa_s(gas_fit_range.u_of(flow.temperature_k));
    s.pressure_pa = flow.pressure_pa;
    s.pressure_in_zone_pa =
        flow.pressure_pa - surroundings_.pressure_pa(section.zone, flow.height_m);
    s.inner_wall_k = flow.wall_k;
    s.outer_wall_k = flow.wall_k;
    if (section.length_m > 0.0 && flow.wall_k > 0.0) {
        s.outer_wall_k = heats_[prepared_[index].heat].outer_k(flow.wall_k);
    }
    return s;
}

MarchResult FlueModel::march(const GasStream& stream,
                             double outlet_pressure_pa,
                             std::span<Station> stations) const {
    Flow flow;
    flow.choice = stream.gas;
    flow.gas = &case_->gases[static_cast<std::size_t>(stream.gas)];
    flow.set_dilution(stream.air_share);
    flow.flow_kg_s = stream.flow_kg_s;
    flow.temperature_k = stream.temperature_k;
    flow.pressure_pa = outlet_pressure_pa;
    flow.area_m2 = case_->appliance.outlet_area_m2;
    flow.sums.outlet_pressure_pa = outlet_pressure_pa;
    flow.sums.enthalpy_in_w = flow.flow_kg_s * flow.enthalpy_j_kg();

    if (!stations.empty()) {
        stations[0] = station_at(flow, 0);
        stations[0].inner_wall_k = stations[0].outer_wall_k = flow.temperature_k;
    }
    for (std::size_t i = 0; i < case_->sections.size(); ++i) {
        const Section& section = case_->sections[i];
        const double leaked_before = flow.sums.leak_in_kg_s - flow.sums.leak_out_kg_s;
        if (section.joint_leak_m2 > 0.0) {
            pass_joint(flow, section);
        }
        const double leak = flow.sums.leak_in_kg_s - flow.sums.leak_out_kg_s - leaked_before;
        pass_fitting(flow, section);
        if (section.length_m > 0.0) {
            march_straight(flow, section, prepared_[i]);
        }
        if (!stations.empty()) {
            stations[i + 1] = station_at(flow, i);
            stations[i + 1].leak_kg_s = leak;
        }
    }
    flow.sums.mouth_pressure_pa = flow.pressure_pa;
    flow.sums.mouth_temperature_k = flow.temperature_k;
    flow.sums.mouth_flow_kg_s = flow.flow_kg_s;
    flow.sums.mouth_air_share = flow.air_share;
    flow.sums.mouth_velocity_m_s =
        flow.flow_kg_s / (flow.area_m2 * flow.density_kg_m3(surroundings_.air_pressure_pa));
    flow.sums.enthalpy_out_w = flow.flow_kg_s * flow.enthalpy_j_kg();
    return flow.sums;
}

MarchResult FlueModel::solve(const GasStream& stream, std::span<Station> stations) const {
    const double wanted_pa = surroundings_.mouth_pressure_pa;
    if (!has_leaks_) {
        MarchResult result = march(stream, 0.0, stations);
        const double outlet_pa = wanted_pa - result.mouth_pressure_pa;
        for (Station& station : stations) {
            station.pressure_pa += outlet_pa;
            station.pressure_in_zone_pa += outlet_pa;
        }
        result.outlet_pressure_pa = outlet_pa;
        result.mouth_pressure_pa = wanted_pa;
        return result;
    }
    // Leaks let air in where the flue is below its surroundings, which holds the pressure up: the
    // mouth follows the outlet, rising. Widen a bracket round the tight run's answer.
    const auto miss = [&](double outlet_pa) {
        return march(stream, outlet_pa).mouth_pressure_pa - wanted_pa;
    };
    double low = wanted_pa - march(stream, 0.0).mouth_pressure_pa;
    double high = low;
    double f_low = miss(low);
    double f_high = f_low;
    double step = 4.0;
    for (int i = 0; i < 40 && f_low > 0.0; ++i, step *= 2.0) {
        low -= step;
        f_low = miss(low);
    }
    for (int i = 0; i < 40 && f_high < 0.0; ++i, step *= 2.0) {
        high += step;
        f_high = miss(high);
    }
    const Root root = find_root(
        miss, low, high, f_low, f_high, {.x_tolerance = 1e-11, .residual_tolerance = 1e-10});
    return march(stream, root.x, stations);
}

} // namespace fluewright
