#pragma once

#include "descriptor.hpp"
#include "file_identity.hpp"
#include "fluewright/core/result.hpp"

#include <string>
#include <string_view>

/// Files the program writes: whole or not at all, and never over what it has read.
namespace fluewright::cli {

/// Why something is not written: the sentence to print and the exit status that goes with it.
struct Refusal {
    int status{};
    std::string message;
};

/// Where an answer may go.
struct OutputPlace {
    std::string typed;    ///< as the user wrote it, for messages
    std::string file;     ///< the file itself, behind any links
    bool exists{};        ///< as a regular file that is replaced
    bool in_place{};      ///< a device or pipe, written into (only with `force`)
    unsigned permissions; ///< of the file that is replaced
};

/// Looks whether a file may be written: not a folder, not one of the files read, no loop of links,
/// and a device or pipe only with `force`. Nothing is written yet.
[[nodiscard]] Result<OutputPlace, Refusal>
output_place(const std::string& typed, const FilesRead& files_read, bool force);

/// A file that is written aside, in the same folder, and takes its name when it is whole. Until
/// then, and if it never comes to that, what stood there before stays.
class OutputFile {
public:
    [[nodiscard]] static Result<OutputFile, Refusal> open(const OutputPlace& place);

    ~OutputFile();
    OutputFile(OutputFile&& other) noexcept;
    OutputFile& operator=(OutputFile&& other) = delete;
    OutputFile(const OutputFile&) = delete;
    OutputFile& operator=(const OutputFile&) = delete;

    [[nodiscard]] bool write(std::string_view text);

    /// Gives the file its name; nothing on success.
    [[nodiscard]] std::string finish();

    /// The same, unless there is a file of that name by now.
    [[nodiscard]] std::string finish_as_new();

private:
    OutputFile() = default;

    Descriptor file_;
    std::string name_;  ///< in the end
    std::string aside_; ///< until then; empty when written in place
    std::string why_;   ///< the first thing that went wrong
};

} // namespace fluewright::cli
