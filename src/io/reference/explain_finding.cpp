#include "fluewright/io/reference/explain.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <fmt/core.h>

namespace fluewright {
namespace {

constexpr Indent inset{.first = 2, .rest = 2};

std::string section(std::string_view title, std::string_view text, const Style& style) {
    return '\n' + inked(title, Ink::heading, style) + '\n' + paragraph(text, inset, style.width);
}

std::string source_words(std::string_view key, std::string_view mark) {
    if (key == mark) {
        return fmt::format("{}.", mark);
    }
    const catalog::Source* source = catalog::find_source(key);
    if (source == nullptr) {
        return fmt::format("{} ({}).", key, mark);
    }
    const bool has_place = !source->place.empty() && source->place != "none";
    return fmt::format("{}{}{} [{}; {}].",
                       source->document,
                       has_place ? ", " : "",
                       has_place ? source->place : std::string_view{},
                       source->kind,
                       mark);
}

} // namespace

std::string explain_finding(const FindingInfo& finding, const Style& style) {
    std::string out =
        paragraph(fmt::format("{}: {} ({})", finding.id, finding.title, name(finding.severity)),
                  {.first = 0, .rest = 2},
                  style.width);
    out += section("What it means and why it matters", finding.meaning, style);
    out += section("Rule", finding.rule, style);
    out += section("Source", source_words(finding.source, finding.mark), style);
    out += section("What to do", finding.remedy, style);
    return style.unicode ? out : in_plain_letters(out);
}

std::string explain_cause(const diagnosis::Cause& cause, const Style& style) {
    std::string out =
        paragraph(fmt::format("{}: {} (a cause in `fluewright diagnose`)", cause.id, cause.title),
                  {.first = 0, .rest = 2},
                  style.width);
    out += section("How it works", cause.mechanism, style);
    out += section("Weight before anything is seen",
                   fmt::format("{} of judgement, beside {} for nothing hidden; published "
                               "frequencies contradict each other.",
                               format_number(cause.prior),
                               format_number(diagnosis::cause_of("nothing").prior)),
                   style);
    if (const diagnosis::Check* check = diagnosis::find_check(cause.confirm)) {
        out += section("How to be sure", fmt::format("{}. {}", check->title, check->how), style);
    }
    out += section("What to do", cause.remedy, style);
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
