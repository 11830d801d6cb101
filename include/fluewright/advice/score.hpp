#pragma once

#include "fluewright/advice/required.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

/// How a state turns out, and the quick answer for comparing many runs: only the states that
/// decide, without the profile along the run.
namespace fluewright {

/// How one state turned out.
struct StateVerdict {
    bool counts{}; ///< whether the state decides about its harm; others inform only
    bool passes{};
    /// What is to spare, in the unit of `kind`: draft over the need [Pa], or the share of the
    /// door's opening over the share wanted.
    double spare{};
    Kind kind{Kind::pressure};
    Harm harm{Harm::draft}; ///< draft or reloading; an open front is draft
};

/// Judges one state. High and low fire pass with draft to spare; the reload passes when the door
/// may be opened at least as far as `door_opening_wanted` (a fireplace: wholly, on a high fire and
/// on embers); air control open, the idle flue and a door opened on a stove's high fire inform
/// only. [theory eq. 41]
[[nodiscard]] StateVerdict judge(const Case& resolved, const StateResult& state);

/// Share of the opening over which the smoke has to stay in: all of an open front.
[[nodiscard]] double door_wanted(const Case& resolved);

/// What is to spare over what is asked [-]: comparable between drafts and doors. Negative where the
/// state falls short.
[[nodiscard]] double relative_spare(const StateVerdict& verdict, const StateResult& state);

/// The same over what has to be for the run to pass [-]: a door that nobody asked for has to open
/// `door_opening_least` only. Nothing where the state is no part of what is required.
[[nodiscard]] std::optional<double>
required_spare(const StateVerdict& verdict, const StateResult& state, const Required& required);

/// Index of the state with least to spare: of those required, or where none is, of those that
/// count; one past the last where none counts. The spans are of one length.
[[nodiscard]] std::size_t limiting_state(std::span<const StateResult> states,
                                         std::span<const StateVerdict> verdicts,
                                         const Required& required);

/// The states of an appliance that decide the verdict, in the order of StateKind.
[[nodiscard]] std::vector<StateKind> deciding_states(const Case& resolved);

struct Score {
    std::vector<StateResult> states; ///< weather by weather; only those that decide
    std::vector<StateVerdict> verdicts;
    double least_spare{};   ///< of the limiting state: required_spare(), or where no state is
                            ///< required, relative_spare()
    std::size_t limiting{}; ///< limiting_state()
    bool passes{};          ///< every state that is required passes; findings are not looked at
    double greatest_over{}; ///< greatest draft over the appliance's greatest, less one; over 0: too
                            ///< strong
};

/// Solves and judges the states that decide.
[[nodiscard]] Score score(const Case& resolved, const Required& required = {});

/// Fills what follows from the states and verdicts.
void sum_up(const Case& resolved, const Required& required, Score& score);

/// Share of the door's opening over which the smoke stays in, in the worst state that counts; over
/// 1: all of it and more. Not a number where no door decides.
[[nodiscard]] double least_opening(const Score& score);

/// "low fire, mild day"
[[nodiscard]] std::string state_name(const Case& resolved, const StateResult& state);

} // namespace fluewright
