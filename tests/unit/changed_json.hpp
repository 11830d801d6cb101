#pragma once

#include <nlohmann/json.hpp>

namespace fluewright {

/// The base with the values at JSON pointers replaced; null takes a key away.
inline nlohmann::json with_changes(nlohmann::json base, const nlohmann::json& changes) {
    for (const auto& [pointer, value] : changes.items()) {
        const nlohmann::json::json_pointer place{pointer};
        if (value.is_null()) {
            base[place.parent_pointer()].erase(place.back());
        } else {
            base[place] = value;
        }
    }
    return base;
}

} // namespace fluewright
