#pragma once

#include "fluewright/core/quantity/quantity.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What is wrong, or could be, and what to do about it.
namespace fluewright {

/// How much it matters, greatest first: the order of a report.
enum class Severity : std::uint8_t {
    danger,  ///< smoke or gas in the room, or more heat than a part stands
    fault,   ///< the run does not do its work in some state
    warning, ///< works, but a limit of the trade is passed
    note,    ///< worth knowing
};

[[nodiscard]] std::string_view name(Severity severity);

/// One row of the table of findings: what a finding is, whatever the installation.
struct FindingInfo {
    std::string_view id; ///< names the bad thing
    Severity severity;
    std::string_view title;   ///< a few words
    std::string_view meaning; ///< what it means and why it matters
    std::string_view rule;    ///< the equation or the rule, with its figures
    std::string_view remedy;  ///< what to do, in general
    std::string_view source;  ///< key into catalog::sources()
    std::string_view mark;    ///< how the limit is known
};

/// Every finding there is, in order of id.
[[nodiscard]] std::span<const FindingInfo> finding_table();

/// The row of an id; null when there is none.
[[nodiscard]] const FindingInfo* find_finding(std::string_view id);

/// A finding about one installation.
struct Finding {
    const FindingInfo* info{};
    std::string place;   ///< in words: "elbow 2", "the mouth", "the outlet"
    int part{-1};        ///< index in the run, or -1
    std::string state;   ///< "high fire, frost"; empty where it holds always
    std::string message; ///< one sentence with the figures, in the units of the report
    std::string remedy;  ///< what to do here; empty: the general remedy
    Kind kind{Kind::number};
    double figure{};
    std::optional<double> limit;
    double weight{}; ///< how far past the limit, for order within a severity
};

using Findings = std::vector<Finding>;

} // namespace fluewright
