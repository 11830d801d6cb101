#include "bodies/rule_check.hpp"
#include "body_matters.hpp"
#include "fluewright/advice/checks/check.hpp"
#include "kind_matters.hpp"
#include "own_checks.hpp"
#include "own_matters.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <vector>

namespace fluewright {
namespace {

using checking::body_matters;
using checking::own_checks;
using checking::own_matters;

/// Both lists of matters as one, in order of id.
consteval auto all_matters() {
    std::array<Matter, own_matters.size() + body_matters.size()> all{};
    std::merge(own_matters.begin(),
               own_matters.end(),
               body_matters.begin(),
               body_matters.end(),
               all.begin(),
               [](const Matter& a, const Matter& b) { return a.id < b.id; });
    return all;
}

constexpr auto matter_rows = all_matters();

static_assert(std::is_sorted(matter_rows.begin(),
                             matter_rows.end(),
                             [](const Matter& a, const Matter& b) { return a.id < b.id; }));
static_assert(std::equal(own_matters.begin(),
                         own_matters.end(),
                         own_checks.begin(),
                         own_checks.end(),
                         [](const Matter& matter, const checking::OwnCheck& check) {
                             return matter.id == check.id;
                         }),
              "every check of physics or trade speaks of the matter of its own id");

template <class Names>
std::size_t place_in(const Names& names, std::string_view word) {
    return static_cast<std::size_t>(std::find(names.begin(), names.end(), word) - names.begin());
}

constexpr std::array<std::string_view, 4> severity_names{"danger", "fault", "warning", "note"};

Check row_of(const checking::OwnCheck& own) {
    const Matter* matter = find_matter(own.id);
    return {.id = own.id,
            .basis = own.basis,
            .body = "any",
            .matter = matter,
            .severity = matter->severity,
            .advice = false,
            .local = false,
            .needs_solution = own.needs_solution,
            .rule = own.rule,
            .applies = own.applies,
            .source = own.source,
            .clause = {},
            .mark = own.mark,
            .disagrees = {}};
}

Check row_of(const catalog::Rule& rule, const checking::Entry* entry) {
    const Matter* matter = find_matter(rule.matter);
    assert(matter != nullptr && "a row of rules.csv speaks of no known matter");
    return {.id = rule.id,
            .basis = rule.body == "any" ? Basis::trade : Basis::body,
            .body = rule.body,
            .matter = matter,
            .severity = static_cast<Severity>(place_in(severity_names, rule.severity)),
            .advice = rule.strength != "rule",
            .local = rule.strength == "local",
            .needs_solution = entry != nullptr && entry->needs == checking::Needs::solution,
            .rule = rule.says,
            .applies = rule.applies,
            .source = rule.source,
            .clause = rule.clause,
            .mark = rule.mark,
            .disagrees = rule.disagrees};
}

std::vector<Check> all_checks() {
    std::vector<Check> all;
    all.reserve(own_checks.size() + catalog::rules().size());
    for (const checking::OwnCheck& own : own_checks) {
        all.push_back(row_of(own));
    }
    for (std::size_t i = 0; i < catalog::rules().size(); ++i) {
        all.push_back(row_of(catalog::rules()[i], checking::rule_entries()[i]));
    }
    return all;
}

template <class Rows>
auto find_row(const Rows& rows, std::string_view id) {
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.id == id; });
    return row == rows.end() ? nullptr : &*row;
}

} // namespace

std::string_view name(Harm harm) {
    constexpr std::array<std::string_view, harm_count> names{
        "fire", "draft", "reloading", "upkeep"};
    return names[static_cast<std::size_t>(harm)];
}

std::string_view title(Harm harm) {
    constexpr std::array<std::string_view, harm_count> titles{
        "Fire and carbon monoxide", "Draft", "Reloading", "Upkeep"};
    return titles[static_cast<std::size_t>(harm)];
}

std::string_view name(Severity severity) {
    return severity_names[static_cast<std::size_t>(severity)];
}

std::string_view name(Basis basis) {
    constexpr std::array<std::string_view, 3> names{"physics", "trade", "body"};
    return names[static_cast<std::size_t>(basis)];
}

std::string_view name(CheckOutcome outcome) {
    constexpr std::array<std::string_view, 4> names{
        "not met", "undetermined", "met", "does not apply"};
    return names[static_cast<std::size_t>(outcome)];
}

std::span<const Matter> matters() {
    return matter_rows;
}

const Matter& matter_for(const Matter& matter, HeaterKind kind) {
    // The general rows with the words of their kind, once for all.
    static const auto worded = [] {
        std::array<Matter, checking::kind_words.size()> rows{};
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const checking::KindWords& words = checking::kind_words[i];
            rows[i] = *find_matter(words.id);
            rows[i].title = words.title.empty() ? rows[i].title : words.title;
            rows[i].meaning = words.meaning.empty() ? rows[i].meaning : words.meaning;
            rows[i].remedy = words.remedy.empty() ? rows[i].remedy : words.remedy;
        }
        return rows;
    }();
    for (std::size_t i = 0; i < worded.size(); ++i) {
        if (worded[i].id == matter.id && checking::kind_words[i].kinds.has(kind)) {
            return worded[i];
        }
    }
    return matter;
}

const Matter* find_matter(std::string_view id) {
    return find_row(matter_rows, id);
}

std::span<const Check> checks() {
    static const std::vector<Check> rows = all_checks();
    return rows;
}

const Check* find_check(std::string_view id) {
    return find_row(checks(), id);
}

} // namespace fluewright
