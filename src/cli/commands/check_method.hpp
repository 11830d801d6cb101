#pragma once

#include "cli/shell/command.hpp"

namespace fluewright::cli {

/// `check --method NAME`: the calculation of a published method instead of the assessment.
[[nodiscard]] int run_method(const Context& context);

} // namespace fluewright::cli
