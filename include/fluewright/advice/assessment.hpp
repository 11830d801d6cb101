#pragma once

#include "fluewright/advice/checks/checks.hpp"
#include "fluewright/advice/required.hpp"
#include "fluewright/advice/score.hpp"
#include "fluewright/advice/verdict.hpp"
#include "fluewright/core/fault.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <string>
#include <vector>

/// The whole answer to "will it draw?".
namespace fluewright {

enum class TradeSizes : std::uint8_t { inch, metric };

/// One pipe size tried throughout the run.
struct SizeTrial {
    std::string id; ///< as the trade says it
    double diameter_m{};
    std::string chimney; ///< `id`, or the masonry that the pipe leads into
    double chimney_m{};
    double area_over_outlet{};
    bool works{};             ///< what `check` says of the run with it
    std::string ruled_out_by; ///< empty where nothing of the size stands against it
    std::string seldom_sold;  ///< which pipe of the run shops seldom stock in it; empty: none
    double least_spare_pa{};  ///< of the states with a draft
    double least_opening_share{};
};

struct SizeAdvice {
    enum class Outcome : std::uint8_t {
        present_is_right, ///< the size in the file is the one suggested
        another,          ///< `suggested` differs from the present one
        none,             ///< no size alone works
        nothing_to_size,  ///< no part of the run can be chosen by diameter
    };

    Outcome outcome{};
    std::string present;   ///< trade name of the present size, or its diameter
    std::string suggested; ///< trade name
    double suggested_diameter_m{};
    bool lines_masonry{}; ///< it is a liner for the masonry that the pipe leads into
    std::string reason;   ///< one sentence
    std::vector<SizeTrial> trials;
};

/// How far the draft of a state may be off by the inside coefficient alone, the least certain
/// figure of all: its drafts at the two ends of what can be defended.
struct DraftEnds {
    double least_heat_pa{}; ///< InsideHeat::european_floor
    double most_heat_pa{};  ///< InsideHeat::opposed_upper
};

struct Assessment {
    Case installation;
    Solution solution;
    std::vector<StateVerdict> verdicts; ///< beside solution.states
    Required required;                  ///< what has to pass
    Verdict verdict;                    ///< by kind of harm
    std::size_t limiting{};             ///< limiting_state(); one past the last where none counts
    /// Beside solution.states, of those with a fire behind a shut door; empty where not asked for.
    std::vector<std::optional<DraftEnds>> draft_ends;
    std::string sentence;            ///< the verdict, for a person
    const catalog::RuleBody* body{}; ///< whose rules the checks hold it against
    CheckResults checks; ///< what every check came to; without words what is not met, and what is
                         ///< undetermined of the dangers
    Findings findings;   ///< what is not met, by severity and weight
    SizeAdvice size;

    /// Whether nothing that is required falls short. What is not decided does not: else no change
    /// to a run could be searched for before every distance is known.
    [[nodiscard]] bool works() const { return verdict.passes; }

    /// Whether what is required passes, and all of it is decided.
    [[nodiscard]] bool passes_decided() const { return works() && !verdict.leaves_open(); }
};

struct AssessOptions {
    bool size_search{true};
    bool words{true};      ///< write the sentence, and figures into the messages of findings
    bool spread{true};     ///< find draft_ends
    bool one_charge{true}; ///< CheckOptions::one_charge
    std::optional<TradeSizes> sizes{}; ///< default: by the units of the file
    std::optional<UnitSystem> units{}; ///< default: those of the file
    Required required{};
    std::string rules{}; ///< id of catalog::rule_bodies(); empty: what the file asks for
};

/// Resolves, solves, judges. Faults: those of resolve().
[[nodiscard]] Result<Assessment, Faults> assess(const Installation& written,
                                                const AssessOptions& options);

/// The same for an installation that is resolved already.
[[nodiscard]] Assessment
assess(const Installation& written, Case resolved, const AssessOptions& options);

/// Tries every trade size throughout the run (existing masonry keeps its size).
[[nodiscard]] SizeAdvice
advise_size(const Installation& written, const Assessment& present, TradeSizes sizes);

} // namespace fluewright
