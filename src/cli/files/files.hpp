#pragma once

#include "cli/shell/command.hpp"
#include "fluewright/core/result.hpp"
#include "io/input/json_document.hpp"
#include "output_file.hpp"

#include <cstddef>
#include <string>
#include <string_view>

/// Reading the input and writing the answer.
namespace fluewright::cli {

/// As much as is read of one installation: a byte more than the reader takes, so that it is the
/// reader who refuses what is too large.
inline constexpr std::size_t most_bytes_read = json::greatest_size + 1;

/// A text and the name it is known by in messages.
struct Input {
    std::string name; ///< "<stdin>" for standard input
    std::string text;
};

/// Tells a complaint in one line and returns the exit status that goes with it.
[[nodiscard]] int refuse(const Context& context, int status, std::string_view message);

/// The whole of a file, or of standard input for "-". The failure is the sentence to print.
/// What was read is noted in `files_read`. Where `stop` is given and says so, a pipe is waited for
/// no longer, and the failure has no words.
[[nodiscard]] Result<Input, std::string> read_input(std::string_view file,
                                                    std::istream& in,
                                                    FilesRead& files_read,
                                                    bool (*stop)() = nullptr);

/// Opens a file for what a command has to say, where `output_place` lets it.
[[nodiscard]] Result<OutputFile, Refusal> open_output(const Context& context,
                                                      const std::string& typed);

/// Writes what a command has to say: to the file of --output, or else to standard output. A file is
/// written aside and renamed, so that it is never half there, and no file the command has read is
/// overwritten. Returns `status`, or what stands for the failure after telling it.
[[nodiscard]] int write_answer(const Context& context, std::string_view text, int status);

/// Writes a second thing a command has to say to a file of its own, in the same way.
[[nodiscard]] int
write_to_file(const Context& context, std::string_view target, std::string_view text);

/// The same to a file that does not exist yet; one that came to be meanwhile stays as it is.
[[nodiscard]] int
write_new_file(const Context& context, const std::string& target, std::string_view text);

} // namespace fluewright::cli
