#pragma once

#include "cli/files/descriptor.hpp"
#include "cli/files/file_identity.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "line_reader.hpp"

#include <deque>
#include <iosfwd>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace fluewright::cli {

/// The installations of a batch, one after another, in constant memory.
///
/// A path is a JSON file, a file with one installation a line (.ndjson, .jsonl), a folder (its
/// .json, .ndjson and .jsonl files in order of name), a pattern with * or ?, or - for standard
/// input with one installation a line.
class RecordSource {
public:
    /// The failure is the sentence to print: a path that matches nothing. `stop` is asked while
    /// there is nothing to read.
    /// Every file that will be read is noted in `files_read`, which must outlive the source, so
    /// that the output does not fall on one of them.
    static Result<RecordSource, std::string> open(const std::vector<std::string>& paths,
                                                  std::istream& standard_input,
                                                  FilesRead& files_read,
                                                  bool (*stop)());

    /// The next record; nothing at the end, or when asked to stop. A file that cannot be read gives
    /// a record without a text, and a stream that fails gives one and ends; both set unreadable().
    std::optional<BatchRecord> next();

    /// The sentence to print about the first file that could not be read; empty for none.
    [[nodiscard]] const std::string& unreadable() const { return unreadable_; }

    /// Bytes taken so far over bytes in all; nothing when a stream's length is not known.
    [[nodiscard]] std::optional<double> share_done() const;

private:
    RecordSource(std::istream& standard_input, FilesRead& files_read, bool (*stop)())
        : standard_input_(&standard_input), files_read_(&files_read), stop_(stop) {}

    void open_lines();
    [[nodiscard]] BatchRecord whole_file();
    void note_unreadable(std::string_view why);

    std::istream* standard_input_;
    FilesRead* files_read_;
    bool (*stop_)();
    std::deque<std::string> files_;
    Descriptor file_;
    std::unique_ptr<LineReader> lines_; ///< of the stream being read, when there is one
    std::string name_;
    std::size_t line_{};
    std::size_t number_{};
    double bytes_total_{};
    double bytes_done_{};
    bool endless_{};
    std::string unreadable_;
};

} // namespace fluewright::cli
