#pragma once

#include "fluewright/core/same_name.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

namespace fluewright {

/// The entry of the user's own that answers to a name, whatever the case of its letters; null where
/// there is none. An own name goes before one of the catalog.
template <Named T>
[[nodiscard]] const T* find_own(const std::vector<T>& list, std::string_view name) {
    const auto entry = std::find_if(
        list.begin(), list.end(), [&](const T& each) { return is_same_name(each.id, name); });
    return entry == list.end() ? nullptr : &*entry;
}

} // namespace fluewright
