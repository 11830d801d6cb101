#pragma once

#include "partial_file.hpp"

#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>

namespace fluewright::cli {

/// The forms of a batch: one line a record, or a page about all of them.
enum class BatchFormat { table, ndjson, csv, html };

[[nodiscard]] std::string_view name(BatchFormat format);

/// Where the lines of a batch go: standard output, or a file that is written aside and has its name
/// only when it is whole.
class BatchOutput {
public:
    /// To standard output.
    BatchOutput(std::ostream& out, BatchFormat format);

    /// To a file, by way of its partial file.
    BatchOutput(OutputPlace place, PartialFile partial, BatchFormat format);

    /// What an earlier run has done; all nothing for a new one.
    [[nodiscard]] const BatchProgress& before() const { return before_; }

    /// Whether the head of a table must still be written.
    [[nodiscard]] bool wants_header() const { return !partial_ || !partial_->is_begun(); }

    /// False when the text did not go out whole.
    [[nodiscard]] bool write(std::string_view lines, const BatchProgress& progress);

    /// Ends the answer: the file gets its name. Returns why not, or nothing.
    [[nodiscard]] std::optional<Refusal> finish();

    /// Ends the answer early. Standard output gets a line that says how far it came; a partial file
    /// has that already.
    void stop_early(std::uint64_t records_done);

private:
    std::ostream* out_{};
    BatchFormat format_;
    OutputPlace place_;
    std::optional<PartialFile> partial_;
    BatchProgress before_;
};

} // namespace fluewright::cli
