#include "fluewright/advice/checks/keys_in_words.hpp"

#include <algorithm>
#include <charconv>
#include <string_view>

namespace fluewright {
namespace {

/// A key of the run and the numbers of its parts, or a key elsewhere.
struct KeyInWords {
    std::string key;
    std::vector<int> parts;
};

/// Entries of a list are counted from 1: "site.roof.near[1].distance".
std::string dotted(std::string_view pointer) {
    std::string text;
    while (!pointer.empty()) {
        pointer.remove_prefix(1);
        const std::string_view step = pointer.substr(0, pointer.find('/'));
        pointer.remove_prefix(step.size());
        int index = 0;
        const auto read = std::from_chars(step.data(), step.data() + step.size(), index);
        if (read.ec == std::errc{} && read.ptr == step.data() + step.size()) {
            text += '[' + std::to_string(index + 1) + ']';
        } else {
            text += (text.empty() ? "" : ".") + std::string{step};
        }
    }
    return text;
}

KeyInWords key_of(std::string_view pointer) {
    constexpr std::string_view run = "/run/";
    if (!pointer.starts_with(run)) {
        return {dotted(pointer), {}};
    }
    const std::string_view rest = pointer.substr(run.size());
    int index = 0;
    const auto end = std::from_chars(rest.data(), rest.data() + rest.size(), index).ptr;
    const auto used = static_cast<std::size_t>(end - rest.data());
    return {dotted(rest.substr(used)), {index + 1}};
}

std::string numbers_text(const std::vector<int>& numbers) {
    std::string text;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        text += i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ";
        text += std::to_string(numbers[i]);
    }
    return text;
}

} // namespace

std::string keys_in_words(const std::vector<std::string>& pointers) {
    std::vector<KeyInWords> keys;
    for (const std::string& pointer : pointers) {
        const KeyInWords key = key_of(pointer);
        const auto known = std::find_if(keys.begin(), keys.end(), [&](const KeyInWords& k) {
            return k.key == key.key && k.parts.empty() == key.parts.empty();
        });
        if (known == keys.end()) {
            keys.push_back(key);
        } else if (!key.parts.empty()
                   && std::find(known->parts.begin(), known->parts.end(), key.parts.front())
                          == known->parts.end()) {
            known->parts.push_back(key.parts.front());
        }
    }
    std::string text;
    for (KeyInWords& key : keys) {
        std::sort(key.parts.begin(), key.parts.end());
        const std::string_view of = key.parts.size() == 1 ? " of part " : " of parts ";
        text += (text.empty() ? "`" : ", `") + key.key + '`';
        text += key.parts.empty() ? std::string_view{} : of;
        text += numbers_text(key.parts);
    }
    return text;
}

} // namespace fluewright
