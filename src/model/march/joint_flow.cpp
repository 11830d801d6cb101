#include "flow.hpp"
#include "fluewright/physics/openings.hpp"
#include "open_share.hpp"

#include <algorithm>

namespace fluewright {

/// What a joint, a regulator's gate or a hood's opening lets in or out at the lower end of a
/// section.   [theory eq. 19]
///
/// What comes in brings no momentum along the run, so the pressure falls by the whole rise of the
/// momentum flux; what goes out takes its own along, and the rest slows as by Bernoulli.
void FlueModel::pass_joint(Flow& flow, const Section& section) const {
    const double air_pa = surroundings_.air_pressure_pa;
    const double excess_pa = flow.pressure_pa - zone_pressure_pa(flow, section.zone);
    if (has_plain_opening(section)) {
        flow.sums.opening_pressure_pa = std::max(flow.sums.opening_pressure_pa, excess_pa);
    }
    const double head_before = flow.velocity_head_pa(air_pa, flow.area_m2);
    const double acceleration = excess_pa >= 0.0 ? leak_out(flow, section, excess_pa, head_before)
                                                 : leak_in(flow, section, excess_pa, head_before);
    flow.pressure_pa -= acceleration;
    flow.sums.acceleration_pa += acceleration;
}

double FlueModel::leak_out(Flow& flow,
                           const Section& section,
                           double excess_pa,
                           double head_before_pa) const {
    const double air_pa = surroundings_.air_pressure_pa;
    const double area_m2 =
        section.joint_leak_m2 + section.opening_m2 * open_share(section, excess_pa);
    const double density = flow.density_kg_m3(air_pa);
    const double most = std::max(0.0, flow.flow_kg_s - flow.least_flow_kg_s);
    const double through = openings::flow_kg_s(area_m2, excess_pa, density);
    const double out = std::min(most, through);
    const double flow_before = flow.flow_kg_s;
    flow.flow_kg_s -= out;
    flow.sums.leak_out_kg_s += out;
    flow.sums.enthalpy_leak_w -= out * flow.enthalpy_j_kg();
    flow.sums.leak_from_room_kg_s -= section.zone == Zone::room ? out : 0.0;
    const double head_pa = flow.velocity_head_pa(air_pa, flow.area_m2);
    if (flow.answers_asked) {
        const double per_pa = openings::flow_slope_kg_s_pa(area_m2, excess_pa, density);
        for (FlowAnswer& answer : flow.answers) {
            const double zone_pa = section.zone == Zone::room ? answer.room_pa : 0.0;
            const double change = through <= most
                                      ? per_pa * (answer.pressure_pa - zone_pa)
                                            - 0.5 * out * answer.temperature_k / flow.temperature_k
                                      : answer.flow_kg_s;
            const double before = head_before_pa
                                  * (2.0 * answer.flow_kg_s / flow_before
                                     + answer.temperature_k / flow.temperature_k);
            answer.flow_kg_s -= change;
            answer.leak_from_room_kg_s -= section.zone == Zone::room ? change : 0.0;
            answer.pressure_pa -= flow.head_answer(answer, head_pa) - before;
        }
    }
    return head_pa - head_before_pa;
}

double FlueModel::leak_in(Flow& flow,
                          const Section& section,
                          double excess_pa,
                          double head_before_pa) const {
    const auto zone = static_cast<std::size_t>(section.zone);
    const double area_m2 =
        section.joint_leak_m2 + section.opening_m2 * open_share(section, excess_pa);
    const double density = surroundings_.density_kg_m3[zone];
    const double in = openings::flow_kg_s(area_m2, -excess_pa, density);
    const double air_k = surroundings_.temperature_k[zone];
    const double air_enthalpy = flow.gas->air().enthalpy_j_kg(gas_fit_range.u_of(air_k));
    const double flow_before = flow.flow_kg_s;
    const double gas_k = flow.temperature_k;
    const double total = flow_before + in;
    const double mixed = (flow_before * flow.enthalpy_j_kg() + in * air_enthalpy) / total;
    flow.sums.leak_in_kg_s += in;
    flow.sums.leak_from_room_kg_s += section.zone == Zone::room ? in : 0.0;
    flow.sums.enthalpy_leak_w += in * air_enthalpy;
    flow.set_dilution((flow_before * flow.air_share + in) / total);
    flow.flow_kg_s = total;
    flow.temperature_k = flow.fit.temperature_k(mixed, (flow_before * gas_k + in * air_k) / total);
    const double head_pa = flow.velocity_head_pa(surroundings_.air_pressure_pa, flow.area_m2);
    if (flow.answers_asked) {
        const double per_pa = openings::flow_slope_kg_s_pa(area_m2, excess_pa, density)
                              + section.opening_m2 * open_share_slope(section, excess_pa)
                                    * openings::flow_kg_s(1.0, -excess_pa, density);
        for (FlowAnswer& answer : flow.answers) {
            const double zone_pa = section.zone == Zone::room ? answer.room_pa : 0.0;
            const double change = per_pa * (zone_pa - answer.pressure_pa);
            const double before =
                head_before_pa
                * (2.0 * answer.flow_kg_s / flow_before + answer.temperature_k / gas_k);
            answer.temperature_k = (flow_before * answer.temperature_k
                                    + (gas_k - flow.temperature_k) * answer.flow_kg_s
                                    + (air_k - flow.temperature_k) * change)
                                   / total;
            answer.flow_kg_s += change;
            answer.leak_from_room_kg_s += section.zone == Zone::room ? change : 0.0;
            answer.pressure_pa -= 2.0 * (flow.head_answer(answer, head_pa) - before);
        }
    }
    return 2.0 * (head_pa - head_before_pa);
}

} // namespace fluewright
