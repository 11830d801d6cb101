#include "flow.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/physics/openings.hpp"
#include "open_share.hpp"

#include <algorithm>

namespace fluewright {
namespace {

/// Bracketed root near `start`; `at_start` is the value there.
template <class Miss>
Root root_in_bracket(const Miss& miss, double start, double at_start, double tolerance_pa) {
    constexpr int most_doublings = 40;
    double low = start;
    double high = start;
    double f_low = at_start;
    double f_high = at_start;
    double step = std::clamp(std::abs(at_start), 0.01, 4.0);
    for (int i = 0; i < most_doublings && f_low > 0.0; ++i, step *= 2.0) {
        high = low;
        f_high = f_low;
        low -= step;
        f_low = miss(low);
    }
    for (int i = 0; i < most_doublings && f_high < 0.0; ++i, step *= 2.0) {
        low = high;
        f_low = f_high;
        high += step;
        f_high = miss(high);
    }
    return find_root(miss,
                     low,
                     high,
                     f_low,
                     f_high,
                     {.x_tolerance = 0.1 * tolerance_pa, .residual_tolerance = tolerance_pa});
}

/// Small leaks leave the miss nearly straight, and a few secants end there; else the bracket.
template <class Miss>
Root root_by_secants(const Miss& miss, double tolerance_pa) {
    constexpr int most_secants = 6;
    double before = 0.0;
    double f_before = miss(before);
    double x = -f_before;
    double f = miss(x);
    for (int i = 0; i < most_secants && std::abs(f) > tolerance_pa; ++i) {
        const double slope = (f - f_before) / (x - before);
        const double next = x - f / slope;
        const double f_next = slope > 0.0 ? miss(next) : f;
        // Worse than before, or no number at all: too crooked for secants.
        if (!(std::abs(f_next) < std::abs(f))) {
            break;
        }
        before = x;
        f_before = f;
        x = next;
        f = f_next;
    }
    if (std::abs(f) <= tolerance_pa) {
        return {x, x, x, f, 0, Root::Status::converged};
    }
    return root_in_bracket(miss, x, f, tolerance_pa);
}

} // namespace

/// What a joint, a regulator's gate or a hood's opening lets in or out at the lower end of a
/// section.   [theory eq. 19]
///
/// What comes in brings no momentum along the run, so the pressure falls by the whole rise of the
/// momentum flux; what goes out takes its own along, and the rest slows as by Bernoulli.
void FlueModel::pass_joint(Flow& flow, const Section& section) const {
    const auto zone = static_cast<std::size_t>(section.zone);
    const double air_pa = surroundings_.air_pressure_pa;
    const double excess_pa =
        flow.pressure_pa - surroundings_.pressure_pa(section.zone, flow.height_m);
    const double area_m2 =
        section.joint_leak_m2 + section.opening_m2 * open_share(section, excess_pa);
    const double head_before = flow.velocity_head_pa(air_pa, flow.area_m2);
    double acceleration = 0.0;
    if (excess_pa >= 0.0) {
        const double most = std::max(0.0, flow.flow_kg_s - flow.least_flow_kg_s);
        const double out =
            std::min(most, openings::flow_kg_s(area_m2, excess_pa, flow.density_kg_m3(air_pa)));
        flow.flow_kg_s -= out;
        flow.sums.leak_out_kg_s += out;
        flow.sums.enthalpy_leak_w -= out * flow.enthalpy_j_kg();
        flow.sums.leak_from_room_kg_s -= section.zone == Zone::room ? out : 0.0;
        acceleration = flow.velocity_head_pa(air_pa, flow.area_m2) - head_before;
    } else {
        const double in =
            openings::flow_kg_s(area_m2, -excess_pa, surroundings_.density_kg_m3[zone]);
        const double u = gas_fit_range.u_of(surroundings_.temperature_k[zone]);
        const double air_enthalpy = flow.gas->air().enthalpy_j_kg(u);
        const double total = flow.flow_kg_s + in;
        const double mixed = (flow.flow_kg_s * flow.enthalpy_j_kg() + in * air_enthalpy) / total;
        flow.sums.leak_in_kg_s += in;
        flow.sums.leak_from_room_kg_s += section.zone == Zone::room ? in : 0.0;
        flow.sums.enthalpy_leak_w += in * air_enthalpy;
        flow.set_dilution((flow.flow_kg_s * flow.air_share + in) / total);
        flow.flow_kg_s = total;
        flow.temperature_k = flow.fit.temperature_k(mixed, flow.temperature_k);
        acceleration = 2.0 * (flow.velocity_head_pa(air_pa, flow.area_m2) - head_before);
    }
    flow.pressure_pa -= acceleration;
    flow.sums.acceleration_pa += acceleration;
}

/// With leaks the flow depends on the pressure it is marched at: the outlet pressure is a root.
/// The higher it is, the less comes in and the more goes out, so that friction falls and the mouth
/// follows the outlet; far enough up and down the mouth passes any pressure, whatever the leaks do,
/// and between them the miss is continuous. The bracket grows from the answer of a tight run.
MarchResult FlueModel::solve_leaking(const GasStream& stream, std::span<Station> stations) const {
    const double wanted_pa = surroundings_.mouth_pressure_pa;
    const auto miss = [&](double outlet_pa) {
        return march(stream, outlet_pa).mouth_pressure_pa - wanted_pa;
    };
    const Root root = root_by_secants(miss, case_->mouth_tolerance_pa);
    MarchResult result = march(stream, root.x, stations);
    result.meets_mouth = root.converged();
    return result;
}

} // namespace fluewright
