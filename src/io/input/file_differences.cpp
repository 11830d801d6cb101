#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/report/report_compare.hpp"
#include "io/json/json_text.hpp"

#include <algorithm>

namespace fluewright {
namespace {

using Json = json::Value;

/// What a file is called and what was seen or lies about is no part of the layout.
bool says_nothing_of_the_layout(std::string_view pointer) {
    return pointer == "/title" || pointer == "/id" || pointer == "/units"
           || pointer.starts_with("/observed/") || pointer.starts_with("/stock/");
}

std::string words_of_value(const Json& value) {
    return value.is_text() ? value.text() : json::compact_text(value);
}

/// A part of the run as one line: "straight, up 1.2 m, diameter 150 mm".
std::string part_words(const Json& part) {
    std::string words;
    for (const json::Member& member : part.members()) {
        const std::string text = words_of_value(member.value);
        if (member.key == "part") {
            words = text + words;
        } else {
            words += ", " + member.key + ' ' + text;
        }
    }
    return words;
}

void flatten(const Json& node,
             const std::string& pointer,
             std::vector<std::pair<std::string, std::string>>& out) {
    if (pointer.starts_with("/run/")) {
        out.emplace_back(pointer, part_words(node));
    } else if (node.is_object()) {
        for (const json::Member& member : node.members()) {
            flatten(member.value, pointer + '/' + member.key, out);
        }
    } else if (node.is_list()) {
        for (std::size_t i = 0; i < node.list().size(); ++i) {
            flatten(node.list()[i], pointer + '/' + std::to_string(i), out);
        }
    } else {
        out.emplace_back(pointer, words_of_value(node));
    }
}

} // namespace

std::vector<FileDifference> file_differences(const Comparison& comparison) {
    const std::size_t count = comparison.layouts.size();
    std::vector<FileDifference> all;
    for (std::size_t i = 0; i < count; ++i) {
        std::vector<std::pair<std::string, std::string>> flat;
        const Json whole = json::value_of(write_installation(comparison.layouts[i].written));
        flatten(whole, "", flat);
        for (auto& entry : flat) {
            // clang 14 lets no lambda capture a structured binding.
            const std::string& pointer = entry.first;
            auto row = std::find_if(all.begin(), all.end(), [&](const FileDifference& each) {
                return each.pointer == pointer;
            });
            if (row == all.end()) {
                all.push_back({.pointer = pointer, .values = std::vector<std::string>(count)});
                row = std::prev(all.end());
            }
            row->values[i] = std::move(entry.second);
        }
    }
    all.erase(std::remove_if(all.begin(),
                             all.end(),
                             [](const FileDifference& row) {
                                 const bool same =
                                     std::all_of(row.values.begin(),
                                                 row.values.end(),
                                                 [&](const std::string& value) {
                                                     return value == row.values.front();
                                                 });
                                 return same || says_nothing_of_the_layout(row.pointer);
                             }),
              all.end());
    return all;
}

} // namespace fluewright
