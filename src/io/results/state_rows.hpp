#pragma once

#include "fluewright/advice/score.hpp"
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

    [[nodiscard]] bool is_door() const { return report::is_door_open(state.kind); }
};

/// The same with what `check` tells of it: along the run, at the joints, at the door.
struct CheckedState {
    StateRow figures;
};

template <>
const Record<StateRow>& record_of<StateRow>();
template <>
const Record<CheckedState>& record_of<CheckedState>();

/// The states of a score.
[[nodiscard]] std::vector<StateRow> state_rows(const Case& installation, const Score& score);

} // namespace fluewright::results
