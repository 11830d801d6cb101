#include "fluewright/io/report/report_text.hpp"

#include "check_parts.hpp"
#include "fluewright/io/text/cautions.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "io/text/words.hpp"
#include "trade_text.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright {
namespace report {
namespace {

constexpr Indent flush_left{.first = 0, .rest = 0};
constexpr Indent inset{.first = 2, .rest = 2};

std::string coloured_paragraph(
    std::string_view text, Indent indent, std::size_t width, Ink ink, const Style& style) {
    std::string out;
    std::string_view lines = text;
    const std::string plain = paragraph(lines, indent, width);
    lines = plain;
    while (!lines.empty()) {
        const std::size_t end = lines.find('\n');
        out += inked(lines.substr(0, end), ink, style) + '\n';
        lines.remove_prefix(end + 1);
    }
    return out;
}

std::string limiting_words(const Assessment& a, const Style& style) {
    const StateResult& state = a.solution.states[a.limiting];
    const StateVerdict& verdict = a.verdicts[a.limiting];
    const std::string where = state_words(a.installation, state);
    if (!has_working_point(state) && !is_door_open(state.kind)) {
        return fmt::format("Limiting state: {}, not computed.", where);
    }
    if (verdict.kind == Kind::fraction) {
        const std::string stated = format_quantity(
            std::clamp(state.door.opening_share, 0.0, 1.0), Kind::fraction, style.units);
        const std::string wanted =
            format_quantity(state.door.opening_share - verdict.spare, Kind::fraction, style.units);
        return a.installation.appliance.type == ApplianceType::fireplace
                   ? fmt::format("Limiting state: {}. Smoke stays in over {} of the opening, {} is "
                                 "wanted.",
                                 where,
                                 stated,
                                 wanted)
                   : fmt::format("Limiting state: {}. The door may be opened {} of the way, {} is "
                                 "wanted.",
                                 where,
                                 stated,
                                 wanted);
    }
    std::string share;
    if (state.draft_needed_pa > 0.0) {
        share = fmt::format(
            " ({})",
            signed_quantity(state.margin_pa() / state.draft_needed_pa, Kind::fraction, style));
    }
    return fmt::format("Limiting state: {}. Draft {}, needed {}, margin {}{}.",
                       where,
                       format_quantity(state.draft_pa, Kind::pressure, style.units),
                       format_quantity(state.draft_needed_pa, Kind::pressure, style.units),
                       signed_quantity(state.margin_pa(), Kind::pressure, style),
                       share);
}

} // namespace

std::string heading(std::string_view text, const Style& style) {
    return '\n' + coloured_paragraph(text, flush_left, style.width, Ink::heading, style);
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

std::string signed_number(double si, Kind kind, const Style& style) {
    const std::string shown = bare_number(si, kind, style);
    const bool zero = shown.find_first_of("123456789") == std::string::npos;
    return si > 0.0 && !zero ? '+' + shown : shown;
}

std::string signed_quantity(double si, Kind kind, const Style& style) {
    const std::string shown = format_quantity(si, kind, style.units);
    const bool zero =
        shown.substr(0, shown.find(' ')).find_first_of("123456789") == std::string::npos;
    return si > 0.0 && !zero ? '+' + shown : shown;
}

std::string with_unit(std::string_view words, Kind kind, const Style& style) {
    return fmt::format("{}\n{}", words, customary_unit(kind, style.units));
}

std::string verdict_text(const Assessment& a, const Style& style) {
    std::string out;
    for (const StateResult& state : a.solution.states) {
        if (state.status == Status::no_answer) {
            out +=
                coloured_paragraph(fmt::format("The solver found no answer for {}; do not build on "
                                               "the figures below. Please report it.",
                                               state_words(a.installation, state)),
                                   flush_left,
                                   style.width,
                                   Ink::bad,
                                   style);
        }
    }
    out += coloured_paragraph(
        a.sentence, flush_left, style.width, a.works ? Ink::good : Ink::bad, style);
    if (a.limiting < a.solution.states.size() && a.limiting < a.verdicts.size()) {
        out += paragraph(limiting_words(a, style), flush_left, style.width);
    }
    if (!a.installation.title.empty()) {
        out += paragraph("Installation: " + a.installation.title, flush_left, style.width);
    }
    return out;
}

std::string spread_text(const Assessment& a, const Style& style) {
    if (a.limiting >= a.solution.states.size()) {
        return {};
    }
    const StateResult& state = a.solution.states[a.limiting];
    std::string out = heading("Spread", style);
    out += paragraph(
        fmt::format(
            "How fast the gas gives its heat to the pipe is the least certain figure. In the "
            "limiting state ({}) the draft comes to {} as computed, and to {} with the least "
            "heat transfer one can defend, that of the European calculation (EN 13384-1).",
            state_words(a.installation, state),
            format_quantity(state.draft_pa, Kind::pressure, style.units),
            format_quantity(a.limiting_draft_other_pa, Kind::pressure, style.units)),
        inset,
        style.width);
    return out;
}

std::string cautions_text(const Style& style) {
    std::string out = heading("Before you build or light", style);
    for (const std::string_view caution : cautions()) {
        out += paragraph(fmt::format("- {}", caution), {.first = 2, .rest = 4}, style.width);
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

} // namespace report

std::string report_text(const Assessment& assessment, const ReportOptions& options) {
    const Style& style = options.style;
    std::string out = report::verdict_text(assessment, style);
    if (options.tolerances != nullptr) {
        out += report::tolerances_in_short(*options.tolerances, style);
    }
    out += report::states_text(assessment, style);
    out += report::size_text(assessment, options);
    out += report::findings_text(assessment, style);
    out += report::checks_text(assessment, style, options.details);
    if (options.trade != nullptr) {
        out += report::trade_text(*options.trade, style, options.details);
    }
    if (options.tolerances != nullptr) {
        out += report::tolerances_text(assessment, *options.tolerances, style);
    }
    out += report::spread_text(assessment, style);
    if (options.details) {
        out += report::profiles_text(assessment, style);
    }
    out += report::assumptions_text(assessment, style);
    out += report::understood_text(assessment, style);
    out += report::cautions_text(style);
    return report::signed_off(std::move(out), options.version, options.file, style);
}

} // namespace fluewright
