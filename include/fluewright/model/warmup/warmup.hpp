#pragma once

#include "fluewright/model/warmup/burn_plan.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

/// From a cold flue through a fire to a cold flue again.   [theory eq. 55 to 59]
namespace fluewright {

struct WarmupOptions {
    std::size_t weather{};
    double total_s{};    ///< 0: the burn plan's own
    double step_s{20.0}; ///< greatest time step
    /// A step that does not settle is gone in halves, and those again, down to this.
    double shortest_s{20.0};
    double record_s{60.0}; ///< a moment is kept about this often
    int cells_factor{1};   ///< multiplies the number of cells of every straight
};

/// The state of the run at one time.
struct WarmupMoment {
    double time_s{};
    std::size_t phase{};
    double burn_rate_kg_s{}; ///< what the air lets burn
    double gas_flow_kg_s{};
    double outlet_k{};
    double top_k{};
    double draft_pa{};       ///< at the outlet against the room
    double dew_point_k{};    ///< of the gas's water
    double coldest_wall_k{}; ///< inner face along the run
    double top_wall_k{};
    double hottest_surface_k{}; ///< outer face along the run
    bool starved{};             ///< the flue draws less than the fire asks
};

/// When something became so, and when it ceased; empty where it did not within the time.
struct Spell {
    std::optional<double> from_s;
    std::optional<double> until_s;
};

/// One straight of the run.
struct WarmupPart {
    std::size_t section{};
    Spell dry;   ///< inner wall everywhere above the gas's water dew point, while the fire burns
    Spell clean; ///< inner wall everywhere above the creosote threshold, while the fire burns
    double hottest_inner_k{};
    double hottest_outer_k{};
    double taken_j{}; ///< from the gas, while the fire burned
    double lost_j{};  ///< of that, to the air around

    /// What its wall kept of it.
    [[nodiscard]] double kept_j() const { return taken_j - lost_j; }
};

/// Why a fire gets less air than it asks.
enum class Starved : std::uint8_t {
    by_the_flue,   ///< the gas in it is too cold to rise
    by_the_room,   ///< it would draw enough if the room were not below outdoors
    by_the_run,    ///< what the flow loses on its way is more than what it loses in the heater
    by_the_heater, ///< the flue does not yet lift what the heater takes for that flow
};

[[nodiscard]] constexpr auto words_of(Starved) {
    return std::to_array<std::string_view>({"flue", "room", "run", "heater"});
}

/// The moment at which a fire wants most for air.
struct Starving {
    double time_s{};
    double asked_kg_s{};
    double flow_kg_s{};
    double lift_pa{};   ///< of the gas in the flue, the room at the pressure outdoors
    double room_pa{};   ///< the room against outdoors
    double heater_pa{}; ///< what the flow asked would lose in the heater
    double run_pa{};    ///< and along the run

    [[nodiscard]] Starved why() const;
};

/// Heat given by the gas = heat stored in the walls + heat lost to the air around.
struct WarmupBalance {
    double given_j{}; ///< enthalpy of the gas at the outlet less that at the chimney top
    double stored_j{};
    double lost_j{};

    /// What does not close, over what was given.
    [[nodiscard]] double error() const;
};

struct Warmup {
    std::vector<BurnPhase> phases;
    std::vector<Assumption> assumptions;
    std::vector<WarmupMoment> moments; ///< the first at time 0
    std::vector<WarmupPart> parts;
    double draft_needed_pa{};     ///< of high fire
    double draft_needed_low_pa{}; ///< of low fire
    double creosote_threshold_k{};
    Spell draft_met;             ///< draft at least that needed at high fire
    std::optional<double> dry_s; ///< all parts dry; the last of them is `last_dry`
    std::optional<double> clean_s;
    std::size_t last_dry{}; ///< index into parts; meaningless without parts
    std::size_t last_clean{};
    std::optional<double> fire_out_s;
    std::optional<double> holds_low_s;  ///< after the fire: draft at least that needed at low fire
    std::optional<double> holds_zero_s; ///< after the fire: draft above nothing
    double starved_s{};                 ///< time in which the flue drew less than the fire asked
    std::optional<Starving> worst_starved; ///< by the share of the flow that is missing
    WarmupBalance balance;
    double end_s{};
};

/// Marches the fire through its plan.
///
/// Gas    quasi-steady: at each moment it follows the run past the walls as they are, with the
///        inside coefficient of the steady march, through joints, regulators and hoods as there
/// Walls  rings of every layer, implicit in time (two-stage diagonally implicit Runge-Kutta of
///        second order, L-stable), each cell of the run solved together with the gas that passes it
/// Flow   what the fire asks, but no more than appliance and run let through with the air control
///        open: needed draft times (flow/nominal flow)^2 against the draft of that moment. With the
///        fire out the control stays where low fire had it. A burner keeps its rate whatever the
///        draft: its gas flows as made, or, above a draft hood of its own, as the flue draws it.
/// Notes  Any step is stable; the energy balance closes to round-off.
[[nodiscard]] Warmup warm_up(const Case& resolved, const WarmupOptions& options);

} // namespace fluewright
