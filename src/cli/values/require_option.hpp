#pragma once

#include "cli/shell/command.hpp"
#include "fluewright/advice/required.hpp"

#include <string>

namespace fluewright::cli {

/// The value of --require: what counts by default where it is not given. The failure is the
/// sentence to print.
[[nodiscard]] Result<Required, std::string> required_of(const Context& context);

} // namespace fluewright::cli
