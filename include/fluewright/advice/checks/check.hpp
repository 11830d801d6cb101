#pragma once

#include "fluewright/advice/checks/harm.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <cstdint>
#include <span>
#include <string_view>

/// The table of checks: one thing held against one limit, by the physics, by trade practice or by a
/// body's rule. What is bad about it is a matter; several checks may speak of one matter.
namespace fluewright {

/// How much it matters, greatest first: the order of a report.
enum class Severity : std::uint8_t {
    danger,  ///< fire, or smoke and carbon monoxide in the room
    failure, ///< the run does not do its work in some state; printed as "fault"
    warning, ///< works, but a limit of the trade or of a rule is passed
    note,    ///< worth knowing
};

[[nodiscard]] std::string_view name(Severity severity);

/// Where a check has its limit from.
enum class Basis : std::uint8_t { physics, trade, body };

[[nodiscard]] std::string_view name(Basis basis);

/// What a check came to. The order is that of a report.
enum class CheckOutcome : std::uint8_t { not_met, undetermined, met, does_not_apply };

[[nodiscard]] std::string_view name(CheckOutcome outcome);

/// A bad thing, whatever the installation and whoever says so. Its id is the id of the finding.
struct Matter {
    std::string_view id; ///< names the bad thing
    Harm harm;           ///< what it threatens; as a danger it is a matter of fire and CO anyway
    Severity severity;   ///< as physics or trade see it; where only bodies speak of it, the worst
    bool per_place;      ///< each place of the run is a finding of its own
    std::string_view title;   ///< a few words
    std::string_view meaning; ///< what it means and why it matters
    std::string_view remedy;  ///< what to do, in general
};

/// One row of the table of checks.
/// [theory eq. 36]
struct Check {
    std::string_view id; ///< of a rule; a check of physics or trade has the id of its matter
    Basis basis;
    std::string_view body; ///< id of catalog::rule_bodies(); "any" for all of them
    const Matter* matter;
    Severity severity;
    bool advice;           ///< a habit of the trade, or a figure nobody has looked up; not a rule
    bool local;            ///< an old figure of one town: told in the details, deciding nothing
    bool needs_solution;   ///< needs the solved states, so that the shape alone cannot tell
    std::string_view rule; ///< the equation or what is asked, with its figures
    std::string_view applies;   ///< to what
    std::string_view source;    ///< key into catalog::sources()
    std::string_view clause;    ///< where in it; empty where only its place there is known
    std::string_view mark;      ///< how the limit is known
    std::string_view disagrees; ///< what another source says; empty where none is known
};

/// Every matter there is, in order of id.
[[nodiscard]] std::span<const Matter> matters();

/// The row of an id; null when there is none.
[[nodiscard]] const Matter* find_matter(std::string_view id);

/// The matter in the words of a kind of heater; itself where the general words hold.
[[nodiscard]] const Matter& matter_for(const Matter& matter, HeaterKind kind);

/// Every check there is: those of physics and trade by id, then those of data/rules.csv as they
/// stand there.
[[nodiscard]] std::span<const Check> checks();

/// The row of an id; null when there is none.
[[nodiscard]] const Check* find_check(std::string_view id);

} // namespace fluewright
