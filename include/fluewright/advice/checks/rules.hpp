#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/states/states.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// An installation held against the rules of one country. "Met" says that a figure of the file
/// meets a figure of a rule, and nothing more; who decides is named with every report.
namespace fluewright {

enum class RuleOutcome : std::uint8_t { not_met, cannot_tell, met, does_not_apply };

[[nodiscard]] std::string_view name(RuleOutcome outcome);

struct RuleResult {
    const catalog::Rule* rule{};
    RuleOutcome outcome{RuleOutcome::does_not_apply};
    std::string place; ///< "elbow 2", "the heater"; empty where the rule is about the whole
    int part{-1};      ///< index in the run, or -1
    Kind kind{Kind::number};
    std::optional<double> figure;     ///< of the file, SI
    std::optional<double> limit;      ///< of the rule here, SI
    std::string message;              ///< one sentence with the figures, or why it does not apply
    std::vector<std::string> missing; ///< keys that would decide it, as pointers into the file
};

struct RuleReport {
    const catalog::RuleBody* body{};
    std::vector<RuleResult> results; ///< in the order of the table

    [[nodiscard]] std::size_t count(RuleOutcome outcome) const;
};

/// The rules the file asks for: its own `rules`, else us with US units, else none.
[[nodiscard]] std::string_view rule_set_of(const Installation& written, UnitSystem units);

/// Holds every rule of `body` and every rule of the trade against the file. A distance listed for
/// a part or heater goes before the general figure. `body` is an id of rule_bodies(); with "none"
/// the report is empty.
[[nodiscard]] RuleReport check_rules(const Installation& written,
                                     const Case& installation,
                                     const Solution& solution,
                                     std::string_view body);

/// The distance left with a shield where `needed_m` is needed without one, by the table of
/// shields; empty where the table says nothing. `above`: over a heater or a level pipe.
///
/// Source  California Mechanical Code 2007, table 5-3; straight lines between the distances listed
[[nodiscard]] std::optional<double>
shielded_clearance_m(Shield shield, double needed_m, bool above);

/// Height the mouth needs over the place where it leaves a plain pitched roof, so that it is
/// `above_roof_m` over that place and `above_near_m` over all of the roof within `reach_m` level.
[[nodiscard]] double mouth_height_needed_m(double pitch_rad,
                                           double distance_to_ridge_m,
                                           double above_roof_m,
                                           double above_near_m,
                                           double reach_m);

} // namespace fluewright
