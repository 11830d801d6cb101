#pragma once

#include "fluewright/advice/checks/finding.hpp"
#include "own_checks.hpp"
#include "view.hpp"

#include <array>
#include <optional>
#include <string_view>

/// The checks of physics and trade, in groups of one subject.
namespace fluewright::checking {

/// A figure held against its limit.
struct Held {
    Kind kind{Kind::number};
    std::optional<double> figure{};
    std::optional<double> limit{};
    double weight{}; ///< how far past the limit; negative where met
};

/// Where a check looked.
struct Where {
    const Section* section{};
    std::string_view place{}; ///< in place of a section
    const StateResult* state{};
};

/// What a check looks at, and where it puts what it comes to.
class Subject {
public:
    Subject(const View& view, CheckResults& results);

    const View& view;
    const Case& resolved;

    /// Puts down what a check came to. Returns the result where it is not met, for the caller to
    /// write its message; null where nobody asks for one. Of what is met only the place and state
    /// nearest to the limit is kept.
    [[nodiscard]] CheckResult*
    hold(std::size_t own_check, bool met, const Held& held, const Where& where);

    /// Whether a check was made at all.
    [[nodiscard]] bool made(std::size_t own_check) const { return made_[own_check].done; }

    [[nodiscard]] bool with_words() const { return view.with_words; }

    /// What the wind pushes down with on the chimney top in a state; under 0 where it draws.
    [[nodiscard]] double wind_on_top_pa(const StateResult& state) const;

    /// For the message of what was held last: its figure and its limit in as many digits as tell
    /// them apart.
    [[nodiscard]] std::string show(double value, Kind kind) const;

private:
    struct Made {
        bool done{};
        bool failed{};
        int nearest{-1}; ///< index of the met result nearest to its limit
    };

    CheckResults& results_;
    Held last_{}; ///< what was not met last
    std::array<Made, own_checks.size()> made_{};
};

// Checks that need a solution.
void draft(Subject& subject);          ///< short, too strong, reversed, smoke at the door
void joint_pressure(Subject& subject); ///< smoke at the joints
void heat(Subject& subject);           ///< dew point, tar, ratings, lengthening
void top(Subject& subject);            ///< cold air that falls in
void house(Subject& subject);          ///< starved, fans, wind, leaking joints and hoods

// Checks of the shape alone.
void alarm(Subject& subject);        ///< what was heard
void too_hot(Subject& subject);      ///< what was measured at red heat
void sizes(Subject& subject);        ///< areas against the outlet and along the run
void shape(Subject& subject);        ///< level runs, turns, cleanout, height
void joints(Subject& subject);       ///< ends and bores
void heat_balance(Subject& subject); ///< measured heats against the heat in the fuel
void doubtful(Subject& subject);     ///< fuel, and input far from what is usual

/// One result of a check for all states in which it is not met: the worst, which names the others.
/// `results` are those of physics and trade.
[[nodiscard]] CheckResults one_for_all_states(CheckResults results);

/// What is not met, one finding a matter and place, by severity and weight.
[[nodiscard]] Findings findings_of(const CheckResults& results);

} // namespace fluewright::checking
