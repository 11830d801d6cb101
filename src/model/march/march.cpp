#include "fluewright/model/march/march.hpp"

#include "flow.hpp"
#include "run_in_room.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// Where joints blow out more than the run carries on, this share of the gas still goes up: the
/// march knows one direction only.
constexpr double least_share_left = 1e-3;

} // namespace

double FlueModel::zone_pressure_pa(const Flow& flow, Zone zone) const {
    return surroundings_.pressure_pa(zone, flow.height_m, flow.room_pressure_pa);
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
    if (flow.answers_asked) {
        for (FlowAnswer& answer : flow.answers) {
            answer.pressure_pa -= flow.head_answer(answer, lost + acceleration);
        }
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
    s.pressure_in_zone_pa = flow.pressure_pa - zone_pressure_pa(flow, section.zone);
    s.inner_wall_k = flow.wall_k;
    s.inner_wall_start_k = section.length_m > 0.0 ? flow.wall_start_k : 0.0;
    s.outer_wall_k = flow.wall_k;
    if (section.length_m > 0.0 && flow.wall_k > 0.0) {
        const WallHeat& wall = *(*heats_)[layout_->sections[index].heat];
        s.outer_wall_k = wall.outer_k(
            flow.wall_k,
            flow.warmer_k(section.zone, flow.distance_m, flow.temperature_k - wall.ambient_k()));
    }
    return s;
}

MarchResult FlueModel::march(const GasStream& stream,
                             double outlet_pressure_pa,
                             std::span<Station> stations) const {
    return march(stream,
                 {.outlet_pa = outlet_pressure_pa, .room_pa = surroundings_.room_pressure_pa},
                 stations);
}

MarchResult FlueModel::march(const GasStream& stream,
                             const EndPressures& ends,
                             std::span<Station> stations,
                             MarchSlopes* slopes) const {
    Flow flow;
    flow.choice = stream.gas;
    flow.gas = &case_->gases[static_cast<std::size_t>(stream.gas)];
    flow.set_dilution(stream.air_share);
    flow.flow_kg_s = stream.flow_kg_s;
    flow.least_flow_kg_s = least_share_left * stream.flow_kg_s;
    flow.temperature_k = stream.temperature_k;
    flow.pressure_pa = ends.outlet_pa;
    flow.room_pressure_pa = ends.room_pa;
    flow.answers_asked = slopes != nullptr;
    flow.answers[0].pressure_pa = 1.0;
    flow.answers[1].room_pa = 1.0;
    flow.area_m2 = case_->appliance.outlet_area_m2;
    flow.wants_wall = !stations.empty();
    flow.warmer_at_collar_k = surroundings_.warmer_at_collar_k(*case_, stream.temperature_k);
    flow.sums.outlet_pressure_pa = ends.outlet_pa;
    flow.sums.enthalpy_in_w = flow.flow_kg_s * flow.enthalpy_j_kg();
    flow.sums.greatest_flux_kg_m2s = flow.flow_kg_s / flow.area_m2;

    if (!stations.empty()) {
        stations[0] = station_at(flow, 0);
        stations[0].joint_pressure_pa = stations[0].pressure_in_zone_pa;
        stations[0].inner_wall_k = stations[0].outer_wall_k = flow.temperature_k;
    }
    for (std::size_t i = 0; i < case_->sections.size(); ++i) {
        const Section& section = case_->sections[i];
        const double leaked_before = flow.sums.leak_in_kg_s - flow.sums.leak_out_kg_s;
        const double joint_pressure_pa = flow.pressure_pa - zone_pressure_pa(flow, section.zone);
        if (section.leaks()) {
            pass_joint(flow, section);
        }
        const double leak = flow.sums.leak_in_kg_s - flow.sums.leak_out_kg_s - leaked_before;
        pass_fitting(flow, section);
        flow.sums.greatest_flux_kg_m2s =
            std::max(flow.sums.greatest_flux_kg_m2s, flow.flow_kg_s / section.area_m2);
        if (section.length_m > 0.0) {
            march_straight(flow, section, layout_->sections[i]);
        }
        if (!stations.empty()) {
            stations[i + 1] = station_at(flow, i);
            stations[i + 1].leak_kg_s = leak;
            stations[i + 1].joint_pressure_pa = joint_pressure_pa;
        }
    }
    flow.sums.top_pressure_pa = flow.pressure_pa;
    flow.sums.top_temperature_k = flow.temperature_k;
    flow.sums.top_flow_kg_s = flow.flow_kg_s;
    flow.sums.top_air_share = flow.air_share;
    flow.sums.top_velocity_m_s =
        flow.flow_kg_s / (flow.area_m2 * flow.density_kg_m3(surroundings_.air_pressure_pa));
    flow.sums.enthalpy_out_w = flow.flow_kg_s * flow.enthalpy_j_kg();
    if (slopes != nullptr) {
        *slopes = {.top_per_outlet = flow.answers[0].pressure_pa,
                   .top_per_room = flow.answers[1].pressure_pa,
                   .leak_per_outlet_kg_s_pa = flow.answers[0].leak_from_room_kg_s,
                   .leak_per_room_kg_s_pa = flow.answers[1].leak_from_room_kg_s};
    }
    return flow.sums;
}

MarchResult FlueModel::solve(const GasStream& stream, std::span<Station> stations) const {
    return RunInRoom(*this).solve(stream, 0.0, stations).flow;
}

} // namespace fluewright
