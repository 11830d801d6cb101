#pragma once

#include "fluewright/model/fields/vocabulary.hpp"
#include "fluewright/model/march/march.hpp"
#include "fluewright/model/states/cold_start.hpp"

#include <array>
#include <string_view>
#include <vector>

/// The ways of firing in which a run must work, solved.
namespace fluewright {

enum class Status : std::uint8_t {
    solved,
    no_flow, ///< the physics has no answer: no flow upwards balances
    /// A high or low fire that presses or speeds the gas beyond vent_limit: the figures are those
    /// of the greatest burn rate within it.
    cannot_vent,
    no_answer, ///< the solver gave up; a fault of the program
};

inline constexpr std::array<std::string_view, 4> status_words{
    "solved", "no flow", "cannot vent", "no answer"};

[[nodiscard]] constexpr std::string_view name(Status status) {
    return status_words[static_cast<std::size_t>(status)];
}

/// How far the door may be opened some time after it was. Over 1: fully.   [theory eq. 70]
struct DoorMoment {
    double elapsed_s{};
    double gas_flow_kg_s{};      ///< up the run, with the box at room pressure up to the top edge
    double box_temperature_k{};  ///< then
    double share_by_velocity{};  ///< until the mean face velocity no longer keeps smoke back
    double share_by_mixed_box{}; ///< until smoke comes out of a box that is mixed throughout
};

/// When an opened door is looked at: at once, and over the next minute.
inline constexpr std::array<double, 3> door_moments_s{0.0, 20.0, 60.0};

/// What the opened door does, a minute after it was opened; an open front for ever.
struct DoorResult {
    double top_edge_pa{};         ///< room minus box at the top edge, the box mixed throughout
    double face_velocity_m_s{};   ///< of the air over the whole opening
    double opening_share{};       ///< DoorMoment::share_by_velocity: what is judged
    double opening_share_mixed{}; ///< DoorMoment::share_by_mixed_box: the cautious end
    double box_temperature_k{};
    std::vector<DoorMoment> moments; ///< where asked for: at door_moments_s
};

/// The air of the room in a state.
struct RoomAir {
    double pressure_pa{}; ///< against outdoors at the height of the outlet
    double taken_kg_s{};  ///< by the fire and by joints and openings of the run
    // With a house only:
    double idle_pressure_pa{};         ///< with no fire
    double pressure_without_fans_pa{}; ///< with this fire and every fan off
    double neutral_height_m{};         ///< of the neutral level over the outlet
};

struct StateResult {
    StateKind kind{};
    std::size_t weather{};
    Status status{Status::solved};
    double burn_rate_kg_s{};
    double gas_flow_kg_s{};
    double gas_temperature_k{}; ///< at the outlet
    double draft_pa{};          ///< available at the outlet, against the room
    double draft_needed_pa{};
    double capacity_kg_s{}; ///< air control open: highest burn rate carried at the needed draft
    DoorResult door;
    RoomAir room;
    ColdStart cold;
    MarchResult flow;
    std::vector<Station> stations;
    std::size_t marches{}; ///< about how often the run was marched to find it

    [[nodiscard]] double margin_pa() const { return draft_pa - draft_needed_pa; }
};

struct Solution {
    std::vector<StateResult> states; ///< weather by weather, in the order of StateKind
};

/// Whether a solution keeps the profile along the run of each state.
enum class Detail : std::uint8_t { stations, totals };

/// Solves every state that has a meaning for the appliance, in every weather.
[[nodiscard]] Solution solve(const Case& resolved, Detail detail);

/// Of those, only some kinds, in this order.
[[nodiscard]] Solution solve(const Case& resolved, Detail detail, std::span<const StateKind> kinds);

/// The fire a model must be prepared for to solve this state.
[[nodiscard]] constexpr Fire fire_of(StateKind kind) {
    return kind == StateKind::idle || kind == StateKind::cold_start ? Fire::out : Fire::burning;
}

/// Whether a door or an open front lets in the air.
[[nodiscard]] constexpr bool is_door_open(StateKind kind) {
    return kind == StateKind::door_open_high || kind == StateKind::door_open_embers;
}

/// Whether a fire burns behind a shut door.
[[nodiscard]] constexpr bool has_closed_fire(StateKind kind) {
    return fire_of(kind) == Fire::burning && !is_door_open(kind);
}

/// Whether the burn rate sets the flow: a fire held at a rate, high or low.
[[nodiscard]] constexpr bool is_held_fire(StateKind kind) {
    return kind == StateKind::high_fire || kind == StateKind::low_fire;
}

/// Gas at the outlet of a fire with the room as it is in the model's weather.
[[nodiscard]] inline double gas_temperature_k(const FlueModel& model, const Firing& fire) {
    return model.resolved().gas_temperature_k(
        fire, model.surroundings().temperature_k[static_cast<std::size_t>(Zone::room)]);
}

/// How far the door of a solved state may be opened at each of door_moments_s. The model must be
/// the one the state was solved with.
[[nodiscard]] std::vector<DoorMoment> open_door_moments(const FlueModel& model,
                                                        const StateResult& state);

/// How long a door may stand wide open until smoke comes, by mean face velocity [s]: 0 where it may
/// not be opened so far at all, infinite where it stays in beyond the last of door_moments_s.
[[nodiscard]] double wide_open_s(const std::vector<DoorMoment>& moments);

/// One state. The model must be prepared for fire_of(kind).
[[nodiscard]] StateResult solve_state(const FlueModel& model, StateKind kind, Detail detail);

/// The same by a slow search that brackets the outlet's pressure within that of the room within the
/// flow: what the quick one is held against.
[[nodiscard]] StateResult
solve_state_by_nesting(const FlueModel& model, StateKind kind, Detail detail);

/// Whether more draft makes more fire. A burner meters its fuel, and an open front stands open.
[[nodiscard]] bool burns_freely(const ApplianceCase& appliance);

/// The states this appliance has.
[[nodiscard]] std::vector<StateKind> states_of(const Case& resolved);

} // namespace fluewright
