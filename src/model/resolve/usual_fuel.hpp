#pragma once

#include "fluewright/model/fields/appliance_words.hpp"

#include <string_view>

namespace fluewright::resolving {

/// The fuel of a heater whose file names none.
[[nodiscard]] constexpr std::string_view usual_fuel(ApplianceType type) {
    return type == ApplianceType::draft_hood ? "natural gas" : "wood";
}

} // namespace fluewright::resolving
