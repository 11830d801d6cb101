#include "door_open.hpp"

#include "fluewright/core/root.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double discharge = 0.6;  ///< plain opening; defaults: opening_discharge_coefficient
constexpr double entry_loss = 0.5; ///< sharp-edged entry into the outlet
constexpr double equal_density_kg_m3 = 1e-9;
constexpr double least_flow_share = 0.05;
constexpr double greatest_flow_share = 100.0;

struct Box {
    GasStream stream;
    double density_kg_m3;
};

class OpenDoor {
public:
    OpenDoor(const FlueModel& model, double fire_share)
        : model_(model), appliance_(model.installation().appliance),
          fire_flow_kg_s_(fire_share * appliance_.high.gas_flow_kg_s),
          heat_w_(fire_share * appliance_.high.heat_to_flue_w),
          fuel_kg_s_(fire_share * appliance_.high.burn_rate_kg_s),
          room_density_kg_m3_(
              model.surroundings().density_kg_m3[static_cast<std::size_t>(Zone::room)]),
          passage_pa_(appliance_.door_passage_share * appliance_.high.draft_needed_pa) {}

    /// Gas in the box when the run draws this much in all.
    [[nodiscard]] Box box(double flow_kg_s) const {
        const Case& c = model_.installation();
        Box b{};
        b.stream.gas = GasChoice::high_fire;
        b.stream.flow_kg_s = flow_kg_s;
        b.stream.air_share = std::max(0.0, 1.0 - fire_flow_kg_s_ / flow_kg_s);
        const GasFit fit = c.gas_high().diluted(b.stream.air_share);
        const double heated_kg_s = std::max(flow_kg_s, fire_flow_kg_s_);
        const double room_k = c.room_temperature_k;
        b.stream.temperature_k = fit.temperature_k(
            fit.enthalpy_j_kg(gas_fit_range.u_of(room_k)) + heat_w_ / heated_kg_s, room_k + 50.0);
        b.density_kg_m3 = model_.surroundings().air_pressure_pa
                          / (fit.gas_constant_j_kgk * b.stream.temperature_k);
        return b;
    }

    /// Room minus box at the top edge of the opening when the run draws this much.
    [[nodiscard]] double top_edge_pa(double flow_kg_s) const {
        const Box b = box(flow_kg_s);
        const double draft_pa = model_.draft_pa(model_.solve(b.stream));
        const double flux = flow_kg_s / appliance_.outlet_area_m2;
        const double head_pa = 0.5 * flux * flux / b.density_kg_m3;
        const double ratio = flow_kg_s / appliance_.high.gas_flow_kg_s;
        // The passages resist with the square of the flow and, at equal flow, with 1/density.
        const double passage_pa = passage_pa_ * ratio * ratio * b.stream.temperature_k
                                  / appliance_.high.gas_temperature_k;
        return draft_pa - (1.0 + entry_loss) * head_pa - passage_pa
               + (room_density_kg_m3_ - b.density_kg_m3) * constants::gravity_m_s2
                     * appliance_.door.top_below_outlet_m;
    }

    /// Air in through the opening less smoke out [kg/s].
    [[nodiscard]] double net_inflow_kg_s(double top_pa, double box_density_kg_m3) const {
        const DoorOpening& door = appliance_.door;
        const double lift = (room_density_kg_m3_ - box_density_kg_m3) * constants::gravity_m_s2;
        const double in_factor = discharge * door.width_m * std::sqrt(2.0 * room_density_kg_m3_);
        const double out_factor = discharge * door.width_m * std::sqrt(2.0 * box_density_kg_m3);
        if (lift * door.height_m < equal_density_kg_m3) {
            const double root = std::sqrt(std::abs(top_pa)) * door.height_m;
            return top_pa >= 0.0 ? in_factor * root : -out_factor * root;
        }
        const auto power = [](double pa) { return pa > 0.0 ? pa * std::sqrt(pa) : 0.0; };
        const double bottom_pa = top_pa + lift * door.height_m;
        const double third = 2.0 / (3.0 * lift);
        return third
               * (in_factor * (power(bottom_pa) - power(top_pa))
                  - out_factor * (power(-top_pa) - power(-bottom_pa)));
    }

    [[nodiscard]] double air_kg_s(double flow_kg_s) const { return flow_kg_s - fuel_kg_s_; }

    [[nodiscard]] double fire_flow_kg_s() const { return fire_flow_kg_s_; }

    [[nodiscard]] double room_density_kg_m3() const { return room_density_kg_m3_; }

    [[nodiscard]] double fuel_kg_s() const { return fuel_kg_s_; }

private:
    const FlueModel& model_;
    const ApplianceCase& appliance_;
    double fire_flow_kg_s_;
    double heat_w_;
    double fuel_kg_s_;
    double room_density_kg_m3_;
    double passage_pa_;
};

} // namespace

void solve_door_open(const FlueModel& model, double fire_share, Detail detail, StateResult& state) {
    const OpenDoor open(model, fire_share);
    const DoorOpening& door = model.installation().appliance.door;
    const double nominal = model.installation().appliance.high.gas_flow_kg_s;
    state.burn_rate_kg_s = open.fuel_kg_s();
    state.draft_needed_pa = 0.0;

    // From the least flow upwards: the first sign change is the working point, the flow at which
    // the opening gives what the run draws.
    const auto surplus = [&](double flow) {
        return open.net_inflow_kg_s(open.top_edge_pa(flow), open.box(flow).density_kg_m3)
               - open.air_kg_s(flow);
    };
    const double least = std::max(least_flow_share * nominal, 1.02 * open.fuel_kg_s());
    const RootGoal goal{.x_tolerance = 1e-9 * nominal, .residual_tolerance = 1e-10 * nominal};
    double low = least;
    double f_low = surplus(low);
    double high = low;
    double f_high = f_low;
    while (f_high > 0.0 && high < greatest_flow_share * nominal) {
        low = high;
        f_low = f_high;
        high *= 1.6;
        f_high = surplus(high);
    }
    double flow = least;
    if (f_low > 0.0 && f_high <= 0.0) {
        flow = find_root(surplus, low, high, f_low, f_high, goal).x;
    } else {
        state.status = f_low <= 0.0 ? Status::no_flow : Status::no_answer;
    }
    const Box box = open.box(flow);
    if (detail == Detail::stations) {
        state.stations.resize(model.station_count());
    }
    state.flow = model.solve(box.stream, state.stations);
    state.gas_flow_kg_s = flow;
    state.gas_temperature_k = box.stream.temperature_k;
    state.draft_pa = model.draft_pa(state.flow);
    state.door.box_temperature_k = box.stream.temperature_k;
    state.door.top_edge_pa = open.top_edge_pa(flow);
    state.door.face_velocity_m_s =
        open.air_kg_s(flow) / (open.room_density_kg_m3() * door.width_m * door.height_m);

    // How far it may be opened: the flow at which the top edge is at room pressure, over what the
    // whole opening would then let in.
    const auto edge = [&](double q) { return open.top_edge_pa(q); };
    low = least;
    f_low = edge(low);
    if (f_low <= 0.0) {
        state.door.opening_share = 0.0;
        return;
    }
    high = low;
    f_high = f_low;
    while (f_high > 0.0 && high < greatest_flow_share * nominal) {
        low = high;
        f_low = f_high;
        high *= 1.6;
        f_high = edge(high);
    }
    const double limit =
        f_high > 0.0 ? high
                     : find_root(edge,
                                 low,
                                 high,
                                 f_low,
                                 f_high,
                                 {.x_tolerance = 1e-9 * nominal, .residual_tolerance = 1e-9})
                           .x;
    const double whole = open.net_inflow_kg_s(0.0, open.box(limit).density_kg_m3);
    state.door.opening_share = whole > 0.0 ? open.air_kg_s(limit) / whole : 1.0;
}

} // namespace fluewright
