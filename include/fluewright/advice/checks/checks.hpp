#pragma once

#include "fluewright/advice/checks/finding.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <string_view>

/// The one engine of checks. "Met" says that a figure of the installation meets a figure of a
/// check, and nothing more; who decides on the spot is named with every body of rules.
namespace fluewright {

/// What every check came to.
struct Checked {
    const catalog::RuleBody* body{}; ///< whose rules were asked; "none" for physics and trade alone
    CheckResults results;            ///< in the order of checks(), worst place first
    Findings findings;               ///< what is not met, by severity and weight
};

/// How many; old figures of one town, which decide nothing, are left out.
[[nodiscard]] std::size_t count_of(const CheckResults& results, CheckOutcome outcome);

struct CheckOptions {
    std::string_view body{"none"}; ///< id of catalog::rule_bodies()
    /// Write messages, and results that are met, undetermined or do not apply. Without, only what
    /// is not met is there, and what is undetermined of the dangers, without messages: for who
    /// wants the verdict only.
    bool with_words{true};
    /// Follow the fire of a masonry heater from cold, to tell whether its wall dries. That takes a
    /// hundred times as long as the rest, and is a matter of upkeep alone.
    bool one_charge{true};
};

/// Which kind of harm a finding is of: a danger is a matter of fire and carbon monoxide whoever
/// says so, and what keeps the run from doing its work is never a mere matter of upkeep.
[[nodiscard]] Harm harm_of(const Matter& matter, Severity severity);

/// The rules the file asks for: its own `rules`, else us with US units, else none.
[[nodiscard]] std::string_view rule_set_of(const Installation& written, UnitSystem units);

/// Holds an installation and its solution (of Detail::stations) against every check of physics and
/// trade and the rules of one body. A distance listed for a part or heater goes before the general
/// figure.
[[nodiscard]] Checked check_all(const Installation& written,
                                const Case& resolved,
                                const Solution& solution,
                                const CheckOptions& options);

/// The same for the checks that need no solution.
[[nodiscard]] Checked
check_shape(const Installation& written, const Case& resolved, const CheckOptions& options);

/// The distance left with a shield where `needed_m` is needed without one, by the table of
/// shields; empty where the table says nothing. `above`: over a heater or a level pipe.
///
/// Source  California Mechanical Code 2007, table 5-3   [shield-table-ca-2007]; straight lines
/// between
///         the distances listed
[[nodiscard]] std::optional<double>
shielded_clearance_m(Shield shield, double needed_m, bool above);

/// Height the chimney top needs over the place where it leaves a plain pitched roof, so that it is
/// `above_roof_m` over that place and `above_near_m` over all of the roof within `reach_m` level.
[[nodiscard]] double top_height_needed_m(double pitch_rad,
                                         double distance_to_ridge_m,
                                         double above_roof_m,
                                         double above_near_m,
                                         double reach_m);

} // namespace fluewright
