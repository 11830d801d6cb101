#pragma once

#include "fluewright/core/quantity/quantity.hpp"

#include <string>

namespace fluewright {

/// A sound installation as a file to start from, every key with its meaning from the table of
/// fields as a comment.
[[nodiscard]] std::string starting_file(UnitSystem units);

} // namespace fluewright
