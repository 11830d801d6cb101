#pragma once

#include "fluewright/advice/score.hpp"
#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/fault.hpp"
#include "fluewright/model/run/case.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// One or two numbers of an installation over a range, every state at every value.
namespace fluewright {

struct SweepPoint {
    std::vector<double> at;     ///< SI, one for each quantity
    std::optional<Score> score; ///< empty where the run cannot be built or computed so
    std::string fault;          ///< why, then
    bool works{};               ///< what `check` says of the file with the values
    std::string short_of;       ///< what falls short there: a state, or what stands against it

    [[nodiscard]] bool passes() const { return works; }
};

/// Where, between two neighbouring values of one quantity, the verdict turns.
struct SweepTurn {
    double at{};         ///< SI
    bool passes_above{}; ///< the run works at greater values
    std::string state;   ///< what falls short on the other side: a state, or what was found
    std::string words; ///< the same as part of a sentence: "the draft is short in high fire, mild"
};

/// Values at which the run cannot be built or computed.
struct SweepBlank {
    std::string words;   ///< which values, in the unit they are shown in
    std::string reason;  ///< a sentence without its full stop
    std::size_t count{}; ///< points
};

struct Sweep {
    Case present; ///< as the file has it
    Case shape;   ///< of a point that was solved: its weathers are those of the scores
    std::vector<Varied> over;
    std::vector<SweepPoint> points; ///< the last quantity turns fastest
    std::vector<SweepTurn> turns;   ///< of one quantity
    std::vector<SweepBlank> blanks; ///< where there is no figure, one for each reason
    std::string sentence;           ///< what it comes to, for a person
    std::string not_decided;        ///< fire_not_decided() of the file

    [[nodiscard]] const SweepPoint& point(std::size_t first, std::size_t second) const {
        return points[first * over[1].values.size() + second];
    }
};

struct SweepOptions {
    std::optional<UnitSystem> units{}; ///< default: those of the file
    Required required{};
    unsigned threads{1}; ///< the answer does not depend on it
    /// Called now and then with the points solved and those to solve; may be empty.
    std::function<void(std::size_t, std::size_t)> progress{};
};

/// The most points one sweep may have.
inline constexpr std::size_t most_sweep_points = 20000;

/// Solves every combination of the values of one or two quantities, and finds where the verdict
/// turns. Faults: those of resolve() for the file as it is.
/// [theory eq. 43]
[[nodiscard]] Result<Sweep, Faults>
sweep(const Installation& written, std::vector<Varied> over, const SweepOptions& options);

/// The unit a quantity of a sweep is shown in: that of the trade for its size.
[[nodiscard]] std::string_view shown_unit(const Varied& varied, UnitSystem system);

} // namespace fluewright
