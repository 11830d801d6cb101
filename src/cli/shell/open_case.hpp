#pragma once

#include "cli/files/files.hpp"
#include "command.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <ostream>
#include <string>
#include <vector>

/// From the word FILE to a case, for commands that need no assessment.
namespace fluewright::cli {

struct OpenedCase {
    std::string name; ///< of the file in messages
    std::string text;
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

/// What an answer about files that were read is an answer to.
[[nodiscard]] AnswerInput answer_input(const std::vector<AnswerFile>& files);
[[nodiscard]] AnswerInput answer_input(const Written& written);
[[nodiscard]] AnswerInput answer_input(const OpenedCase& opened);

/// Tells faults that showed later; returns the exit status.
[[nodiscard]] int tell_faults(const Context& context, const Faults& faults, const Written& written);

/// The same for faults whose places are known.
[[nodiscard]] int tell_faults(const Context& context, Diagnostics diagnostics);

/// The exit status; that of a failed program, with a word about it, where the solver gave up a
/// state.
[[nodiscard]] int unless_given_up(const Context& context, bool gave_up, int status);

/// Reads a file beside the installation, such as that of --stock, with a reader of its own. The
/// failure is the exit status; what was wrong has been told.
template <class T>
[[nodiscard]] Result<T, int> read_beside(const Context& context,
                                         std::string_view file,
                                         Result<T, Diagnostics> (*read)(std::string_view,
                                                                        std::string_view)) {
    const auto input = read_input(file, context.streams.in, context.files_read);
    if (!input) {
        return Failure{refuse(context, no_access, input.error())};
    }
    auto made = read(input->text, input->name);
    if (!made) {
        return Failure{tell_faults(context, made.error())};
    }
    return std::move(made).value();
}

/// Reads and resolves the file. The failure is the exit status; what was wrong has been told.
[[nodiscard]] Result<OpenedCase, int> open_case(const Context& context);

} // namespace fluewright::cli
