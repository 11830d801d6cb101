#pragma once

#include "fluewright/advice/checks/finding.hpp"
#include "fluewright/advice/required.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/run/case.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The answer by kind of harm: the one place that says whether an installation passes. Whoever
/// promises something of an installation, asks here.
namespace fluewright {

struct Assessment;

/// What a kind of harm came to.
enum class HarmOutcome : std::uint8_t {
    passes,
    falls_short,
    cannot_tell, ///< nothing found, but a check lacks its figure or a state its answer
    does_not_apply,
};

inline constexpr std::size_t harm_outcome_count = 4;

[[nodiscard]] std::string_view name(HarmOutcome outcome);

/// One line of the answer.
struct HarmVerdict {
    Harm harm{};
    HarmOutcome outcome{};
    bool counts{};           ///< whether the run passes hangs on it
    std::size_t short_of{};  ///< states and findings that make it fall short
    std::size_t mentioned{}; ///< further findings of the kind that do not
    std::size_t open{};      ///< rules of the kind that could not be decided

    // The worst of it, or where it passes the tightest:
    std::optional<std::size_t> state;   ///< index into the states
    std::optional<std::size_t> finding; ///< index into the findings
    std::optional<std::size_t> check;   ///< index into the checks: the first open one
    Kind kind{Kind::number};
    std::optional<double> figure; ///< SI
    std::optional<double> limit;  ///< SI

    std::string sentence; ///< with figure and place
    std::string first;    ///< what to do first; empty where nothing falls short
};

/// All four, in the order of Harm.
struct Verdict {
    std::array<HarmVerdict, harm_count> harms;
    bool passes{}; ///< nothing that counts falls short; what cannot be told is not held against it
    std::size_t rules_broken{}; ///< of the body's rules, warnings or worse that do not count
    std::string_view rules_of;  ///< the body, in words; empty where none is asked

    [[nodiscard]] const HarmVerdict& of(Harm harm) const {
        return harms[static_cast<std::size_t>(harm)];
    }

    /// Whether something that counts is not decided, for want of a value of the file or of an
    /// answer of the solver: then nobody may say that the run passes.
    [[nodiscard]] bool leaves_open() const {
        return std::any_of(harms.begin(), harms.end(), [](const HarmVerdict& v) {
            return v.counts && v.outcome == HarmOutcome::cannot_tell;
        });
    }

    /// Whether the file does not tell enough to decide fire and carbon monoxide.
    [[nodiscard]] bool leaves_fire_open() const {
        return of(Harm::fire).outcome == HarmOutcome::cannot_tell;
    }
};

/// Whether the finding makes its kind fall short: of fire a danger, of draft a fault that the
/// states do not have in their figures, of upkeep a warning or worse. Of reloading none does: how
/// far the door may be opened is judged.
[[nodiscard]] bool falls_short(const Finding& finding);

/// Whether a matter says what the figures of a condition say already.
[[nodiscard]] bool is_in_the_states(const Matter& matter);

/// Judges what an assessment has solved and found. `assessment.verdict` is not looked at; sentences
/// are written where `words` is set.
///
/// Fire       falls short by a danger
/// Draft      by a state of high or low fire without the draft required, by an open front that
///            smokes, and by a fault such as gusts down the flue
/// Reloading  by a door that may be opened less far than `door_opening_wanted`; counts unasked
///            below `door_opening_least`
/// Upkeep     by a warning or worse
[[nodiscard]] Verdict judge_harms(const Assessment& assessment, bool words);

/// The matters of the findings that make something that counts fall short, each once, the
/// weightiest first. `assessment.verdict` has been judged. With upkeep, what makes upkeep fall
/// short is among them, whether it counts or not.
[[nodiscard]] std::vector<const Matter*> matters_against(const Assessment& assessment,
                                                         bool with_upkeep = false);

/// Their titles, "; " between them.
[[nodiscard]] std::string titles_of(const std::vector<const Matter*>& matters);

/// The whole in a sentence or two: what falls short, what counts, what is not decided.
[[nodiscard]] std::string headline(const Verdict& verdict);

} // namespace fluewright
