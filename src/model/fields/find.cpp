#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/words_at.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

namespace fluewright {

std::string too_many_words(const ChildInfo& child, std::size_t entries) {
    return "`" + std::string{child.key} + "` has " + std::to_string(entries)
           + " entries, more than " + std::to_string(child.most);
}

namespace {

/// Takes the first step off a JSON pointer, its escapes resolved.
std::string take_step(std::string_view& pointer) {
    if (!pointer.empty()) {
        pointer.remove_prefix(1);
    }
    const auto typed = pointer.substr(0, pointer.find('/'));
    pointer.remove_prefix(typed.size());
    std::string step;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const bool escaped = typed[i] == '~' && i + 1 < typed.size();
        step += !escaped ? typed[i] : typed[i + 1] == '1' ? '/' : '~';
        i += escaped ? 1U : 0U;
    }
    return step;
}

/// Calls visit(object, row, rest of the pointer) for the field a pointer leads to, where there is
/// one.
template <class T, class Visit>
void visit_at(T& object, std::string_view pointer, const Visit& visit);

template <class List, class Visit>
void visit_entry(List& list, std::string_view pointer, const Visit& visit) {
    const auto step = take_step(pointer);
    if constexpr (Named<typename List::value_type>) {
        for (auto& entry : list) {
            if (entry.id == step) {
                visit_at(entry, pointer, visit);
                return;
            }
        }
    } else {
        std::size_t index = 0;
        const auto* end = step.data() + step.size();
        const auto result = std::from_chars(step.data(), end, index);
        if (result.ec == std::errc{} && result.ptr == end && index < list.size()) {
            visit_at(list[index], pointer, visit);
        }
    }
}

template <class T, class Visit>
void visit_at(T& object, std::string_view pointer, const Visit& visit) {
    const auto step = take_step(pointer);
    if (const auto* field = find_field<std::remove_const_t<T>>(step, kinds_of(object))) {
        visit(object, *field, pointer);
        return;
    }
    for_each_child(object, [&](const ChildInfo& child, auto& member) {
        if (child.key != step) {
            return;
        }
        if constexpr (requires { member.begin(); }) {
            visit_entry(member, pointer, visit);
        } else {
            visit_at(member, pointer, visit);
        }
    });
}

/// Calls visit(value) for the number of a row that the rest of a pointer means.
template <class Object, class T, class Visit>
void visit_number(Object& object,
                  const Field<T>& field,
                  std::string_view rest,
                  const Visit& visit) {
    if (const auto* given = std::get_if<Given T::*>(&field.member)) {
        if (rest.empty()) {
            visit(object.**given);
        }
    } else if (const auto* pair = std::get_if<HighLow T::*>(&field.member)) {
        if (rest == "/low") {
            visit((object.**pair).low);
        } else if (rest.empty() || rest == "/high") {
            visit((object.**pair).high);
        }
    }
}

/// Whether a row takes one of some words, or yes and no.
template <class T>
bool takes_words(const Field<T>& field) {
    const bool word = std::holds_alternative<Word T::*>(field.member)
                      || std::holds_alternative<ChoiceMember<T>>(field.member);
    return (word && field.info.words != Words::any_text)
           || std::holds_alternative<Flag T::*>(field.member);
}

constexpr std::array<std::string_view, 2> flag_words{"false", "true"};

template <class T>
Word word_of(const T& object, const Field<T>& field) {
    if (const auto* word = std::get_if<Word T::*>(&field.member)) {
        return object.**word;
    }
    if (const auto* flag = std::get_if<Flag T::*>(&field.member)) {
        const Flag& value = object.**flag;
        return value ? Word{flag_words[*value ? 1 : 0]} : Word{};
    }
    if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
        const auto place = choice->get(object);
        return place && *place < choice->words.size() ? Word{choice->words[*place]} : Word{};
    }
    return {};
}

template <class T>
bool put_word(T& object, const Field<T>& field, std::string_view word) {
    const auto place_in = [&](std::span<const std::string_view> words) {
        const auto at = std::find(words.begin(), words.end(), word);
        return at == words.end()
                   ? std::optional<std::size_t>{}
                   : std::optional{static_cast<std::size_t>(std::distance(words.begin(), at))};
    };
    if (const auto* text = std::get_if<Word T::*>(&field.member)) {
        object.** text = std::string{word};
        return true;
    }
    if (const auto* flag = std::get_if<Flag T::*>(&field.member)) {
        const auto place = place_in(flag_words);
        object.** flag = place ? Flag{*place == 1} : object.**flag;
        return place.has_value();
    }
    if (const auto* choice = std::get_if<ChoiceMember<T>>(&field.member)) {
        const auto place = place_in(choice->words);
        if (place) {
            choice->set(object, place);
        }
        return place.has_value();
    }
    return false;
}

/// Pointers to what: numbers, or words.
enum class Collected : std::uint8_t { numbers, words };

/// What is collected, and where it goes.
struct Collection {
    std::string_view name; ///< only of keys that it ends in; empty: of all
    std::vector<std::string> pointers{};

    [[nodiscard]] bool wants(std::string_view key) const {
        return name.empty() || name.ends_with(key);
    }
};

template <Collected what, class T>
void collect(const T& object, const std::string& pointer, Collection& into);

template <Collected what, class T>
void collect(const std::vector<T>& list, const std::string& pointer, Collection& into) {
    std::size_t index = 0;
    for (const auto& entry : list) {
        std::string step;
        if constexpr (Named<T>) {
            step = pointer_step(entry.id);
        } else {
            step = std::to_string(index);
        }
        std::string below = pointer;
        below += '/';
        below += step;
        collect<what>(entry, below, into);
        ++index;
    }
}

template <Collected what, class T>
void collect(const T& object, const std::string& pointer, Collection& into) {
    std::vector<std::string>& pointers = into.pointers;
    for (const auto& field : fields<T>()) {
        if ((field.info.parts & kinds_of(object)) == 0U || !into.wants(field.info.key)) {
            continue;
        }
        const auto path = pointer + '/' + std::string{field.info.key};
        if constexpr (what == Collected::words) {
            if (takes_words(field)) {
                pointers.push_back(path);
            }
        } else if (std::holds_alternative<Given T::*>(field.member)) {
            pointers.push_back(path);
        } else if (std::holds_alternative<HighLow T::*>(field.member)) {
            pointers.push_back(path + "/low");
            pointers.push_back(path + "/high");
        }
    }
    for_each_child(object, [&](const ChildInfo& child, const auto& member) {
        collect<what>(member, pointer + '/' + std::string{child.key}, into);
    });
}

} // namespace

std::string pointer_step(std::string_view key) {
    std::string step;
    for (const char c : key) {
        if (c == '~' || c == '/') {
            step += c == '~' ? "~0" : "~1";
        } else {
            step += c;
        }
    }
    return step;
}

Slot find_value(Installation& installation, std::string_view pointer) {
    Slot slot;
    visit_at(installation, pointer, [&](auto& object, const auto& field, std::string_view rest) {
        visit_number(object, field, rest, [&](Given& value) { slot = {&value, &field.info}; });
    });
    return slot;
}

Given number_at(const Installation& installation, std::string_view pointer) {
    Given number;
    visit_at(installation, pointer, [&](auto& object, const auto& field, std::string_view rest) {
        visit_number(object, field, rest, [&](const Given& value) { number = value; });
    });
    return number;
}

const FieldInfo* field_at(const Installation& installation, std::string_view pointer) {
    const FieldInfo* info = nullptr;
    visit_at(installation, pointer, [&](auto& /*object*/, const auto& field, std::string_view) {
        info = &field.info;
    });
    return info;
}

Word word_at(const Installation& installation, std::string_view pointer) {
    Word word;
    visit_at(installation, pointer, [&](auto& object, const auto& field, std::string_view rest) {
        word = rest.empty() ? word_of(object, field) : Word{};
    });
    return word;
}

bool takes_word(const Installation& installation, std::string_view pointer) {
    bool takes = false;
    visit_at(
        installation, pointer, [&](auto& /*object*/, const auto& field, std::string_view rest) {
            takes = rest.empty() && takes_words(field);
        });
    return takes;
}

bool set_word(Installation& installation, std::string_view pointer, std::string_view word) {
    bool set = false;
    visit_at(installation, pointer, [&](auto& object, const auto& field, std::string_view rest) {
        set = rest.empty() && put_word(object, field, word);
    });
    return set;
}

std::span<const std::string_view> words_of_flags() {
    return flag_words;
}

std::vector<std::string> value_pointers(const Installation& installation) {
    return value_pointers_of(installation, {});
}

std::vector<std::string> value_pointers_of(const Installation& installation,
                                           std::string_view name) {
    for (const std::string_view end : {std::string_view{"/high"}, std::string_view{"/low"}}) {
        name.remove_suffix(name.ends_with(end) ? end.size() : 0);
    }
    Collection into{.name = name};
    collect<Collected::numbers>(installation, "", into);
    return std::move(into.pointers);
}

std::vector<std::string> word_pointers(const Installation& installation, std::string_view name) {
    Collection into{.name = name};
    collect<Collected::words>(installation, "", into);
    return std::move(into.pointers);
}

} // namespace fluewright
