#include "explain_pages.hpp"
#include "fluewright/io/reference/explain.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <algorithm>
#include <fmt/core.h>
#include <vector>

namespace fluewright {

using explaining::section;
using explaining::source_words;

namespace {

constexpr Indent page_inset{.first = 2, .rest = 2};

/// "Asked by the rules of the United States: connector-slope"
std::string who_asks(const Check& check) {
    switch (check.basis) {
    case Basis::physics:
        return "By the physics";
    case Basis::trade:
        return check.id == check.matter->id ? "By trade practice"
                                            : fmt::format("By trade practice: {}", check.id);
    case Basis::body:
        break;
    }
    return fmt::format("By the {} of {}: {}",
                       check.local    ? "towns"
                       : check.advice ? "trade practice"
                                      : "rules",
                       catalog::find_rule_body(check.body)->name,
                       check.id);
}

/// "Draft. A danger counts as fire and carbon monoxide, whatever its kind."
std::string kind_of_harm(const Matter& matter) {
    return std::string{title(matter.harm)}
           + (matter.harm == Harm::fire ? "."
                                        : ". As a danger it counts as fire and carbon monoxide.");
}

std::string asked(const Check& check) {
    return fmt::format("{}. For {}. {}.{}",
                       check.rule,
                       check.applies,
                       name(check.severity),
                       check.local ? " An old figure of one town: it is told and decides nothing."
                                   : "");
}

/// Document, clause, year and mark, and what is known of a newer edition.
std::string check_source_words(const Check& check) {
    std::string words = source_words(check.source, check.mark);
    const catalog::Source* source = catalog::find_source(check.source);
    if (source == nullptr) {
        return words;
    }
    words += check.clause.empty() ? "" : fmt::format(" Clause: {}.", check.clause);
    words += source->year.empty() ? "" : fmt::format(" Edition: {}.", source->year);
    words += source->newer.empty() ? "" : fmt::format(" Newer: {}.", source->newer);
    return words;
}

/// What is said in place of the general words where they do not hold, by kind of heater.
std::string words_by_kind(const Matter& matter, const Style& style) {
    std::string out;
    std::vector<const Matter*> said;
    for (std::size_t i = 0; i < heater_kind_words.size(); ++i) {
        const Matter& own = matter_for(matter, static_cast<HeaterKind>(i));
        const auto is_said = [&](const Matter* other) {
            return other->title == own.title && other->meaning == own.meaning
                   && other->remedy == own.remedy;
        };
        if (is_said(&matter) || std::any_of(said.begin(), said.end(), is_said)) {
            continue;
        }
        said.push_back(&own);
        std::string kinds;
        for (std::size_t k = i; k < heater_kind_words.size(); ++k) {
            if (is_said(&matter_for(matter, static_cast<HeaterKind>(k)))) {
                kinds += (kinds.empty() ? "" : ", ") + std::string{heater_kind_words[k]};
            }
        }
        std::string words = own.title == matter.title ? "" : std::string{own.title} + ". ";
        words += own.meaning;
        words += own.remedy == matter.remedy ? "" : ' ' + std::string{own.remedy};
        out += section("Of " + kinds, words, style);
    }
    return out;
}

} // namespace

std::string explain_matter(const Matter& matter, const Style& style) {
    std::string out =
        paragraph(fmt::format("{}: {} ({})", matter.id, matter.title, name(matter.severity)),
                  {.first = 0, .rest = 2},
                  style.width);
    out += section("What it means and why it matters", matter.meaning, style);
    out += section("Kind of harm", kind_of_harm(matter), style);
    out += section("What to do", matter.remedy, style);
    out += words_by_kind(matter, style);
    for (const Check& check : checks()) {
        if (check.matter == &matter) {
            out += section(who_asks(check), asked(check), style);
            out += paragraph(check_source_words(check), page_inset, style.width);
        }
    }
    return style.unicode ? out : in_plain_letters(out);
}

std::string explain_check(const Check& check, const Style& style) {
    const Matter& matter = *check.matter;
    std::string out =
        paragraph(fmt::format("{}: {} ({})", check.id, matter.title, name(check.severity)),
                  {.first = 0, .rest = 2},
                  style.width);
    out += section(who_asks(check), asked(check), style);
    out += section("Source", check_source_words(check), style);
    if (!check.disagrees.empty()) {
        out += section("Another source", fmt::format("{}.", check.disagrees), style);
    }
    out += section("What it means and why it matters", matter.meaning, style);
    out += section("Kind of harm", kind_of_harm(matter), style);
    out += section("What to do", matter.remedy, style);
    out += words_by_kind(matter, style);
    out += section("Finding", fmt::format("`fluewright explain {}`", matter.id), style);
    return style.unicode ? out : in_plain_letters(out);
}

std::string explain_cause(const diagnosis::Cause& cause, const Style& style) {
    std::string out =
        paragraph(fmt::format("{}: {} (a cause in `fluewright diagnose`)", cause.id, cause.title),
                  {.first = 0, .rest = 2},
                  style.width);
    out += section("How it works", cause.mechanism, style);
    out +=
        section("Weight before anything is seen",
                fmt::format("{} of judgement, beside {} for nothing hidden; published "
                            "frequencies contradict each other.",
                            format_number(cause.prior),
                            format_number(diagnosis::cause_of(diagnosis::CauseId::nothing).prior)),
                style);
    if (const diagnosis::Check* check = diagnosis::find_check(cause.confirm)) {
        out += section("How to be sure", fmt::format("{}. {}", check->title, check->how), style);
    }
    out += section("What to do", cause.remedy, style);
    out += section("Source", source_words(cause.source, cause.mark), style);
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
