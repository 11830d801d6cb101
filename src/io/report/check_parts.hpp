#pragma once

#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/io/report/report_text.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <optional>
#include <span>
#include <string>

namespace fluewright::results {
struct StateRow;
}

/// The sections of the text report, in the order they are printed.
namespace fluewright::report {

[[nodiscard]] std::string heading(std::string_view text, const Style& style);

/// Dangers that stand in the run, before an answer that is about something else; empty where none
/// does.
[[nodiscard]] std::string
dangers_text(std::span<const PresentDanger> dangers, std::string_view what, const Style& style);

/// What fire_not_decided() says, as a paragraph; nothing where it says nothing.
[[nodiscard]] std::string not_decided_text(std::string_view words, const Style& style);
/// A paragraph each line of which is inked.
[[nodiscard]] std::string
inked_paragraph(std::string_view text, Indent indent, Ink ink, const Style& style);
/// "Fire, CO": a kind of harm, short enough for a column.
[[nodiscard]] std::string_view label_of(Harm harm);
/// "DANGER", "SHORT", "ok"; "short" where it does not count.
[[nodiscard]] TableCell outcome_cell(const HarmVerdict& verdict);
/// A line for each kind of harm, and what counts.
[[nodiscard]] std::string verdict_lines(const Assessment& assessment, const Style& style);
/// The sentence over it as well.
[[nodiscard]] std::string verdict_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string states_text(const Assessment& assessment, const Style& style);
/// The same of the weather that decides.
[[nodiscard]] std::string deciding_weather_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string size_in_short(const Assessment& assessment, const ReportOptions& options);
/// With every size that was tried.
[[nodiscard]] std::string size_text(const Assessment& assessment, const ReportOptions& options);
/// "DANGER", "FAULT", "warning", "note"
[[nodiscard]] std::string severity_word(Severity severity);
/// "California Mechanical Code 2013, table 303.3(2); looked up"
[[nodiscard]] std::string origin_of(const fluewright::Check& check);
/// "1. DANGER: Joints under pressure, elbow 2", with what is said behind the title.
[[nodiscard]] std::string
finding_title(int number, const Finding& finding, const std::string& behind, const Style& style);
/// Whether the short report says two findings as one.
[[nodiscard]] bool is_same_matter(const Finding& one, const Finding& other);
/// Each matter once: place, figure and limit, what to do.
[[nodiscard]] std::string findings_in_short(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string findings_text(const Assessment& assessment, const Style& style);
/// What would be asked where the file does not tell, a line each along the run.
[[nodiscard]] std::string requirements_list(const Assessment& assessment, const Style& style);
/// What the checks came to that are not findings: how many, and what the open ones lack.
[[nodiscard]] std::string checks_text(const Assessment& assessment, const Style& style);
/// Where no body of rules was asked, how to ask for one; else empty.
[[nodiscard]] std::string how_to_ask_rules(const Assessment& assessment);
[[nodiscard]] std::string checks_in_short(const Assessment& assessment, const Style& style);
/// How many joints need something.
[[nodiscard]] std::string joints_in_short(const JointReport& joints, const Style& style);
/// Below the verdict: how likely each kind of harm does not fall short.
[[nodiscard]] std::string
tolerances_in_short(const Assessment& assessment, const ToleranceStudy& study, const Style& style);
[[nodiscard]] std::string
tolerances_text(const Assessment& assessment, const ToleranceStudy& study, const Style& style);
[[nodiscard]] std::string spread_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string assumptions_in_short(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string assumptions_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string understood_text(const Assessment& assessment, const Style& style);
[[nodiscard]] std::string profiles_text(const Assessment& assessment, const Style& style);
/// Of one state: stations, joints and sums; empty where it has no figures along the run.
[[nodiscard]] std::string
profile_text(const Assessment& assessment, std::size_t state, const Style& style);
/// What turns a reversed flue, and how long that takes; starts with a blank.
[[nodiscard]] std::string
turning_words(const Assessment& assessment, const ColdStart& cold, const Style& style);

/// The room's pressure in the states of one weather, from the house's balance.
[[nodiscard]] std::string
room_words(const Assessment& assessment, std::size_t weather, const Style& style);

/// Every joint in one state: pressure and leak.
[[nodiscard]] std::string joints_text(const results::StateRow& state, const Style& style);
[[nodiscard]] std::string cautions_text(std::optional<HeaterKind> kind, const Style& style);
[[nodiscard]] std::string cautions_in_short(std::optional<HeaterKind> kind, const Style& style);
/// Where the rest is to be had.
[[nodiscard]] std::string hint_text(const Assessment& assessment, const Style& style);

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
