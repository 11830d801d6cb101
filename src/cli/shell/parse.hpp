#pragma once

#include "command.hpp"
#include "fluewright/core/result.hpp"

namespace fluewright::cli {

/// Usage at fault: one line, and a way out.
struct UsageError {
    std::string message; ///< lower case, no final stop
    std::string help;
};

/// Sorts out the arguments behind a command's name: known options, values that are one of the
/// choices, as many words as the command takes. With --help nothing else is asked for.
[[nodiscard]] Result<Arguments, UsageError> parse(const Command& command,
                                                  const std::vector<std::string>& typed);

} // namespace fluewright::cli
