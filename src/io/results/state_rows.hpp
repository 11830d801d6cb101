#pragma once

#include "fluewright/advice/assessment.hpp"
#include "io/text/words.hpp"
#include "record.hpp"

#include <vector>

/// One way of firing in one weather, the same in every answer.
namespace fluewright::results {

/// The figures of a state, as every command that solves states gives them.
struct StateRow {
    const Case& installation;
    const StateResult& state;
    const StateVerdict& verdict;

    /// Whether run and appliance came into balance.
    [[nodiscard]] bool is_solved() const { return report::has_working_point(state); }

    [[nodiscard]] bool is_door() const { return is_door_open(state.kind); }
};

/// The same with what `check` tells of it: along the run, at the joints, at the door.
struct CheckedState {
    StateRow figures;
    const DraftEnds* ends{}; ///< null where none were looked for
};

/// The outlet, or the upper end of a section of the run.
struct StationRow {
    const StateRow& of;
    std::size_t at;

    [[nodiscard]] const Station& station() const { return of.state.stations[at]; }

    /// Of a station whose section has a wall.
    [[nodiscard]] std::optional<double> wall(double value) const {
        return report::has_wall_temperature(of.installation, of.state, at) ? std::optional{value}
                                                                           : std::nullopt;
    }
};

/// A joint in a state.
struct JointRow {
    const StateRow& of;
    report::Joint joint;
};

template <>
const Record<StationRow>& record_of<StationRow>();
template <>
const Record<JointRow>& record_of<JointRow>();
template <>
const Record<DoorResult>& record_of<DoorResult>();

/// All of them from the outlet up; none where the state was not solved.
[[nodiscard]] std::vector<StationRow> stations_of(const StateRow& state);
[[nodiscard]] std::vector<JointRow> joints_of(const StateRow& state);

template <>
const Record<StateRow>& record_of<StateRow>();
template <>
const Record<CheckedState>& record_of<CheckedState>();

/// The states of an assessment.
[[nodiscard]] std::vector<CheckedState> checked_states(const Assessment& assessment);

/// The states of a score.
[[nodiscard]] std::vector<StateRow> state_rows(const Case& installation, const Score& score);

} // namespace fluewright::results
