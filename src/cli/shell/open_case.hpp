#pragma once

#include "command.hpp"
#include "files.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <ostream>
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

/// Reads a file beside the installation, such as that of --stock, with a reader of its own. The
/// failure is the exit status; what was wrong has been told.
template <class T>
[[nodiscard]] Result<T, int> read_beside(const Context& context,
                                         std::string_view file,
                                         Result<T, Diagnostics> (*read)(std::string_view,
                                                                        std::string_view)) {
    const auto input = read_input(file, context.streams.in);
    if (!input) {
        return Failure{refuse(context, no_access, input.error())};
    }
    auto made = read(input->text, input->name);
    if (!made) {
        context.streams.err << diagnostics_text(made.error());
        return Failure{static_cast<int>(wrong_input)};
    }
    return std::move(made).value();
}

/// Reads and resolves the file. The failure is the exit status; what was wrong has been told.
[[nodiscard]] Result<OpenedCase, int> open_case(const Context& context);

} // namespace fluewright::cli
