#pragma once

#include "command.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/diagnostic.hpp"
#include "fluewright/model/case.hpp"
#include "fluewright/model/installation.hpp"

#include <string>

/// From the word FILE to a case, for commands that need no assessment.
namespace fluewright::cli {

struct OpenedCase {
    std::string name; ///< of the file in messages
    Installation written;
    Case installation;
};

/// Reads and resolves the file. The failure is the exit status; what was wrong has been told.
[[nodiscard]] Result<OpenedCase, int> open_case(const Context& context);

} // namespace fluewright::cli
