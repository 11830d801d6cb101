#include "explain_pages.hpp"

#include "fluewright/advice/checks/check.hpp"
#include "fluewright/advice/diagnosis/tables.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/fields/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <fmt/core.h>

namespace fluewright::explaining {
namespace {

/// A way of firing in words.
struct Condition {
    StateKind state;
    std::string_view meaning;
    std::string_view asked;
};

constexpr std::array conditions{
    Condition{StateKind::high_fire,
              "The heater burns at its high rate with the door shut. The burn rate sets the flow "
              "of gas, and the draft at the outlet follows.",
              "The draft must reach what the appliance requires at that rate. It counts towards "
              "the verdict."},
    Condition{StateKind::low_fire,
              "The heater burns at its low rate with the door shut. Gas and walls are at their "
              "coolest: draft is weakest, and water and creosote are most likely.",
              "The draft must reach what the appliance requires at that rate. It counts towards "
              "the verdict."},
    Condition{StateKind::free_burn,
              "The air control is fully open and the door is shut. The flow is that at which the "
              "draft of the run balances the resistance of the heater. It gives the capacity: the "
              "highest burn rate that the run vents at the required draft.",
              "Nothing; for information. Where the capacity is below the high burn rate, the run "
              "limits the heater."},
    Condition{StateKind::door_open_high,
              "The loading door is opened on a high fire. Smoke stays in while the room pressure "
              "exceeds that in the firebox at the top edge of the opening.",
              "At an open fireplace the whole opening must keep its smoke in, and that counts "
              "towards the verdict. At a stove it is for information."},
    Condition{StateKind::door_open_embers,
              "The loading door is opened on embers, to reload. The walls still hold the heat of "
              "the last fire, but room air through the opening cools the gas.",
              "The door must open as far as a reload needs without smoke coming out. It counts "
              "towards the verdict."},
    Condition{
        StateKind::idle,
        "No fire. The flue is as warm as its surroundings. The air in it goes up or down by that "
        "warmth, by the wind at the chimney top and by the room pressure.",
        "Nothing; for information. A flue with a downdraft must be warmed before a fire is lit."},
    Condition{StateKind::cold_start,
              "The first minutes of kindling: a small fire, walls still cold.",
              "Nothing; for information."}};

template <class Rows>
const auto& row_of(const Rows& rows, std::string_view id) {
    return *std::find_if(rows.begin(), rows.end(), [id](const auto& row) { return row.id == id; });
}

std::string listed(const std::vector<std::string_view>& ids) {
    std::string out;
    for (const std::string_view id : ids) {
        out += fmt::format("{}{}", out.empty() ? "" : ", ", id);
    }
    return out + '.';
}

/// The ids of the rows of a table that rest on a source.
template <class Rows>
std::vector<std::string_view> resting_on(const Rows& rows, std::string_view source) {
    std::vector<std::string_view> ids;
    for (const auto& row : rows) {
        if (row.source == source && std::find(ids.begin(), ids.end(), row.id) == ids.end()) {
            ids.push_back(row.id);
        }
    }
    return ids;
}

template <class Rows>
void add_resting(std::string_view title,
                 const Rows& rows,
                 std::string_view source,
                 const Style& style,
                 std::string& out) {
    const auto ids = resting_on(rows, source);
    if (!ids.empty()) {
        out += section(title, listed(ids), style);
    }
}

} // namespace

std::string in_letters_of(const Style& style, const std::string& page) {
    return style.unicode ? page : in_plain_letters(page);
}

std::string section(std::string_view title, std::string_view text, const Style& style) {
    return '\n' + inked(title, Ink::heading, style) + '\n'
           + paragraph(text, {.first = 2, .rest = 2}, style.width);
}

std::string title_line(std::string_view text, const Style& style) {
    return paragraph(text, {.first = 0, .rest = 2}, style.width);
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

std::string word_page(std::string_view id, const Style& style) {
    const catalog::Word& word = *catalog::find_word(id);
    std::string out = title_line(fmt::format("{}: a word of the trade", id), style);
    out += section("Meaning", word.meaning, style);
    if (!word.aliases.empty()) {
        std::string also{word.aliases};
        for (std::size_t bar = also.find('|'); bar != std::string::npos;
             bar = also.find('|', bar)) {
            also.replace(bar, 1, ", ");
        }
        out += section("Also called", also + '.', style);
    }
    return in_letters_of(style, out);
}

std::string condition_page(std::string_view id, const Style& style) {
    const auto& condition =
        *std::find_if(conditions.begin(), conditions.end(), [id](const Condition& each) {
            return name(each.state) == id;
        });
    std::string out = title_line(fmt::format("{}: a condition", id), style);
    out += section("Meaning", condition.meaning, style);
    out += section("What is required", condition.asked, style);
    return in_letters_of(style, out);
}

std::string remedy_page(std::string_view id, const Style& style) {
    const catalog::RemedyEffort& remedy = row_of(catalog::remedy_efforts(), id);
    std::string out = title_line(
        fmt::format("{}: {} (a change that `fluewright improve` tries)", id, remedy.title), style);
    out += section(
        "Effort",
        remedy.effort_per_metre > 0.0
            ? fmt::format("{}, and {} for each meter of {}; 1 is a turn of the hand, 8 a chimney "
                          "built anew. Prices of your own: --prices.",
                          format_number(remedy.effort),
                          format_number(remedy.effort_per_metre),
                          remedy.id == "air-inlet" ? "a grille 100 mm high"
                                                   : "pipe or wall it touches")
            : fmt::format("{}; 1 is a turn of the hand, 8 a chimney built anew. Prices "
                          "of your own: --prices.",
                          format_number(remedy.effort)),
        style);
    out += section("What it may worsen",
                   remedy.may_worsen.empty() ? std::string{"Nothing that is known."}
                                             : fmt::format("{}.", remedy.may_worsen),
                   style);
    out += section("Source", source_words(remedy.source, remedy.mark), style);
    return in_letters_of(style, out);
}

std::string look_page(std::string_view id, const Style& style) {
    const diagnosis::Check& check = *diagnosis::find_check(id);
    std::string out = title_line(
        fmt::format("{}: {} (a look or a reading in `fluewright diagnose`)", id, check.title),
        style);
    out += section("How", check.how, style);
    out += section("Effort",
                   fmt::format("{}; 1 asks or tries from the chair, 8 is a day's work.",
                               format_number(check.effort)),
                   style);
    std::vector<std::string_view> settles;
    for (const diagnosis::Cause& cause : diagnosis::causes()) {
        if (cause.confirm == id) {
            settles.push_back(cause.id);
        }
    }
    if (!settles.empty()) {
        out += section("Settles these causes", listed(settles), style);
    }
    out += section("Source", source_words(check.source, check.mark), style);
    return in_letters_of(style, out);
}

std::string body_page(std::string_view id, const Style& style) {
    const catalog::RuleBody& body = row_of(catalog::rule_bodies(), id);
    std::string out = title_line(fmt::format("{}: {} (a body of rules)", id, body.name), style);
    out += section("Who decides", fmt::format("{}.", body.decides), style);
    std::vector<std::string_view> asks;
    for (const fluewright::Check& check : fluewright::checks()) {
        if (check.body == id) {
            asks.push_back(check.id);
        }
    }
    if (!asks.empty()) {
        out += section("What it requires", listed(asks), style);
    }
    out += section("Source", source_words(body.source, body.mark), style);
    return in_letters_of(style, out);
}

std::string source_page(std::string_view id, const Style& style) {
    const catalog::Source& source = *catalog::find_source(id);
    std::string out = title_line(fmt::format("{}: {}", id, source.document), style);
    if (!source.place.empty() && source.place != "none") {
        out += section("Where", fmt::format("{}.", source.place), style);
    }
    out += section("Kind", fmt::format("{}.", source.kind), style);
    if (!source.year.empty()) {
        out += section("Edition", fmt::format("{}.", source.year), style);
    }
    if (!source.newer.empty()) {
        out += section("Newer", fmt::format("{}.", source.newer), style);
    }
    const std::size_t before = out.size();
    add_resting("Checks that rest on it", fluewright::checks(), id, style, out);
    add_resting("Figures that are assumed or held against", catalog::defaults(), id, style, out);
    add_resting("Fuels", catalog::fuels(), id, style, out);
    add_resting("Walls", catalog::walls(), id, style, out);
    add_resting("Materials", catalog::materials(), id, style, out);
    add_resting("Fittings", catalog::fittings(), id, style, out);
    add_resting("Changes", catalog::remedy_efforts(), id, style, out);
    add_resting("Causes", diagnosis::causes(), id, style, out);
    if (out.size() == before) {
        out += section("What rests on it",
                       source.used_by == "code"
                           ? "An equation or a test of the program; see docs/theory.md and "
                             "docs/validation.md."
                           : "A row of another table of the program.",
                       style);
    }
    return in_letters_of(style, out);
}

} // namespace fluewright::explaining
