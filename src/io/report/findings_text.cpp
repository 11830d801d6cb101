#include "check_parts.hpp"
#include "fluewright/advice/checks/told.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "io/text/page_text.hpp"

#include <fmt/core.h>

namespace fluewright::report {
namespace {

constexpr Indent below_finding{.first = 5, .rest = 7};

Ink severity_ink(Severity severity) {
    switch (severity) {
    case Severity::danger:
    case Severity::failure:
        return Ink::bad;
    case Severity::warning:
        return Ink::warning;
    case Severity::note:
        break;
    }
    return Ink::plain;
}

/// "By trade practice", "By rule connector-slope"
std::string who_says(const fluewright::Check& check) {
    switch (check.basis) {
    case Basis::physics:
        return "By the physics";
    case Basis::trade:
        return "By trade practice";
    case Basis::body:
        break;
    }
    return fmt::format("By {} {}", check.advice ? "trade practice" : "rule", check.id);
}

/// What one check asks, and its own figure where it is not that of the finding.
std::string source_words(const Finding& finding, const CheckResult& source, const Style& style) {
    const fluewright::Check& check = *source.check;
    if (finding.sources.size() == 1 && check.basis != Basis::body) {
        return fmt::format("Source: {}.", origin_of(check)); // what it asks the message has said
    }
    std::string words = who_says(check);
    if (source.outcome == CheckOutcome::met) {
        words += " it is met";
    }
    words += fmt::format(": {}", rule_words(check, style.units));
    const bool own_figure = source.figure != finding.figure || source.limit != finding.limit;
    if (own_figure && !source.message.empty()) {
        words += fmt::format(". {}", source.message);
        words.pop_back();
    }
    words += fmt::format(" [{}].", origin_of(check));
    if (!check.disagrees.empty()) {
        words += fmt::format(" Another source: {}.", check.disagrees);
    }
    return words;
}

} // namespace

std::string severity_word(Severity severity) {
    std::string word{name(severity)};
    if (severity == Severity::danger || severity == Severity::failure) {
        for (char& c : word) {
            c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
        }
    }
    return word;
}

std::string origin_of(const fluewright::Check& check) {
    if (check.source == "practice" || check.source == "judgement") {
        return check.mark == "computed" ? "computed" : "common practice, no source";
    }
    const catalog::Source* source = catalog::find_source(check.source);
    if (source == nullptr) {
        return fmt::format("{}, {}", check.source, check.mark);
    }
    std::string words{source->document};
    const bool says_year = source->year.empty() || words.find(source->year) != std::string::npos;
    words += says_year ? std::string{} : fmt::format(" ({})", source->year);
    words += check.clause.empty() ? std::string{} : fmt::format(", {}", check.clause);
    words += fmt::format("; {}", check.mark);
    return source->newer.empty() ? words : words + "; newer edition known";
}

std::string
finding_title(int number, const Finding& finding, const std::string& behind, const Style& style) {
    const std::string word = severity_word(finding.severity);
    if (style.is_page()) {
        const std::string before = fmt::format("{}. ", number);
        const std::string after = fmt::format(": {}{}", finding.matter->title, behind);
        return page_heading(
            {.before = before, .word = word, .ink = severity_ink(finding.severity), .after = after},
            style.page_level + 1);
    }
    std::string lines =
        paragraph(fmt::format("{}. {}: {}{}", number, word, finding.matter->title, behind),
                  {.first = 2, .rest = 5},
                  style.width);
    if (const auto at = lines.find(word); at != std::string::npos) {
        lines.replace(at, word.size(), inked(word, severity_ink(finding.severity), style));
    }
    return lines;
}

std::string findings_text(const Assessment& a, const Style& style) {
    if (a.findings.empty()) {
        return heading("Findings", style) + "  None.\n";
    }
    std::string out = heading(fmt::format("Findings ({})", a.findings.size()), style);
    int number = 0;
    for (const Finding& finding : a.findings) {
        const Matter& matter = *finding.matter;
        out += finding_title(++number,
                             finding,
                             (finding.place.empty() ? "" : ", " + finding.place)
                                 + (finding.state.empty() ? "" : " (" + finding.state + ')'),
                             style);
        out += paragraph(finding.message, {.first = 5, .rest = 5}, style.width);
        out += paragraph(fmt::format("What to do: {}", finding.what_to_do()),
                         {.first = 5, .rest = 5},
                         style.width);
        for (const CheckResult& source : finding.sources) {
            out += paragraph(source_words(finding, source, style), below_finding, style.width);
        }
        out += paragraph(fmt::format("More: fluewright explain {}", matter.id),
                         {.first = 5, .rest = 5},
                         style.width);
    }
    return out;
}

std::string
dangers_text(std::span<const PresentDanger> dangers, std::string_view what, const Style& style) {
    if (dangers.empty()) {
        return {};
    }
    std::string out =
        inked_paragraph(fmt::format("{} (`check` tells the rest)", what), {}, Ink::bad, style);
    for (const PresentDanger& danger : dangers) {
        const std::string place = danger.place.empty() ? "" : ", " + danger.place;
        out += paragraph(
            fmt::format("- {}{}: {} {}", danger.title, place, danger.message, danger.remedy),
            hung_in,
            style.width);
    }
    return out + '\n';
}

std::string not_decided_text(std::string_view words, const Style& style) {
    return words.empty() ? std::string{} : inked_paragraph(words, {}, Ink::warning, style);
}

} // namespace fluewright::report
