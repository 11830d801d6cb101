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

/// An installation as written, with the text its faults are placed in.
struct Written {
    std::string name;
    std::string text;
    Installation installation;
};

/// Reads one file. The failure is the exit status; what was wrong has been told.
[[nodiscard]] Result<Written, int> read_written(const Context& context, std::string_view file);

/// Tells faults that showed later; returns the exit status.
[[nodiscard]] int tell_faults(const Context& context, const Faults& faults, const Written& written);

/// Reads and resolves the file. The failure is the exit status; what was wrong has been told.
[[nodiscard]] Result<OpenedCase, int> open_case(const Context& context);

} // namespace fluewright::cli
