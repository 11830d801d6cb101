#include "fluewright/model/fields/fields.hpp"

#include <charconv>

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

template <class T>
Slot slot_of(T& object, const Field<T>& field, std::string_view rest) {
    if (const auto* given = std::get_if<Given T::*>(&field.member)) {
        return rest.empty() ? Slot{&(object.**given), &field.info} : Slot{};
    }
    if (const auto* pair = std::get_if<HighLow T::*>(&field.member)) {
        HighLow& values = object.**pair;
        if (rest == "/low") {
            return {&values.low, &field.info};
        }
        return rest.empty() || rest == "/high" ? Slot{&values.high, &field.info} : Slot{};
    }
    return {};
}

template <class T>
Slot find_in(T& object, std::string_view pointer);

template <class T>
Slot find_in(std::vector<T>& list, std::string_view pointer) {
    const auto step = take_step(pointer);
    if constexpr (Named<T>) {
        for (auto& entry : list) {
            if (entry.id == step) {
                return find_in(entry, pointer);
            }
        }
    } else {
        std::size_t index = 0;
        const auto* end = step.data() + step.size();
        const auto result = std::from_chars(step.data(), end, index);
        if (result.ec == std::errc{} && result.ptr == end && index < list.size()) {
            return find_in(list[index], pointer);
        }
    }
    return {};
}

template <class T>
Slot find_in(T& object, std::string_view pointer) {
    const auto step = take_step(pointer);
    if (const auto* field = find_field<T>(step, kinds_of(object))) {
        return slot_of(object, *field, pointer);
    }
    Slot slot;
    for_each_child(object, [&](const ChildInfo& child, auto& member) {
        if (child.key == step) {
            slot = find_in(member, pointer);
        }
    });
    return slot;
}

template <class T>
void collect(const T& object, const std::string& pointer, std::vector<std::string>& pointers);

template <class T>
void collect(const std::vector<T>& list,
             const std::string& pointer,
             std::vector<std::string>& pointers) {
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
        collect(entry, below, pointers);
        ++index;
    }
}

template <class T>
void collect(const T& object, const std::string& pointer, std::vector<std::string>& pointers) {
    for (const auto& field : fields<T>()) {
        if ((field.info.parts & kinds_of(object)) == 0U) {
            continue;
        }
        const auto path = pointer + '/' + std::string{field.info.key};
        if (std::holds_alternative<Given T::*>(field.member)) {
            pointers.push_back(path);
        } else if (std::holds_alternative<HighLow T::*>(field.member)) {
            pointers.push_back(path + "/low");
            pointers.push_back(path + "/high");
        }
    }
    for_each_child(object, [&](const ChildInfo& child, const auto& member) {
        collect(member, pointer + '/' + std::string{child.key}, pointers);
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
    return find_in(installation, pointer);
}

std::vector<std::string> value_pointers(const Installation& installation) {
    std::vector<std::string> pointers;
    collect(installation, "", pointers);
    return pointers;
}

} // namespace fluewright
