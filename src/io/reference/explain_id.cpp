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

constexpr std::array kinds{
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
    PageKind{"a way of firing", ids_of_conditions, condition_page},
    PageKind{"a cause",
             [] { return all_ids(diagnosis::causes()); },
             [](std::string_view id, const Style& style) {
                 return explain_cause(*diagnosis::find_cause(id), style);
             }},
    PageKind{"a look or a reading", [] { return all_ids(diagnosis::checks()); }, look_page},
    PageKind{"a change", [] { return all_ids(catalog::remedy_efforts()); }, remedy_page},
    PageKind{"a body of rules", [] { return all_ids(catalog::rule_bodies()); }, body_page},
    PageKind{"a question of the trade", trade_names, trade_page},
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

Result<std::string, UnknownKey> explain_id(std::string_view typed, const Style& style) {
    const std::string wanted = explaining::typed_form(typed);
    std::string pages;
    for (const explaining::PageKind& kind : explaining::page_kinds()) {
        for (const std::string_view id : kind.ids()) {
            if (explaining::typed_form(id) == wanted) {
                pages += (pages.empty() ? "" : "\n") + kind.page(id, style);
            }
        }
    }
    if (!pages.empty()) {
        return pages;
    }
    const std::vector<std::string> ids = explained_ids();
    const auto nearest =
        nearest_word(wanted, std::vector<std::string_view>(ids.begin(), ids.end()));
    return Failure{UnknownKey{
        .message = fmt::format("`{}` has no page", typed),
        .help = nearest ? fmt::format("did you mean `{}`?", *nearest)
                        : "`fluewright catalog` lists what there is, and a key of the file begins "
                          "with /"}};
}

} // namespace fluewright
