#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/name_list.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/quantity/quantity_range.hpp"
#include "fluewright/model/fields/words_at.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "varied_names.hpp"

#include <algorithm>
#include <array>

namespace fluewright {
namespace {

using varied_names::pointers_meant;

/// A short name of a word, and the end of the pointers it stands for.
struct ShortWord {
    std::string_view name;
    std::string_view steps;
};

constexpr std::array short_word_rows{ShortWord{"fuel", "/appliance/fuel/name"},
                                     ShortWord{"cap", "build"}};

std::string long_name(std::string_view typed) {
    std::string name = typed.starts_with('/') ? std::string{typed} : varied_names::normal(typed);
    for (const ShortWord& row : short_word_rows) {
        if (row.name == name) {
            return std::string{row.steps};
        }
    }
    return name;
}

/// "/run/7/build" of the caps of a run.
std::vector<std::string> builds_of_caps(const Installation& written) {
    std::vector<std::string> pointers;
    for (std::size_t i = 0; i < written.run.size(); ++i) {
        if (written.run[i].part == PartKind::cap) {
            pointers.push_back("/run/" + std::to_string(i) + "/build");
        }
    }
    return pointers;
}

/// What was seen, what lies on the shelf and what others gave is not built otherwise.
bool is_built(const std::string& pointer) {
    return pointer.starts_with("/site/") || pointer.starts_with("/appliance/")
           || pointer.starts_with("/run/");
}

std::vector<std::string_view> allowed_words(const FieldInfo& field, const Installation& written) {
    if (field.words == Words::choices) {
        return {field.choices.begin(), field.choices.end()};
    }
    if (field.words == Words::any_text) {
        const auto flags = words_of_flags();
        return {flags.begin(), flags.end()};
    }
    return known_names(field.words, written);
}

bool is_allowed(std::string_view word, const FieldInfo& field, const Installation& written) {
    const auto allowed = allowed_words(field, written);
    return std::find(allowed.begin(), allowed.end(), word) != allowed.end()
           || is_known_name(word, field.words, written);
}

std::string not_a_word(std::string_view typed, const std::vector<std::string>& pointers) {
    std::vector<std::string> names;
    names.reserve(short_word_rows.size() + 2 * pointers.size());
    for (const ShortWord& row : short_word_rows) {
        names.emplace_back(row.name);
    }
    for (const std::string& pointer : pointers) {
        names.push_back(pointer.substr(pointer.rfind('/') + 1));
        names.push_back(pointer);
    }
    const std::vector<std::string_view> views(names.begin(), names.end());
    const auto nearest = nearest_word(typed, views);
    return '`' + std::string{typed} + "` is no word of this file"
           + (nearest ? "; did you mean `" + std::string{*nearest} + "`?" : "");
}

} // namespace

Result<VariedKey, std::string> find_varied_word(std::string_view typed,
                                                const Installation& written) {
    const auto places = [](std::vector<std::string> all) {
        all.erase(std::remove_if(
                      all.begin(), all.end(), [](const std::string& p) { return !is_built(p); }),
                  all.end());
        return all;
    };
    const std::string name = long_name(typed);
    // A whole pointer needs no search, which counts where every record of a batch is asked.
    const bool whole = name.starts_with('/') && takes_word(written, name) && is_built(name);
    const std::vector<std::string> all =
        whole ? std::vector<std::string>{name} : places(word_pointers(written, name));
    const std::vector<std::string> found =
        typed == "cap" ? builds_of_caps(written)
                       : pointers_meant(all, name, [&](const std::string& pointer) {
                             return word_at(written, pointer).has_value();
                         });
    if (found.empty()) {
        return Failure{not_a_word(typed, places(word_pointers(written)))};
    }
    if (found.size() > 1) {
        return Failure{'`' + std::string{typed} + "` fits several words of this file; write "
                       + varied_names::or_list(found)};
    }
    return VariedKey{.what = VariedKey::What::words,
                     .name = std::string{typed},
                     .label = varied_names::label_of(found.front(), written),
                     .pointers = found};
}

bool may_be_varied_word(std::string_view typed) {
    const std::string name = long_name(typed);
    std::string_view key{name};
    key = key.substr(key.rfind('/') + 1); // npos + 1 is 0
    while (!key.empty()) {
        if (is_word_key(key)) {
            return true;
        }
        const std::size_t next = key.find('_');
        key = next == std::string_view::npos ? std::string_view{} : key.substr(next + 1);
    }
    return name == "/appliance/fuel/name";
}

Word word_now(const Installation& written, const VariedKey& key) {
    return word_at(written, key.pointers.front());
}

Result<Varied, std::string> read_varied_words(std::string_view typed, const Installation& written) {
    const auto equals = std::min(typed.find('='), typed.size());
    const std::string_view name = without_blanks_around(typed.substr(0, equals));
    auto as_number = find_varied_key(name, written);
    auto as_word = find_varied_word(name, written);
    if (as_number || equals == typed.size()) {
        return read_varied(typed, written);
    }
    if (!as_word) {
        // Several that fit, or the nearest name, whichever of the two has it to say.
        const bool told = as_number.error().find("; ") != std::string::npos
                          && as_number.error().find("; write outdoor") == std::string::npos;
        const bool helps = as_word.error().find("; ") != std::string::npos;
        return Failure{!told && helps ? as_word.error() : as_number.error()};
    }
    VariedKey key = std::move(as_word).value();
    const FieldInfo& field = *field_at(written, key.pointers.front());
    Varied varied;
    for (const std::string_view word : names_of_list(typed.substr(equals + 1))) {
        if (!is_allowed(word, field, written)) {
            const auto allowed = allowed_words(field, written);
            const auto nearest = nearest_word(word, allowed);
            return Failure{key.name + ": `" + std::string{word} + "` cannot stand there; "
                           + (nearest ? "did you mean `" + std::string{*nearest} + "`?"
                                      : "there are " + joined(allowed))};
        }
        if (std::find(key.words.begin(), key.words.end(), word) != key.words.end()) {
            return Failure{key.name + ": `" + std::string{word} + "` stands there twice"};
        }
        varied.values.push_back(static_cast<double>(key.words.size()));
        key.words.emplace_back(word);
    }
    if (key.words.empty()) {
        return Failure{key.name + ": nothing is listed; there are "
                       + joined(allowed_words(field, written))};
    }
    varied.key = std::move(key);
    return varied;
}

std::string value_words(const VariedKey& key, double value, UnitSystem units, int digits) {
    if (!key.words.empty()) {
        std::string word = key.words[static_cast<std::size_t>(value)];
        std::replace(word.begin(), word.end(), ' ', '-');
        return word;
    }
    std::string text = digits > 0 ? format_quantity(value, key.kind, units, digits)
                                  : write_quantity(value, key.kind, units);
    // A name of a record is for people: what no one would type is rounded.
    constexpr std::size_t longest_typed = 12;
    if (text.size() > longest_typed) {
        text = shortest_to_twelve_digits(value, key.kind);
    }
    text.erase(std::remove(text.begin(), text.end(), ' '), text.end());
    return text;
}

} // namespace fluewright
