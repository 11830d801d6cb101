#pragma once

#include "fluewright/model/fields/installation.hpp"

#include <string>

namespace fluewright::property {

/// The installation as an input file that reads back to the same numbers, so that a case a test
/// fails on can be run again by hand.
[[nodiscard]] std::string file_text(const Installation& installation);

} // namespace fluewright::property
