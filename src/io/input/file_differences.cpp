#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/report/report_compare.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace fluewright {
namespace {

using Json = nlohmann::ordered_json;

/// What a file is called and what was seen or lies about is no part of the layout.
bool says_nothing_of_the_layout(std::string_view pointer) {
    return pointer == "/title" || pointer == "/id" || pointer == "/units"
           || pointer.starts_with("/observed/") || pointer.starts_with("/stock/");
}

/// A part of the run as one line: "straight, up 1.2 m, diameter 150 mm".
std::string part_words(const Json& part) {
    std::string words;
    for (const auto& [key, value] : part.items()) {
        const std::string text = value.is_string() ? value.get<std::string>() : value.dump();
        if (key == "part") {
            words = text + words;
        } else {
            words += ", " + key + ' ' + text;
        }
    }
    return words;
}

void flatten(const Json& node,
             const std::string& pointer,
             std::vector<std::pair<std::string, std::string>>& out) {
    const bool is_part = pointer.starts_with("/run/");
    if (is_part) {
        out.emplace_back(pointer, part_words(node));
    } else if (node.is_object() || node.is_array()) {
        std::size_t index = 0;
        for (const auto& [key, value] : node.items()) {
            const std::string step = node.is_array() ? std::to_string(index++) : key;
            flatten(value, pointer + '/' + step, out);
        }
    } else {
        out.emplace_back(pointer, node.is_string() ? node.get<std::string>() : node.dump());
    }
}

} // namespace

std::vector<FileDifference> file_differences(const Comparison& comparison) {
    const std::size_t count = comparison.layouts.size();
    std::vector<FileDifference> all;
    for (std::size_t i = 0; i < count; ++i) {
        std::vector<std::pair<std::string, std::string>> flat;
        const Json whole =
            Json::parse(write_installation(comparison.layouts[i].written), nullptr, false);
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
