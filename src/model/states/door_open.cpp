#include "door_open.hpp"

#include "fluewright/physics/openings.hpp"
#include "model/march/flow_search.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double entry_loss = 0.5; ///< sharp-edged entry into the outlet
constexpr double equal_density_kg_m3 = 1e-9;
constexpr double least_door_flow_share = 0.05;
constexpr double greatest_door_flow_share = 100.0;
constexpr double usual_flow_share = 2.5; ///< where the search begins

struct Box {
    GasStream stream;
    double density_kg_m3;
};

class OpenDoor {
public:
    OpenDoor(const FlueModel& model, double fire_share)
        : model_(model), appliance_(model.resolved().appliance),
          fire_flow_kg_s_(fire_share * appliance_.high.gas_flow_kg_s),
          heat_w_(fire_share * appliance_.high.heat_to_flue_w),
          fuel_kg_s_(fire_share * appliance_.high.burn_rate_kg_s),
          room_density_kg_m3_(
              model.surroundings().density_kg_m3[static_cast<std::size_t>(Zone::room)]),
          passage_pa_(appliance_.door_passage_share * appliance_.high.draft_needed_pa) {}

    /// Gas in the box when the run draws this much in all.
    [[nodiscard]] Box box(double flow_kg_s) const {
        const Case& c = model_.resolved();
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

    /// What the run does when it draws this much; what is left is room minus box at the top edge of
    /// the opening.
    [[nodiscard]] FlowPoint point(double flow_kg_s) const {
        const Box b = box(flow_kg_s);
        return point_of(b, model_.solve(b.stream));
    }

    /// The same of a march that is known.
    [[nodiscard]] FlowPoint point_of(const Box& b, const MarchResult& march) const {
        const double flow_kg_s = b.stream.flow_kg_s;
        const double flux = flow_kg_s / appliance_.outlet_area_m2;
        const double head_pa = 0.5 * flux * flux / b.density_kg_m3;
        const double ratio = flow_kg_s / appliance_.high.gas_flow_kg_s;
        // The passages resist with the square of the flow and, at equal flow, with 1/density.
        const double passage_pa = passage_pa_ * ratio * ratio * b.stream.temperature_k
                                  / appliance_.high.gas_temperature_k;
        const double run_pa = march.loss_pa();
        return {.flow_kg_s = flow_kg_s,
                .lift_pa = model_.draft_pa(march) + run_pa
                           + (room_density_kg_m3_ - b.density_kg_m3) * constants::gravity_m_s2
                                 * appliance_.door.top_below_outlet_m,
                .loss_pa = run_pa + (1.0 + entry_loss) * head_pa + passage_pa,
                .density_kg_m3 = b.density_kg_m3};
    }

    /// Air in through the opening less smoke out [kg/s].
    [[nodiscard]] double net_inflow_kg_s(double top_pa, double box_density_kg_m3) const {
        const DoorOpening& door = appliance_.door;
        const double lift = (room_density_kg_m3_ - box_density_kg_m3) * constants::gravity_m_s2;
        const double in_factor =
            openings::discharge * door.width_m * std::sqrt(2.0 * room_density_kg_m3_);
        const double out_factor =
            openings::discharge * door.width_m * std::sqrt(2.0 * box_density_kg_m3);
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
    const DoorOpening& door = model.resolved().appliance.door;
    const double nominal = model.resolved().appliance.high.gas_flow_kg_s;
    state.burn_rate_kg_s = open.fuel_kg_s();
    state.draft_needed_pa = 0.0;

    const auto point_at = [&](double flow) { return open.point(flow); };
    FlowSearch search(
        point_at,
        {.least_kg_s = std::max(least_door_flow_share * nominal, 1.02 * open.fuel_kg_s()),
         .greatest_kg_s = greatest_door_flow_share * nominal,
         .smooth = !model.has_leaks(),
         .endless_lift_pa = model.uniform_lift_pa(open.room_density_kg_m3()),
         .endless_density_kg_m3 = open.room_density_kg_m3()});
    const double least_start = 2.0 * open.fuel_kg_s();
    const double start = std::max(usual_flow_share * nominal, least_start);
    // The working point: the opening gives what the run draws. Below it the opening gives more and
    // the flow grows, so that a flue hot from the closed door settles at the greatest one.
    if (detail == Detail::stations) {
        state.stations.resize(model.station_count());
    }
    const auto fill_at = [&](double flow_kg_s) {
        const Box box = open.box(flow_kg_s);
        state.flow = model.solve(box.stream, state.stations);
        state.gas_flow_kg_s = flow_kg_s;
        state.gas_temperature_k = box.stream.temperature_k;
        state.draft_pa = model.draft_pa(state.flow);
        const FlowPoint point = open.point_of(box, state.flow);
        state.door.box_temperature_k = box.stream.temperature_k;
        state.door.top_edge_pa = point.left_pa();
        return point;
    };
    const std::optional<double> flow = search.settle(
        [&](const FlowPoint& p) {
            return open.net_inflow_kg_s(p.left_pa(), p.density_kg_m3) - open.air_kg_s(p.flow_kg_s);
        },
        start,
        fill_at);
    if (!flow) {
        state.status = Status::no_flow;
        fill_at(std::max(nominal, least_start));
    }
    const double drawn = flow.value_or(state.gas_flow_kg_s);
    state.door.face_velocity_m_s =
        open.air_kg_s(drawn) / (open.room_density_kg_m3() * door.width_m * door.height_m);

    // How far it may be opened: the flow at which the top edge is at room pressure, over what the
    // whole opening would then let in.
    const std::optional<double> limit =
        search.greatest_balance([](const FlowPoint& p) { return p.left_pa(); }, start);
    if (!limit) {
        state.door.opening_share = 0.0;
        return;
    }
    const double whole = open.net_inflow_kg_s(0.0, open.box(*limit).density_kg_m3);
    state.door.opening_share = whole > 0.0 ? open.air_kg_s(*limit) / whole : 1.0;
}

} // namespace fluewright
