#pragma once

#include "fluewright/core/quantity/quantity.hpp"

#include <string>
#include <string_view>

namespace fluewright {

/// A text of the tables with its figures in one system of units: "18 in (457 mm)" becomes "18 in"
/// or "457 mm", "200 to 260 degF (93 to 127 degC)" one of its ranges. What is no such pair stays.
[[nodiscard]] std::string in_one_system(std::string_view text, UnitSystem system);

} // namespace fluewright
