#pragma once

#include "fluewright/io/report/report_text.hpp"

#include <string>

namespace fluewright::results {
struct StateRow;
}

/// The sections of the text report, in the order they are printed.
namespace fluewright::report {

[[nodiscard]] std::string heading(std::string_view text, const Style& style);
[[nodiscard]] std::string verdict_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string states_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string size_text(const Assessment& assessment, const ReportOptions& options);
/// "stove-ordinance, looked up"
[[nodiscard]] std::string origin_of(const fluewright::Check& check);
[[nodiscard]] std::string findings_text(const Assessment& assessment, const Style& style);
/// What the checks came to that are not findings: how many, and what the open ones lack.
[[nodiscard]] std::string
checks_text(const Assessment& assessment, const Style& style, bool details);
/// One sentence below the verdict: how far it holds.
[[nodiscard]] std::string tolerances_in_short(const ToleranceStudy& study, const Style& style);
[[nodiscard]] std::string
tolerances_text(const Assessment& assessment, const ToleranceStudy& study, const Style& style);
[[nodiscard]] std::string spread_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string assumptions_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string understood_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string profiles_text(const Assessment& assessment, const Style& style);
/// What turns a reversed flue, and how long that takes; starts with a blank.
[[nodiscard]] std::string
turning_words(const Assessment& assessment, const ColdStart& cold, const Style& style);

/// The room's pressure in the states of one weather, from the house's balance.
[[nodiscard]] std::string
room_words(const Assessment& assessment, std::size_t weather, const Style& style);

/// Every joint in one state: pressure and leak.
[[nodiscard]] std::string joints_text(const results::StateRow& state, const Style& style);
[[nodiscard]] std::string cautions_text(const Style& style);

/// A whole report with its last line, in letters the terminal can show.
[[nodiscard]] std::string
signed_off(std::string report, std::string_view version, std::string_view file, const Style& style);

/// A value with its unit; a height of nothing is 0 m, not 0 mm.
[[nodiscard]] std::string quantity(double si, Kind kind, const Style& style);

/// A value without its unit, for a column whose heading has it.
[[nodiscard]] std::string bare_number(double si, Kind kind, const Style& style);

/// The same with its sign.
[[nodiscard]] std::string signed_number(double si, Kind kind, const Style& style);

/// A value with its unit and its sign: "+5.1 Pa".
[[nodiscard]] std::string signed_quantity(double si, Kind kind, const Style& style);

/// A heading with the unit its column is in below it.
[[nodiscard]] std::string with_unit(std::string_view words, Kind kind, const Style& style);

} // namespace fluewright::report
