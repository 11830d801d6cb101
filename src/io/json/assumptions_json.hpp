#pragma once

#include "fluewright/model/run/case.hpp"
#include "io/json/json_text.hpp"

#include <span>

namespace fluewright::report {

/// What was assumed, each with its source; a word or a number in SI whose key ends in the unit.
[[nodiscard]] json::Value assumptions_json(std::span<const Assumption> assumptions);

} // namespace fluewright::report
