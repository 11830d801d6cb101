#include "prediction.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/march/probe_reading.hpp"
#include "fluewright/model/warmup/tended.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fluewright::diagnosis {
namespace {

/// A flue being lit: smoke comes out while the idle column still stands, and for longer the less
/// kindling gas draws between cold walls. Mostly the idle draft, with a part of the kindled one.
StateResult solve_lighting(const FlueModel& model) {
    static const double idle_share = catalog::default_of(DefaultId::lighting_idle_share).value;
    StateResult state = solve_state(model, StateKind::cold_start, Detail::stations);
    const double idle_pa = solve_state(model, StateKind::idle, Detail::totals).draft_pa;
    state.draft_pa = idle_share * idle_pa + (1.0 - idle_share) * state.draft_pa;
    return state;
}

StateResult solve_doing(const FlueModel& model, Doing doing) {
    switch (doing) {
    case Doing::high_fire:
        return solve_tended(model, GasChoice::high_fire, Detail::stations);
    case Doing::low_fire:
        return solve_tended(model, GasChoice::low_fire, Detail::stations);
    case Doing::free_burn:
        return solve_state(model, StateKind::free_burn, Detail::stations);
    case Doing::door_open_high:
        return solve_state(model, StateKind::door_open_high, Detail::stations);
    case Doing::door_open_embers:
        return solve_state(model, StateKind::door_open_embers, Detail::stations);
    case Doing::lighting:
        return solve_lighting(model);
    case Doing::idle:
        break;
    }
    return solve_state(model, StateKind::idle, Detail::stations);
}

/// The longest piece of such pipe in the trade; endless where pipe of the kind is not sold by the
/// piece.
double longest_piece_m(WallKind kind) {
    double longest_m = 0.0;
    for (const catalog::StockLength& row : catalog::stock_lengths()) {
        longest_m = std::max(longest_m, row.kind.value() == kind ? row.length_m : 0.0);
    }
    return longest_m > 0.0 ? longest_m : std::numeric_limits<double>::infinity();
}

/// Greatest pressure against the room at a joint in the room. A straight longer than pipe is sold
/// has joints between its pieces, whether the file writes it as one or as several.
double joints_pa(const Case& c, const std::vector<Station>& stations) {
    double greatest = -std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < c.sections.size() && i + 1 < stations.size(); ++i) {
        const Section& section = c.sections[i];
        const Station& end = stations[i + 1];
        if (section.zone != Zone::room) {
            continue;
        }
        greatest = std::max(greatest, end.joint_pressure_pa);
        if (section.length_m <= 0.0) {
            continue;
        }
        const double piece_m = longest_piece_m(c.walls[section.wall].kind);
        const auto joints = static_cast<int>(section.length_m / piece_m);
        for (int joint = 1; joint <= joints; ++joint) {
            greatest = std::max(greatest,
                                std::lerp(end.joint_pressure_pa,
                                          end.pressure_in_zone_pa,
                                          joint * piece_m / section.length_m));
        }
    }
    return greatest;
}

std::vector<Point> points_of(const Case& c, const StateResult& state, std::size_t parts) {
    std::vector<Point> points(parts + 2);
    const double fire_kg_s = state.stations.front().flow_kg_s;
    for (std::size_t i = 0; i < state.stations.size(); ++i) {
        const Station& s = state.stations[i];
        const int part = i == 0 ? -1 : c.sections[s.section].part;
        const auto index = std::min(static_cast<std::size_t>(part + 1), parts + 1);
        points[index] = {.draft_pa = -s.pressure_in_zone_pa,
                         .gas_temperature_k = s.gas_temperature_k,
                         .inner_k = i == 0 ? 0.0 : s.inner_wall_k,
                         .velocity_m_s = s.velocity_m_s,
                         .surface_k = s.outer_wall_k,
                         .gas_share = s.flow_kg_s > fire_kg_s ? fire_kg_s / s.flow_kg_s : 1.0};
        if (i + 1 == state.stations.size()) {
            points[parts + 1] = points[index];
        }
    }
    points[0].draft_pa = state.draft_pa;
    points[0].inner_k = wall_at_outlet_k(state.stations);
    if (points.size() > 1) {
        points[0].surface_k = points[1].surface_k;
    }
    return points;
}

double coldest_wall_k(const std::vector<Station>& stations) {
    double coldest = std::numeric_limits<double>::infinity();
    for (const Station& s : stations) {
        if (s.inner_wall_k > 0.0) {
            coldest = std::min(coldest, s.inner_wall_k);
        }
    }
    return coldest;
}

} // namespace

double coldest_above_k(const Prediction& p, std::size_t point) {
    if (point == 0) {
        return p.coldest_wall_k;
    }
    double coldest_k = 0.0;
    for (std::size_t i = std::min(point, p.points.size() - 1); i < p.points.size(); ++i) {
        const double wall_k = p.points[i].inner_k;
        if (wall_k > 0.0 && (coldest_k <= 0.0 || wall_k < coldest_k)) {
            coldest_k = wall_k;
        }
    }
    return coldest_k > 0.0 ? coldest_k : p.coldest_wall_k;
}

Solver::Solver(Altered altered, const HeatFactors& factors)
    : altered_(std::move(altered)), factors_(factors), high_(altered_.made.appliance.high),
      low_(altered_.made.appliance.low) {
    models_.reserve(altered_.made.weathers.size());
}

/// The models read the firing of the case when they solve, so it may change between two solutions.
void Solver::set_heat(double factor) {
    const double room_k = altered_.made.room_temperature_k;
    const auto heated = [&](const Firing& fire) {
        Firing result = fire;
        result.gas_temperature_k = room_k + factor * (fire.gas_temperature_k - room_k);
        result.heat_to_flue_w *= factor;
        return result;
    };
    altered_.made.appliance.high = heated(high_);
    altered_.made.appliance.low = heated(low_);
}

Predictions Solver::predict(const Situation& situation) {
    const Surroundings air = surroundings_in(altered_.made, altered_.air, situation);
    const auto known = std::find(model_weather_.begin(), model_weather_.end(), situation.weather);
    std::size_t base = static_cast<std::size_t>(known - model_weather_.begin());
    if (known == model_weather_.end()) {
        models_.emplace_back(altered_.made, air);
        model_weather_.push_back(situation.weather);
        base = models_.size() - 1;
    }
    const FlueModel model(models_[base], air);
    Predictions predictions;
    for (std::size_t node = 0; node < heat_nodes; ++node) {
        set_heat(factors_[node]);
        predictions[node] = solve(model, situation);
        if (situation.doing == Doing::idle) {
            predictions.fill(predictions[node]);
            break;
        }
    }
    set_heat(1.0);
    return predictions;
}

Prediction Solver::solve(const FlueModel& model, const Situation& situation) const {
    const Case& c = altered_.made;
    const StateResult state = solve_doing(model, situation.doing);
    Prediction p;
    p.draft_pa = state.draft_pa;
    p.room_pressure_pa = model.surroundings().room_pressure_pa;
    p.joints_pa = joints_pa(c, state.stations);
    p.flow_share = state.gas_flow_kg_s / altered_.written_flow_kg_s;
    p.coldest_wall_k = coldest_wall_k(state.stations);
    if (situation.doing == Doing::door_open_high || situation.doing == Doing::door_open_embers) {
        static const double half_way = catalog::default_of(DefaultId::door_opening_wanted).value;
        const double wanted = c.appliance.type == ApplianceType::fireplace ? 1.0 : half_way;
        p.opening_short = wanted - std::clamp(state.door.opening_share_mixed, 0.0, 1.5);
    }
    p.points = points_of(c, state, altered_.deposit_m.size());
    return p;
}

} // namespace fluewright::diagnosis
