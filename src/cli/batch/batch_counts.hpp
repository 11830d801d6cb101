#pragma once

#include "cli/batch/partial_file.hpp"

#include <string>

namespace fluewright::cli {

/// "12 installations: 8 pass, 3 fall short, 1 at fault".
[[nodiscard]] std::string
counted(const BatchProgress& all, const BatchProgress& before, double seconds);

} // namespace fluewright::cli
