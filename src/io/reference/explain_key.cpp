#include "fluewright/core/nearest_word.hpp"
#include "fluewright/io/reference/explain.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "schema_text.hpp"

#include <algorithm>
#include <fmt/core.h>
#include <optional>

namespace fluewright {
namespace {

/// The first step of a pointer and what follows it.
struct Steps {
    std::string_view first;
    std::string_view rest;
};

Steps split(std::string_view pointer) {
    pointer.remove_prefix(pointer.starts_with('/') ? 1 : 0);
    const auto first = pointer.substr(0, pointer.find('/'));
    return {first, pointer.substr(first.size())};
}

bool is_index(std::string_view step) {
    return !step.empty() && step.find_first_not_of("0123456789") == std::string_view::npos;
}

/// What a pointer leads to.
struct Found {
    std::vector<const FieldInfo*> fields; ///< more than one where kinds of part differ
    bool takes_number{false};
    bool is_flag{false};
    bool has_low_and_high{false};
    std::optional<ChildInfo> child;                               ///< an object or a list instead
    std::vector<std::pair<std::string, std::string_view>> inside; ///< its keys and their meaning
    UnknownKey unknown;
};

template <class T>
void list_inside(T& object, Found& found) {
    for (const auto& field : fields<T>()) {
        found.inside.emplace_back(field.info.key, field.info.meaning);
    }
    for_each_child(object, [&](const ChildInfo& child, auto& /*member*/) {
        found.inside.emplace_back(child.key, child.meaning);
    });
}

template <class T>
void look_in(T& object, std::string_view pointer, Found& found);

template <class T>
void look_in(std::vector<T>& /*list*/, std::string_view pointer, Found& found) {
    T entry;
    const auto [first, rest] = split(pointer);
    // A name of the user's own is no key; an entry of a list is known by its digits.
    const bool is_entry =
        Named<T> ? !first.empty() && find_field<T>(first) == nullptr : is_index(first);
    look_in(entry, is_entry ? rest : pointer, found);
}

template <class T>
void look_in(T& object, std::string_view pointer, Found& found) {
    // Named members: clang 14 lets no lambda capture a structured binding.
    const Steps steps = split(pointer);
    if (steps.first.empty()) {
        list_inside(object, found);
        return;
    }
    for (const auto& field : fields<T>()) {
        const bool pair = std::holds_alternative<HighLow T::*>(field.member);
        if (field.info.key == steps.first
            && (steps.rest.empty() || (pair && (steps.rest == "/low" || steps.rest == "/high")))) {
            found.fields.push_back(&field.info);
            found.takes_number = takes_number(field);
            found.is_flag = std::holds_alternative<Flag T::*>(field.member);
            found.has_low_and_high = pair;
        }
    }
    if (!found.fields.empty()) {
        return;
    }
    bool entered = false;
    for_each_child(object, [&](const ChildInfo& child, auto& member) {
        if (child.key == steps.first) {
            entered = true;
            found.child = child;
            look_in(member, steps.rest, found);
        }
    });
    if (entered) {
        return;
    }
    Found keys;
    list_inside(object, keys);
    std::vector<std::string_view> words;
    for (const auto& [key, meaning] : keys.inside) {
        words.push_back(key);
    }
    found.unknown.message = fmt::format("`{}` is not a key there", steps.first);
    if (const auto nearest = nearest_word(steps.first, words)) {
        found.unknown.help = fmt::format("did you mean `{}`?", *nearest);
    } else {
        found.unknown.help = "the keys there are: " + joined(words);
    }
}

Found look_up(std::string_view pointer) {
    Installation installation;
    Found found;
    look_in(installation, pointer, found);
    return found;
}

std::string words_in_words(const FieldInfo& field) {
    switch (field.words) {
    case Words::choices:
        return joined(field.choices);
    case Words::fuels:
        return "a name in `fuels` of the file, or out of `fluewright catalog fuels`";
    case Words::walls:
        return "a name in `walls` of the file, or out of `fluewright catalog walls`";
    case Words::clay_liners:
        return "a name out of `fluewright catalog liners`";
    case Words::fittings:
        return "a name in `fittings` of the file, or out of `fluewright catalog fittings`";
    case Words::materials:
        return "a name out of `fluewright catalog materials`, or air gap";
    case Words::any_text:
        break;
    }
    return field.may_be_whole_number ? "a text or a whole number" : "any text";
}

std::string default_source(const FieldInfo& field) {
    if (!field.default_id) {
        return {};
    }
    const catalog::Default& row = catalog::default_of(*field.default_id);
    return row.source == row.mark ? fmt::format(" ({})", row.mark)
                                  : fmt::format(" ({}; {})", row.source, row.mark);
}

void describe(const FieldInfo& field, const Found& found, TextTable& table) {
    const bool bare = found.is_flag || (found.takes_number && field.kind == Kind::number);
    table.add({{"meaning"}, {std::string{field.meaning}}});
    table.add({{"example"},
               {bare ? fmt::format("\"{}\": {}", field.key, field.example)
                     : fmt::format("\"{}\": \"{}\"", field.key, field.example)}});
    if (found.takes_number) {
        table.add(
            {{"allowed"},
             {fmt::format("{}, {}", name(field.kind), range_in_words(field))
              + (field.limit_reason.empty() ? "" : fmt::format(" ({})", field.limit_reason))}});
        if (field.kind != Kind::number) {
            table.add({{"units"}, {accepted_units(field.kind)}});
        }
    } else {
        table.add({{"allowed"}, {found.is_flag ? "true or false" : words_in_words(field)}});
    }
    if (found.has_low_and_high) {
        table.add({{"fires"}, {R"(one value for high fire, or {"low": ..., "high": ...})"}});
    }
    if (field.parts != part_kind::any) {
        table.add({{"parts"}, {part_kind::list(field.parts)}});
    }
    const std::string stand_in = default_in_words(field);
    if (field.required || field.carries_on || !stand_in.empty()) {
        table.add({{"left out"},
                   {field.required     ? "an error"
                    : field.carries_on ? "the value of the part before carries on"
                                       : stand_in + default_source(field)}});
    }
}

} // namespace

std::string_view meaning_of_key(std::string_view pointer) {
    const Found found = look_up(pointer);
    if (!found.fields.empty()) {
        return found.fields.front()->meaning;
    }
    return found.child && found.unknown.message.empty() ? found.child->meaning : std::string_view{};
}

Result<std::string, UnknownKey> explain_key(std::string_view pointer, const Style& style) {
    const Found found = look_up(pointer);
    if (!found.unknown.message.empty()) {
        return Failure{found.unknown};
    }
    std::string out = paragraph(pointer, {.first = 0, .rest = 2}, style.width);
    for (const FieldInfo* field : found.fields) {
        TextTable table({{}, {.wraps = true}});
        describe(*field, found, table);
        out += '\n' + table.text(style, 2);
    }
    if (found.fields.empty()) {
        const std::string_view meaning =
            found.child ? found.child->meaning
                        : "The whole file: what stands in the outermost braces.";
        out += paragraph(meaning, {.first = 2, .rest = 2}, style.width) + '\n';
        TextTable table({{.heading = "key"}, {.heading = "meaning", .wraps = true}});
        for (const auto& [key, about] : found.inside) {
            table.add({{key}, {std::string{about}}});
        }
        out += table.text(style, 2);
    }
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright
