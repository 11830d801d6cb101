#pragma once

#include "fluewright/core/result.hpp"

#include <cstddef>
#include <fstream>
#include <iosfwd>
#include <memory>
#include <string>
#include <string_view>

namespace fluewright::cli {

/// The three forms of a batch.
enum class BatchFormat { table, ndjson, csv };

/// Where the lines of a batch go: standard output, or a file written aside and renamed when whole.
///
/// The file aside is OUTPUT.partial. When a batch is interrupted it stays, ends in a line that says
/// so, and can be taken up again.
class BatchOutput {
public:
    /// To standard output.
    BatchOutput(std::ostream& out, BatchFormat format);

    /// To a file. With `resume`, OUTPUT.partial is opened and cut behind its last whole record.
    /// The failure is the sentence to print.
    static Result<BatchOutput, std::string>
    to_file(const std::string& path, BatchFormat format, bool resume);

    /// False when the text did not go out whole.
    bool write(std::string_view text);

    /// Records an earlier run has dealt with: those to pass over.
    [[nodiscard]] std::size_t records_before() const { return records_before_; }

    /// Whether the head of a table must still be written.
    [[nodiscard]] bool wants_header() const { return records_before_ == 0; }

    /// Ends the stream: the file gets its name.
    bool finish();

    /// Ends the stream early with a line that says how far it came.
    void mark_partial(std::size_t records_done);

private:
    std::ostream* out_;
    std::unique_ptr<std::ofstream> file_;
    std::string path_;
    BatchFormat format_;
    std::size_t records_before_{};
};

} // namespace fluewright::cli
