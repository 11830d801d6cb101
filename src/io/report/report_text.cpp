#include "fluewright/io/report/report_text.hpp"

#include "check_parts.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/text_columns.hpp"
#include "io/text/page_text.hpp"
#include "io/text/words.hpp"
#include "trade_text.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright {
namespace report {
namespace {

constexpr Indent body_inset{.first = 2, .rest = 2};

} // namespace

std::string inked_paragraph(std::string_view text, Indent indent, Ink ink, const Style& style) {
    std::string out;
    const std::string plain = paragraph(text, indent, style.width);
    std::string_view lines = plain;
    while (!lines.empty()) {
        const std::size_t end = lines.find('\n');
        out += inked(lines.substr(0, end), ink, style) + '\n';
        lines.remove_prefix(end + 1);
    }
    return out;
}

std::string heading(std::string_view text, const Style& style) {
    if (style.is_page()) {
        return page_heading(text, style.page_level);
    }
    return '\n' + inked_paragraph(text, flush_left, Ink::heading, style);
}

std::string quantity(double si, Kind kind, const Style& style) {
    const bool nothing = !(si > 0.0) && !(si < 0.0) && !std::isnan(si);
    if (nothing && kind == Kind::length) {
        return style.units == UnitSystem::us ? "0 ft" : "0 m";
    }
    return format_quantity(si, kind, style.units);
}

std::string bare_number(double si, Kind kind, const Style& style) {
    const std::string shown = format_quantity(si, kind, style.units);
    return shown.substr(0, shown.find(' '));
}

namespace {

bool is_zero(std::string_view number) {
    return number.find_first_of("123456789") == std::string_view::npos;
}

} // namespace

std::string signed_number(double si, Kind kind, const Style& style) {
    std::string shown = bare_number(si, kind, style);
    constexpr double round_off_pa = -1e-5;
    if (is_zero(shown) && kind == Kind::pressure && si < round_off_pa) {
        // What falls short is told, however little it is.
        shown = format_apart(si, 0.0, kind, style.units).figure;
        shown = shown.substr(0, shown.find(' '));
    }
    return si > 0.0 && !is_zero(shown) ? '+' + shown : shown;
}

std::string signed_quantity(double si, Kind kind, const Style& style) {
    const std::string shown = si < 0.0 ? format_apart(si, 0.0, kind, style.units).figure
                                       : format_quantity(si, kind, style.units);
    return si > 0.0 && !is_zero(shown.substr(0, shown.find(' '))) ? '+' + shown : shown;
}

std::string with_unit(std::string_view words, Kind kind, const Style& style) {
    return fmt::format("{}\n{}", words, customary_unit(kind, style.units));
}

namespace {

/// Whether the draft is enough at one end of the inside coefficient and too little at the other.
bool turns_on_heat(const results::CheckedState& row) {
    const StateResult& state = row.figures.state;
    const double needed_pa = state.draft_needed_pa;
    return row.figures.verdict.counts && state.kind != StateKind::free_burn
           && (row.ends->least_heat_pa >= needed_pa) != (row.ends->most_heat_pa >= needed_pa);
}

} // namespace

std::string spread_text(const Assessment& a, const Style& style) {
    const results::TextColumns<results::CheckedState> figures(
        {"draft_least_heat_pa", "draft_pa", "draft_most_heat_pa", "draft_needed_pa"}, style);
    std::vector<TableColumn> headings{{.heading = "condition", .wraps = true}};
    figures.add_headings(headings);
    TextTable table(std::move(headings));
    std::string turning;
    for (const results::CheckedState& row : results::checked_states(a)) {
        if (row.ends == nullptr) {
            continue;
        }
        const std::string condition = state_words(a.installation, row.figures.state);
        std::vector<TableCell> cells{{condition}};
        figures.add_cells(row, cells);
        if (row.figures.state.kind == StateKind::free_burn) {
            cells.back() = {"-"}; // it takes whatever draft there is
        }
        table.add(std::move(cells));
        if (row.figures.is_solved() && turns_on_heat(row)) {
            turning += (turning.empty() ? "" : "; ") + condition;
        }
    }
    if (table.empty()) {
        return {};
    }
    std::string out = heading("Spread", style);
    out += paragraph("How fast the gas gives its heat to the pipe is the least certain figure. The "
                     "computed draft lies between two limits. The lower heat transfer is that of "
                     "the European calculation (EN 13384-1); the higher is that of turbulent flow "
                     "opposed by its cooled wall layer.",
                     body_inset,
                     style.width);
    out += table.text(style, body_inset.first);
    if (!turning.empty()) {
        out +=
            paragraph("Enough or not hangs on it here: " + turning + ".", body_inset, style.width);
    }
    return out;
}

namespace {

/// Nobody lights a burner.
std::string_view before_words(std::optional<HeaterKind> kind) {
    return kind && burners.has(*kind) ? "Before you build or start" : "Before you build or light";
}

} // namespace

std::string cautions_text(std::optional<HeaterKind> kind, const Style& style) {
    std::string out = heading(before_words(kind), style);
    for (const std::string_view caution : cautions(kind)) {
        out += paragraph(fmt::format("- {}", caution), hung_in, style.width);
    }
    return out;
}

std::string cautions_in_short(std::optional<HeaterKind> kind, const Style& style) {
    std::string out = heading(before_words(kind), style);
    for (const std::string_view caution : short_cautions(kind)) {
        out += paragraph(fmt::format("- {}", caution), hung_in, style.width);
    }
    return out;
}

std::string signed_off(std::string report,
                       std::string_view version,
                       std::string_view file,
                       const Style& style) {
    report += '\n';
    report += paragraph(
        fmt::format("fluewright {}, from {}", version, file), {.first = 0, .rest = 2}, style.width);
    return style.unicode ? std::move(report) : in_plain_letters(report);
}

namespace {

/// What a person needs who has to act; everything else is in the long one.
std::string short_report(const Assessment& assessment, const ReportOptions& options) {
    const Style& style = options.style;
    std::string out = deciding_weather_text(assessment, style);
    out += '\n' + size_in_short(assessment, options);
    if (options.trade != nullptr) {
        out += joints_in_short(options.trade->joints, style);
    }
    out += checks_in_short(assessment, style);
    out += assumptions_in_short(assessment, style);
    out += findings_in_short(assessment, style);
    out += cautions_in_short(kind_of(assessment.installation.appliance), style);
    return out + hint_text(assessment, style);
}

std::string long_report(const Assessment& assessment, const ReportOptions& options) {
    const Style& style = options.style;
    std::string out = states_text(assessment, style);
    out += size_text(assessment, options);
    out += findings_text(assessment, style);
    out += checks_text(assessment, style);
    if (options.trade != nullptr) {
        out += trade_text(*options.trade, style);
    }
    if (options.tolerances != nullptr) {
        out += tolerances_text(assessment, *options.tolerances, style);
    }
    out += spread_text(assessment, style);
    out += profiles_text(assessment, style);
    out += assumptions_text(assessment, style);
    out += understood_text(assessment, style);
    return out + cautions_text(kind_of(assessment.installation.appliance), style);
}

} // namespace
} // namespace report

std::string report_text(const Assessment& assessment, const ReportOptions& options) {
    std::string out = report::verdict_text(assessment, options.style);
    if (options.tolerances != nullptr) {
        out += report::tolerances_in_short(assessment, *options.tolerances, options.style);
    }
    out += options.details ? report::long_report(assessment, options)
                           : report::short_report(assessment, options);
    return report::signed_off(std::move(out), options.version, options.file, options.style);
}

} // namespace fluewright
