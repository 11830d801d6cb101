#include "explain_pages.hpp"
#include "fluewright/advice/required.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/io/reference/explain.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/fields/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <fmt/core.h>

namespace fluewright {
namespace explaining {
namespace {

template <class Rows>
std::vector<std::string_view> all_ids(const Rows& rows) {
    std::vector<std::string_view> ids;
    for (const auto& row : rows) {
        ids.push_back(row.id);
    }
    return ids;
}

/// Checks of physics have the id of their matter, whose page says all of them.
std::vector<std::string_view> ids_of_checks() {
    std::vector<std::string_view> ids;
    for (const Check& check : checks()) {
        if (find_matter(check.id) == nullptr
            && std::find(ids.begin(), ids.end(), check.id) == ids.end()) {
            ids.push_back(check.id);
        }
    }
    return ids;
}

std::vector<std::string_view> ids_of_conditions() {
    const auto words = all_words<StateKind>();
    return {words.begin(), words.end()};
}

/// Words of the glossary that have no page of another kind: a condition has one of its own.
std::vector<std::string_view> ids_of_words() {
    std::vector<std::string_view> ids;
    for (const catalog::Word& word : catalog::words()) {
        if (!from_word<StateKind>(word.id)) {
            ids.push_back(word.id);
        }
    }
    return ids;
}

constexpr std::array kinds{
    PageKind{"a word of the trade", ids_of_words, word_page},
    PageKind{"a finding",
             [] { return all_ids(matters()); },
             [](std::string_view id, const Style& style) {
                 return explain_matter(*find_matter(id), style);
             }},
    PageKind{"a check",
             ids_of_checks,
             [](std::string_view id, const Style& style) {
                 return explain_check(*find_check(id), style);
             }},
    PageKind{"a kind of harm", harm_names, harm_page},
    PageKind{"a condition", ids_of_conditions, condition_page},
    PageKind{"a cause",
             [] { return all_ids(diagnosis::causes()); },
             [](std::string_view id, const Style& style) {
                 return explain_cause(*diagnosis::find_cause(id), style);
             }},
    PageKind{"a look or a reading", [] { return all_ids(diagnosis::checks()); }, look_page},
    PageKind{"a change", [] { return all_ids(catalog::remedy_efforts()); }, remedy_page},
    PageKind{"a body of rules", [] { return all_ids(catalog::rule_bodies()); }, body_page},
    PageKind{"a question of the trade", trade_names, trade_page},
    PageKind{"a wall", [] { return all_ids(catalog::walls()); }, wall_page},
    PageKind{"a fuel", [] { return all_ids(catalog::fuels()); }, fuel_page},
    PageKind{"a source", [] { return all_ids(catalog::sources()); }, source_page}};

/// Capitals, blanks, commas and underscores do not matter: "door open, embers" is door-open-embers.
std::string typed_form(std::string_view id) {
    std::string out;
    for (const char c : id) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) != 0 || byte > 127) {
            out += static_cast<char>(std::tolower(byte));
        } else if (!out.empty() && out.back() != '-') {
            out += '-';
        }
    }
    return out;
}

} // namespace

std::span<const PageKind> page_kinds() {
    return kinds;
}

} // namespace explaining

std::vector<std::string> explained_ids() {
    std::vector<std::string> ids;
    for (const explaining::PageKind& kind : explaining::page_kinds()) {
        for (const std::string_view id : kind.ids()) {
            ids.push_back(explaining::typed_form(id));
        }
    }
    return ids;
}

namespace {

using explaining::typed_form;

/// Every page under an id.
std::string pages_of(const std::string& wanted, const Style& style) {
    std::string pages;
    for (const explaining::PageKind& kind : explaining::page_kinds()) {
        for (const std::string_view id : kind.ids()) {
            if (typed_form(id) == wanted) {
                pages += (pages.empty() ? "" : "\n") + kind.page(id, style);
            }
        }
    }
    return pages;
}

/// Calls visit(alias) for each of a list parted by '|', until it says true.
template <class Visit>
bool any_alias(std::string_view list, const Visit& visit) {
    while (!list.empty()) {
        const std::string_view alias = list.substr(0, list.find('|'));
        if (visit(alias)) {
            return true;
        }
        list.remove_prefix(std::min(alias.size() + 1, list.size()));
    }
    return false;
}

/// The preferred word behind one that the trade says elsewhere; empty where it is none.
std::string_view preferred_word(const std::string& wanted) {
    for (const catalog::Word& word : catalog::words()) {
        if (any_alias(word.aliases,
                      [&](std::string_view alias) { return typed_form(alias) == wanted; })) {
            return word.id;
        }
    }
    return {};
}

/// All that may be asked for: ids, and the other words of the trade.
std::vector<std::string> askable_words() {
    std::vector<std::string> words = explained_ids();
    for (const catalog::Word& word : catalog::words()) {
        any_alias(word.aliases, [&](std::string_view alias) {
            words.push_back(typed_form(alias));
            return false;
        });
    }
    return words;
}

} // namespace

Result<std::string, UnknownKey> explain_id(std::string_view typed, const Style& style) {
    const std::string wanted = typed_form(typed);
    std::string pages = pages_of(wanted, style);
    // A word that is short for another comes first: `damper` is a key damper, and a look at one.
    if (const std::string_view word = preferred_word(wanted);
        !word.empty() && typed_form(word) != wanted) {
        const std::string also = pages.empty() ? "" : '\n' + pages;
        pages = pages_of(typed_form(word), style) + also;
    }
    if (const catalog::Wall* wall = catalog::find_wall(typed); pages.empty() && wall != nullptr) {
        pages = explaining::wall_page(wall->id, style);
    }
    if (const catalog::Fuel* fuel = catalog::find_fuel(typed); pages.empty() && fuel != nullptr) {
        pages = explaining::fuel_page(fuel->id, style);
    }
    if (!pages.empty()) {
        return pages;
    }
    const std::vector<std::string> ids = askable_words();
    const auto nearest =
        nearest_word(wanted, std::vector<std::string_view>(ids.begin(), ids.end()));
    return Failure{UnknownKey{
        .message = fmt::format("`{}` has no page", typed),
        .help = nearest ? fmt::format("did you mean `{}`?", *nearest)
                        : "`fluewright catalog` lists what there is, and a key of the file begins "
                          "with /"}};
}

} // namespace fluewright
