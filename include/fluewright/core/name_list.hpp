#pragma once

#include "fluewright/core/same_name.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

namespace fluewright {

/// The names of a list with a comma between each two, without the blanks around them. An empty list
/// has none; two commas side by side have an empty name between them.
[[nodiscard]] inline std::vector<std::string_view> names_of_list(std::string_view list) {
    std::vector<std::string_view> names;
    while (!list.empty()) {
        const std::size_t comma = std::min(list.find(','), list.size());
        names.push_back(without_blanks_around(list.substr(0, comma)));
        const bool ends_in_comma = comma + 1 == list.size();
        list.remove_prefix(std::min(comma + 1, list.size()));
        if (ends_in_comma) {
            names.emplace_back();
        }
    }
    return names;
}

} // namespace fluewright
