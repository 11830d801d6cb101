#include "door_open.hpp"

#include "fixed_fire.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "fluewright/physics/door_flow.hpp"
#include "model/march/flow_search.hpp"
#include "walls_before.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright {
namespace {

constexpr double least_door_flow_share = 0.05;
constexpr double greatest_door_flow_share = 100.0;
constexpr double usual_flow_share = 2.5; ///< where the search begins

struct Box {
    GasStream stream;
    double density_kg_m3;
};

const Firing& firing_before(const ApplianceCase& appliance, StateKind opened) {
    return fire_before(opened) == StateKind::low_fire ? appliance.low : appliance.high;
}

/// The model with its walls as they are `elapsed_s` after.
FlueModel remembering(const FlueModel& model, std::span<const Station> fire, double elapsed_s) {
    return {model, walls_before(model.resolved(), fire, elapsed_s)};
}

class OpenDoor {
public:
    OpenDoor(const FlueModel& model, StateKind kind, double elapsed_s)
        : model_(model), appliance_(model.resolved().appliance), heat_share_(share_of(kind)),
          fire_flow_kg_s_(share_of(kind) * appliance_.high.gas_flow_kg_s),
          heat_w_(share_of(kind) * appliance_.high.heat_to_flue_w),
          fuel_kg_s_(share_of(kind) * appliance_.high.burn_rate_kg_s),
          room_k_(model.surroundings().temperature_k[static_cast<std::size_t>(Zone::room)]),
          room_density_kg_m3_(
              model.surroundings().density_kg_m3[static_cast<std::size_t>(Zone::room)]),
          passage_pa_(has_open_front(appliance_)
                          ? 0.0 // its throat is among the heads
                          : appliance_.door_passage_share
                                * std::max(0.0, appliance_.high.draft_needed_pa)),
          lining_k_(gas_temperature_k(model, firing_before(appliance_, kind))),
          elapsed_s_(elapsed_s) {}

    /// Gas in the box when the run draws this much in all.   [theory eq. 69]
    [[nodiscard]] Box box(double flow_kg_s) const {
        const Case& c = model_.resolved();
        Box b{};
        b.stream.gas = GasChoice::high_fire;
        b.stream.flow_kg_s = flow_kg_s;
        b.stream.air_share = std::max(0.0, 1.0 - fire_flow_kg_s_ / flow_kg_s);
        const GasFit fit = c.gas_high().diluted(b.stream.air_share);
        const double heated_kg_s = std::max(flow_kg_s, fire_flow_kg_s_);
        const double by_fire_j_kg =
            fit.enthalpy_j_kg(gas_fit_range.u_of(room_k_)) + heat_w_ / heated_kg_s;
        const double by_lining_j_kg =
            fit.enthalpy_j_kg(gas_fit_range.u_of(lining_k_)) - by_fire_j_kg;
        const double share = lining_share(flow_kg_s, fit);
        b.stream.temperature_k =
            fit.temperature_k(by_fire_j_kg + share * std::max(0.0, by_lining_j_kg), room_k_ + 50.0);
        b.density_kg_m3 = model_.surroundings().air_pressure_pa
                          / (fit.gas_constant_j_kgk * b.stream.temperature_k);
        return b;
    }

    /// What the run does when it draws this much; what is left is room minus box at the top edge of
    /// the opening.
    [[nodiscard]] FlowPoint point(RunInRoom& run, double flow_kg_s, double foretold_pa) const {
        const Box b = box(flow_kg_s);
        const RunInRoom::Answer answer =
            run.solve(b.stream,
                      air_kg_s(flow_kg_s),
                      {},
                      {.draft_pa = foretold_pa - over_draft_pa(b), .is_one_of_many = true});
        return point_of(b, answer.draft_pa(), answer.flow);
    }

    /// The same of a march that is known.
    [[nodiscard]] FlowPoint
    point_of(const Box& b, double draft_pa, const MarchResult& march) const {
        const double run_pa = march.loss_pa();
        return {.flow_kg_s = b.stream.flow_kg_s,
                .lift_pa = draft_pa + run_pa + box_lift_pa(b),
                .loss_pa = run_pa + box_loss_pa(b),
                .density_kg_m3 = b.density_kg_m3};
    }

    /// What is left at the top edge more than the draft at the outlet.
    [[nodiscard]] double over_draft_pa(const Box& b) const {
        return box_lift_pa(b) - box_loss_pa(b);
    }

    /// Air in through the opening less smoke out [kg/s].
    [[nodiscard]] double net_inflow_kg_s(double top_pa, double box_density_kg_m3) const {
        const DoorOpening& door = appliance_.door;
        return door_flow::through({.width_m = door.width_m,
                                   .height_m = door.height_m,
                                   .room_density_kg_m3 = room_density_kg_m3_,
                                   .box_density_kg_m3 = box_density_kg_m3},
                                  top_pa)
            .net_in_kg_s();
    }

    [[nodiscard]] double air_kg_s(double flow_kg_s) const { return flow_kg_s - fuel_kg_s_; }

    /// Mean velocity of room air over the whole opening.
    [[nodiscard]] double face_velocity_m_s(double flow_kg_s) const {
        return air_kg_s(flow_kg_s)
               / (room_density_kg_m3_ * appliance_.door.width_m * appliance_.door.height_m);
    }

    /// A weaker fire in an open front asks for less; whoever reloads behind a door adds fuel.
    [[nodiscard]] double velocity_wanted_m_s() const {
        return face_velocity_wanted_m_s(has_open_front(appliance_) ? heat_share_ : 1.0);
    }

    [[nodiscard]] double room_density_kg_m3() const { return room_density_kg_m3_; }

    [[nodiscard]] double fuel_kg_s() const { return fuel_kg_s_; }

private:
    [[nodiscard]] double box_lift_pa(const Box& b) const {
        return (room_density_kg_m3_ - b.density_kg_m3) * constants::gravity_m_s2
               * appliance_.door.top_below_outlet_m;
    }

    [[nodiscard]] double box_loss_pa(const Box& b) const {
        const double flux = b.stream.flow_kg_s / appliance_.outlet_area_m2;
        const double head_pa = 0.5 * flux * flux / b.density_kg_m3;
        const double ratio = b.stream.flow_kg_s / appliance_.high.gas_flow_kg_s;
        // The passages resist with the square of the flow and, at equal flow, with 1/density.
        const double passage_pa = passage_pa_ * ratio * ratio * b.stream.temperature_k
                                  / appliance_.high.gas_temperature_k;
        return front_heads(appliance_) * head_pa + passage_pa;
    }

    [[nodiscard]] double share_of(StateKind kind) const {
        return kind == StateKind::door_open_embers ? appliance_.embers_share : 1.0;
    }

    /// How far the air in the box comes to the lining as it was, which has cooled since.
    [[nodiscard]] double lining_share(double flow_kg_s, const GasFit& fit) const {
        const FireboxLining& lining = appliance_.lining;
        const double capacity_w_k =
            flow_kg_s * fit.specific_heat_j_kgk(gas_fit_range.u_of(room_k_));
        const double share = -std::expm1(-lining.transfer_w_k / capacity_w_k);
        if (lining.heat_j_k <= 0.0 || lining.transfer_w_k <= 0.0) {
            return 0.0; // an open front has stood open for ever, which no lining of nought outlasts
        }
        return share * std::exp(-share * capacity_w_k * elapsed_s_ / lining.heat_j_k);
    }

    const FlueModel& model_;
    const ApplianceCase& appliance_;
    double heat_share_;
    double fire_flow_kg_s_;
    double heat_w_;
    double fuel_kg_s_;
    double room_k_;
    double room_density_kg_m3_;
    double passage_pa_;
    double lining_k_;
    double elapsed_s_;
};

/// How far the door may be opened: at the flow at which the top edge is at room pressure, over what
/// the whole opening would then let in; and over what keeps smoke back by its velocity.
DoorMoment moment_at(const OpenDoor& open, const std::optional<double>& limit, double elapsed_s) {
    DoorMoment m;
    m.elapsed_s = elapsed_s;
    if (!limit) {
        return m;
    }
    const Box box = open.box(*limit);
    const double whole = open.net_inflow_kg_s(0.0, box.density_kg_m3);
    m.box_temperature_k = box.stream.temperature_k;
    m.gas_flow_kg_s = *limit;
    m.share_by_velocity = open.face_velocity_m_s(*limit) / open.velocity_wanted_m_s();
    m.share_by_mixed_box = whole > 0.0 ? open.air_kg_s(*limit) / whole : 1.0;
    return m;
}

FlowRange range_of(const RunInRoom& run, const OpenDoor& open) {
    const FlueModel& model = run.model();
    const double nominal = model.resolved().appliance.high.gas_flow_kg_s;
    return {.least_kg_s = std::max(least_door_flow_share * nominal, 1.02 * open.fuel_kg_s()),
            .greatest_kg_s = greatest_door_flow_share * nominal,
            .smooth = run.is_smooth(),
            .accepted_share = run.accepted_share(),
            .leaks = model.has_leaks(),
            .endless_lift_pa = model.uniform_lift_pa(open.room_density_kg_m3()),
            .endless_density_kg_m3 = open.room_density_kg_m3()};
}

double left_at_top(const FlowPoint& p) {
    return p.left_pa();
}

} // namespace

void solve_door_open(RunInRoom& shut_run,
                     double elapsed_s,
                     Detail detail,
                     std::span<const Station> before,
                     StateResult& state) {
    std::optional<FlueModel> remembered; // an open front has always been open
    if (std::isfinite(elapsed_s)) {
        remembered.emplace(remembering(shut_run.model(), before, elapsed_s));
    }
    RunInRoom run = remembered ? shut_run.of(*remembered) : shut_run;
    const OpenDoor open(run.model(), state.kind, elapsed_s);
    const double nominal = run.model().resolved().appliance.high.gas_flow_kg_s;
    state.burn_rate_kg_s = open.fuel_kg_s();
    state.draft_needed_pa = 0.0;

    const auto point_at = [&](double flow, double foretold_pa) {
        return open.point(run, flow, foretold_pa);
    };
    FlowSearch search(point_at, range_of(run, open));
    const double least_start = 2.0 * open.fuel_kg_s();
    const double start = std::max(usual_flow_share * nominal, least_start);
    // The working point: the opening gives what the run draws. Below it the opening gives more and
    // the flow grows, so that a flue hot from the closed door settles at the greatest one.
    const auto fill_at = [&](double flow_kg_s, double foretold_pa) {
        const Box box = open.box(flow_kg_s);
        fill_flow(run,
                  box.stream,
                  open.air_kg_s(flow_kg_s),
                  foretold_pa - open.over_draft_pa(box),
                  detail,
                  state);
        state.door.box_temperature_k = box.stream.temperature_k;
        const FlowPoint point = open.point_of(box, state.draft_pa, state.flow);
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
        fill_at(std::max(nominal, least_start), nothing_foretold_pa);
        state.status = Status::no_flow;
    }
    state.door.face_velocity_m_s = open.face_velocity_m_s(flow.value_or(state.gas_flow_kg_s));
    const DoorMoment limit =
        moment_at(open, search.greatest_balance(left_at_top, start), elapsed_s);
    state.door.opening_share = limit.share_by_velocity;
    state.door.opening_share_mixed = limit.share_by_mixed_box;
    shut_run.remember(run.memory());
}

std::vector<DoorMoment>
door_moments(const RunInRoom& shut_run, std::span<const Station> before, const StateResult& state) {
    std::vector<DoorMoment> moments(door_moments_s.size());
    double start = state.gas_flow_kg_s;
    for (std::size_t i = 0; i < moments.size(); ++i) {
        const double elapsed_s = door_moments_s[i];
        const FlueModel warm = remembering(shut_run.model(), before, elapsed_s);
        RunInRoom run = shut_run.of(warm);
        const OpenDoor open(warm, state.kind, elapsed_s);
        const auto point_at = [&](double flow, double foretold_pa) {
            return open.point(run, flow, foretold_pa);
        };
        FlowSearch search(point_at, range_of(run, open));
        moments[i] = moment_at(open, search.greatest_balance(left_at_top, start), elapsed_s);
        start = moments[i].gas_flow_kg_s > 0.0 ? moments[i].gas_flow_kg_s : start;
    }
    return moments;
}

double wide_open_s(const std::vector<DoorMoment>& moments) {
    for (std::size_t i = 0; i < moments.size(); ++i) {
        const double over = moments[i].share_by_velocity - 1.0;
        if (over >= 0.0) {
            continue;
        }
        if (i == 0) {
            return 0.0;
        }
        const double before = moments[i - 1].share_by_velocity - 1.0;
        const double span_s = moments[i].elapsed_s - moments[i - 1].elapsed_s;
        return moments[i - 1].elapsed_s + span_s * before / (before - over);
    }
    return std::numeric_limits<double>::infinity();
}

} // namespace fluewright
