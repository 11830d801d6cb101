#include "fluewright/model/warmup/warmup.hpp"

#include "crossing.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "warm_run.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace fluewright {
namespace {

/// Two-stage diagonally implicit Runge-Kutta, second order, L-stable.
/// Source: Alexander 1977, SIAM J. Numer. Anal. 14 1006-1021   [alexander-1977, from memory]
constexpr double diagonal = 0.29289321881345248; ///< 1 - 1/sqrt(2)

/// The coldest and hottest faces of one straight.
struct Faces {
    double coldest_inner_k{std::numeric_limits<double>::infinity()};
    double hottest_inner_k{};
    double hottest_outer_k{};
};

class Course {
public:
    Course(const Case& resolved, const WarmupOptions& options);
    Warmup run();

private:
    void begin_phase(std::size_t phase);
    void step(double step_s);
    void record(const WarmStage& stage, const FireDemand& demand);
    void watch(double step_s, const WarmStage& stage, const std::vector<Faces>& before);
    void note_starving(const WarmStage& stage, const FireDemand& demand);
    void add_heat(double share_s, const WarmStage& stage);
    void finish();
    [[nodiscard]] FlowControl control(const FireDemand& demand) const;
    [[nodiscard]] std::vector<Faces> faces() const;
    [[nodiscard]] double outlet_after(double outlet_k, double into_s, double step_s) const;

    const Case& case_;
    WarmupOptions options_;
    BurnPlan plan_;
    Surroundings burning_;
    Surroundings idle_;
    WarmRun run_;
    Warmup made_;
    std::vector<double> nodes_k_;
    std::vector<double> stage_k_;
    std::vector<double> second_start_k_;
    std::size_t phase_{};
    double phase_start_s_{};
    double time_s_{};
    double outlet_k_;
    WarmStage last_;
    double next_record_s_{};
    bool halves_help_{true}; ///< until the shortest step did not settle either
    bool lit_{true};
};

Course::Course(const Case& resolved, const WarmupOptions& options)
    : case_(resolved), options_(options),
      plan_(resolved, options.total_s, resolved.weathers[options.weather].room_temperature_k),
      burning_(surroundings_of(resolved, options.weather, Fire::burning)),
      idle_(surroundings_of(resolved, options.weather, Fire::out)),
      run_(resolved, burning_, options.cells_factor), nodes_k_(run_.cold()),
      outlet_k_(plan_.lighting_k()) {
    made_.phases = plan_.phases();
    made_.assumptions = plan_.assumptions();
    made_.draft_needed_pa = resolved.appliance.high.draft_needed_pa;
    made_.draft_needed_low_pa = resolved.appliance.low.draft_needed_pa;
    made_.creosote_threshold_k = catalog::default_of(DefaultId::creosote_threshold_k).value;
    for (const WarmRun::Cell& cell : run_.cells()) {
        if (made_.parts.empty() || made_.parts.back().section != cell.section) {
            WarmupPart part;
            part.section = cell.section;
            made_.parts.push_back(part);
        }
    }
}

FlowControl Course::control(const FireDemand& demand) const {
    const Firing& firing = demand.out ? case_.appliance.low : case_.appliance.high;
    const double open_share = demand.door_ajar ? case_.appliance.door_passage_share : 1.0;
    // Draft needed below nothing is what a fan gives beyond the heater's own resistance.
    const double fan_pa = std::max(0.0, -firing.draft_needed_pa);
    return {.asked_kg_s =
                demand.out ? case_.appliance.high.gas_flow_kg_s * 100.0 : demand.gas_flow_kg_s,
            .resistance_pa_s2_kg2 =
                (demand.out ? std::abs(firing.draft_needed_pa)
                            : open_share * std::max(0.0, firing.draft_needed_pa))
                / (firing.gas_flow_kg_s * firing.gas_flow_kg_s),
            .fan_pa = demand.out ? 0.0 : fan_pa,
            .room_pressure_pa = demand.out ? idle_.room_pressure_pa : burning_.room_pressure_pa,
            .room_by_house = demand.out ? idle_.house.known() : burning_.house.known(),
            .room_air_share = demand.out || (case_.house.outdoor_air && !demand.door_ajar)
                                      || demand.gas_flow_kg_s <= 0.0
                                  ? 0.0
                                  : 1.0 - demand.burn_rate_kg_s / demand.gas_flow_kg_s,
            .tended = !demand.out,
            .kindled = !demand.out && is_fed_by_hand(case_.appliance),
            .pushed = !demand.out && flows_as_made(case_)};
}

/// The gas at the outlet follows its aim, taken at the middle of the time; a starved fire's is
/// lower.
double Course::outlet_after(double outlet_k, double into_s, double step_s) const {
    const FireDemand demand = plan_.at(phase_, into_s + 0.5 * step_s);
    const bool starved = wants_air(last_, demand) && is_fed_by_hand(case_.appliance);
    const double aim_k = starved
                             ? plan_.aim_k(demand.burn_rate_kg_s
                                           * std::min(1.0, last_.flow_kg_s / demand.gas_flow_kg_s))
                             : demand.aim_k;
    const double time_s = plan_.appliance_time_s(demand.out, last_.flow_kg_s);
    return aim_k + (outlet_k - aim_k) * std::exp(-step_s / time_s);
}

std::vector<Faces> Course::faces() const {
    std::vector<Faces> all(made_.parts.size());
    std::size_t part = 0;
    for (const WarmRun::Cell& cell : run_.cells()) {
        while (made_.parts[part].section != cell.section) {
            ++part;
        }
        Faces& f = all[part];
        const double inner_k = nodes_k_[cell.first_node];
        const double outer_k = nodes_k_[cell.first_node + run_.wall_of(cell).node_count() - 1];
        f.coldest_inner_k = std::min(f.coldest_inner_k, inner_k);
        f.hottest_inner_k = std::max(f.hottest_inner_k, inner_k);
        f.hottest_outer_k = std::max(f.hottest_outer_k, outer_k);
    }
    return all;
}

void Course::record(const WarmStage& stage, const FireDemand& demand) {
    WarmupMoment m;
    m.time_s = time_s_;
    m.phase = demand.phase;
    m.starved = wants_air(stage, demand);
    m.burn_rate_kg_s = demand.burn_rate_kg_s;
    if (m.starved && demand.gas_flow_kg_s > 0.0 && is_fed_by_hand(case_.appliance)) {
        m.burn_rate_kg_s *= std::min(stage.flow_kg_s / demand.gas_flow_kg_s, 1.0);
    }
    m.gas_flow_kg_s = stage.flow_kg_s;
    m.outlet_k = outlet_k_;
    m.top_k = stage.top_k;
    m.draft_pa = stage.draft_pa;
    m.dew_point_k = stage.dew_point_k;
    m.coldest_wall_k = std::numeric_limits<double>::infinity();
    for (const Faces& f : faces()) {
        m.coldest_wall_k = std::min(m.coldest_wall_k, f.coldest_inner_k);
        m.hottest_surface_k = std::max(m.hottest_surface_k, f.hottest_outer_k);
    }
    m.top_wall_k = run_.cells().empty() ? 0.0 : nodes_k_[run_.cells().back().first_node];
    made_.moments.push_back(m);
}

/// What passed a threshold during the step.
void Course::watch(double step_s, const WarmStage& stage, const std::vector<Faces>& before) {
    const double start_s = time_s_ - step_s;
    const std::vector<Faces> now = faces();
    if (lit_) {
        note(made_.draft_met,
             start_s,
             step_s,
             last_.draft_pa - made_.draft_needed_pa,
             stage.draft_pa - made_.draft_needed_pa);
    }
    for (std::size_t i = 0; i < now.size(); ++i) {
        WarmupPart& part = made_.parts[i];
        part.hottest_inner_k = std::max(part.hottest_inner_k, now[i].hottest_inner_k);
        part.hottest_outer_k = std::max(part.hottest_outer_k, now[i].hottest_outer_k);
        if (lit_) {
            note(part.dry,
                 start_s,
                 step_s,
                 before[i].coldest_inner_k - last_.dew_point_k,
                 now[i].coldest_inner_k - stage.dew_point_k);
            note(part.clean,
                 start_s,
                 step_s,
                 before[i].coldest_inner_k - made_.creosote_threshold_k,
                 now[i].coldest_inner_k - made_.creosote_threshold_k);
        }
    }
    const auto falls_below = [&](std::optional<double>& held_s, double limit_pa) {
        if (lit_ || held_s) {
            return;
        }
        if (last_.draft_pa < limit_pa) {
            held_s = 0.0;
        } else if (const auto at = crossing(start_s,
                                            step_s,
                                            last_.draft_pa - limit_pa,
                                            stage.draft_pa - limit_pa,
                                            false)) {
            held_s = *at - *made_.fire_out_s;
        }
    };
    falls_below(made_.holds_low_s, made_.draft_needed_low_pa);
    falls_below(made_.holds_zero_s, 0.0);
}

void Course::begin_phase(std::size_t phase) {
    phase_ = phase;
    phase_start_s_ = time_s_;
    const FireDemand demand = plan_.at(phase, 0.0);
    const bool was_lit = std::exchange(lit_, !demand.out);
    if (was_lit && demand.out) {
        made_.fire_out_s = time_s_;
        made_.holds_low_s.reset();
        made_.holds_zero_s.reset();
    }
    // A moment without length: flow and draft with the walls as they are and the phase's new fire.
    constexpr double instant_s = 1e-9;
    stage_k_ = nodes_k_;
    // Whoever lights a fire turns the flue; a burner begins with the least flow there is.
    const bool turned = last_.flow_kg_s <= 0.0 && is_fed_by_hand(case_.appliance);
    const double guess = turned ? case_.appliance.high.gas_flow_kg_s : last_.flow_kg_s;
    const WarmGas gas{.flow_kg_s = guess,
                      .temperature_k = outlet_k_,
                      .air_share = demand.air_share,
                      .outlet_pa = last_.outlet_pa};
    const WarmStage stage = run_.solve(gas, control(demand), instant_s, nodes_k_, stage_k_);
    const std::vector<Faces> before = faces();
    std::swap(nodes_k_, stage_k_);
    if (phase > 0) {
        // A change of fire may carry a quantity over its threshold at once.
        watch(0.0, stage, before);
    }
    last_ = stage;
    if (time_s_ == 0.0) {
        record(last_, demand);
    }
}

void Course::step(double step_s) {
    const double into_s = time_s_ - phase_start_s_;
    const std::vector<Faces> before = faces();
    const double first_s = diagonal * step_s;
    const auto stage = [&](const WarmStage& guess,
                           double outlet_k,
                           const FireDemand& demand,
                           const std::vector<double>& start_k) {
        return run_.solve({.flow_kg_s = guess.flow_kg_s,
                           .temperature_k = outlet_k,
                           .air_share = demand.air_share,
                           .outlet_pa = guess.outlet_pa},
                          control(demand),
                          first_s,
                          start_k,
                          stage_k_);
    };
    const FireDemand early = plan_.at(phase_, into_s + first_s);
    stage_k_ = nodes_k_;
    const WarmStage first = stage(last_, outlet_after(outlet_k_, into_s, first_s), early, nodes_k_);
    second_start_k_.resize(nodes_k_.size());
    constexpr double carried = (1.0 - diagonal) / diagonal;
    for (std::size_t i = 0; i < nodes_k_.size(); ++i) {
        second_start_k_[i] = nodes_k_[i] + carried * (stage_k_[i] - nodes_k_[i]);
    }
    const double outlet_k = outlet_after(outlet_k_, into_s, step_s);
    const FireDemand late = plan_.at(phase_, into_s + step_s);
    const WarmStage second = stage(first, outlet_k, late, second_start_k_);
    if (!(first.settled && second.settled) && step_s > options_.shortest_s && halves_help_) {
        // A hood or a gate that opens within a long step may leave nothing that balances over all
        // of it: it is gone in halves.
        step(0.5 * step_s);
        step(0.5 * step_s);
        return;
    }
    halves_help_ = halves_help_ && first.settled && second.settled;
    std::swap(nodes_k_, stage_k_);
    outlet_k_ = outlet_k;
    time_s_ += step_s;
    made_.balance.given_j +=
        step_s * ((1.0 - diagonal) * first.given_w + diagonal * second.given_w);
    made_.balance.lost_j += step_s * ((1.0 - diagonal) * first.lost_w + diagonal * second.lost_w);
    if (!late.out) {
        add_heat(step_s * (1.0 - diagonal), first);
        add_heat(step_s * diagonal, second);
    }
    if (wants_air(second, late)) {
        made_.starved_s += step_s;
        note_starving(second, late);
    }
    watch(step_s, second, before);
    last_ = second;
    constexpr double rounding = 1e-6;
    if (time_s_ >= next_record_s_ * (1.0 - rounding)) {
        record(second, late);
        next_record_s_ += options_.record_s;
    }
}

void Course::note_starving(const WarmStage& stage, const FireDemand& demand) {
    std::optional<Starving>& worst = made_.worst_starved;
    const double asked = demand.gas_flow_kg_s;
    const double drawn = control(demand).pushed ? stage.open_flow_kg_s : stage.flow_kg_s;
    if (worst && drawn / asked >= worst->flow_kg_s / worst->asked_kg_s) {
        return;
    }
    worst = {.time_s = time_s_,
             .asked_kg_s = asked,
             .flow_kg_s = drawn,
             .lift_pa = stage.lift_pa,
             .room_pa = stage.room_pa,
             .heater_pa = control(demand).resistance_pa_s2_kg2 * asked * asked,
             .run_pa = stage.run_resistance_pa_s2_kg2 * asked * asked};
}

/// What passed the walls of each part in a stretch of time.
void Course::add_heat(double share_s, const WarmStage& stage) {
    std::size_t part = 0;
    for (std::size_t i = 0; i < stage.cells.size(); ++i) {
        while (made_.parts[part].section != run_.cells()[i].section) {
            ++part;
        }
        made_.parts[part].taken_j += share_s * stage.cells[i].given_w;
        made_.parts[part].lost_j += share_s * stage.cells[i].lost_w;
    }
}

/// The last part of all to become dry and clean; none where one of them never did.
void Course::finish() {
    const auto last_of = [&](Spell WarmupPart::*spell, std::size_t& which) {
        std::optional<double> latest;
        for (std::size_t i = 0; i < made_.parts.size(); ++i) {
            const std::optional<double> at = (made_.parts[i].*spell).from_s;
            if (!at) {
                which = i;
                return std::optional<double>{};
            }
            if (!latest || *at > *latest) {
                latest = at;
                which = i;
            }
        }
        return latest;
    };
    made_.dry_s = last_of(&WarmupPart::dry, made_.last_dry);
    made_.clean_s = last_of(&WarmupPart::clean, made_.last_clean);
    made_.end_s = time_s_;
}

Warmup Course::run() {
    const double heat_before_j = run_.heat_j(nodes_k_);
    next_record_s_ = options_.record_s;
    for (std::size_t phase = 0; phase < plan_.phases().size(); ++phase) {
        begin_phase(phase);
        if (phase == 0) {
            // A flue that draws or is dry from the first moment passes no threshold on the way.
            if (last_.draft_pa >= made_.draft_needed_pa) {
                made_.draft_met.from_s = 0.0;
            }
            const std::vector<Faces> now = faces();
            for (std::size_t i = 0; i < now.size(); ++i) {
                if (now[i].coldest_inner_k >= last_.dew_point_k) {
                    made_.parts[i].dry.from_s = 0.0;
                }
            }
        }
        const double duration_s = plan_.phases()[phase].duration_s;
        const auto steps = static_cast<int>(
            std::max(1.0, std::ceil(duration_s / options_.step_s * (1.0 - 1e-12))));
        for (int i = 0; i < steps; ++i) {
            step(duration_s / steps);
        }
    }
    made_.balance.stored_j = run_.heat_j(nodes_k_) - heat_before_j;
    finish();
    return std::move(made_);
}

} // namespace

Starved Starving::why() const {
    if (lift_pa <= 0.0) {
        return Starved::by_the_flue;
    }
    if (room_pa < 0.0 && (lift_pa + room_pa <= 0.0 || lift_pa >= heater_pa + run_pa)) {
        return Starved::by_the_room;
    }
    return run_pa > heater_pa ? Starved::by_the_run : Starved::by_the_heater;
}

double WarmupBalance::error() const {
    const double miss = given_j - stored_j - lost_j;
    return given_j != 0.0 ? miss / given_j : miss;
}

Warmup warm_up(const Case& resolved, const WarmupOptions& options) {
    return Course(resolved, options).run();
}

} // namespace fluewright
