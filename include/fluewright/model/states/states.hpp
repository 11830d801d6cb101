#pragma once

#include "fluewright/model/fields/vocabulary.hpp"
#include "fluewright/model/march/march.hpp"
#include "fluewright/model/states/cold_start.hpp"

#include <string_view>
#include <vector>

/// The ways of firing in which a run must work, solved.
namespace fluewright {

enum class Status : std::uint8_t {
    solved,
    no_flow,   ///< the physics has no answer: no flow upwards balances
    no_answer, ///< the solver gave up; a fault of the program
};

/// What the opened door does.
struct DoorResult {
    double top_edge_pa{};       ///< room minus box at the top edge; smoke stays in while positive
    double face_velocity_m_s{}; ///< of the air over the whole opening
    double
        opening_share{}; ///< how far the door may be opened before smoke comes out; over 1: fully
    double box_temperature_k{};
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
    double capacity_kg_s{}; ///< free burn: highest burn rate carried at the needed draft
    DoorResult door;
    RoomAir room;
    ColdStart cold;
    MarchResult flow;
    std::vector<Station> stations;

    [[nodiscard]] double margin_pa() const { return draft_pa - draft_needed_pa; }
};

struct Solution {
    std::vector<StateResult> states; ///< weather by weather, in the order of StateKind
};

/// Whether a solution keeps the profile along the run of each state.
enum class Detail : std::uint8_t { stations, totals };

/// Solves every state that has a meaning for the appliance, in every weather.
[[nodiscard]] Solution solve(const Case& resolved, Detail detail);

/// The fire a model must be prepared for to solve this state.
[[nodiscard]] constexpr Fire fire_of(StateKind kind) {
    return kind == StateKind::standing || kind == StateKind::cold_start ? Fire::out : Fire::burning;
}

/// One state. The model must be prepared for fire_of(kind).
[[nodiscard]] StateResult solve_state(const FlueModel& model, StateKind kind, Detail detail);

/// The states this appliance has.
[[nodiscard]] std::vector<StateKind> states_of(const Case& resolved);

} // namespace fluewright
