#pragma once

#include "fluewright/core/result.hpp"
#include "fluewright/io/batch/batch_row.hpp"

#include <deque>
#include <fstream>
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
    /// The failure is the sentence to print: a path that matches nothing.
    ///
    /// `wait_for_line` is asked before a line is taken from standard input; it returns when there
    /// is something to read, with false when nothing more is wanted.
    static Result<RecordSource, std::string> open(const std::vector<std::string>& paths,
                                                  std::istream& standard_input,
                                                  bool (*wait_for_line)(std::istream&));

    /// The next record; nothing at the end. A file that cannot be read gives a record whose text is
    /// empty and sets unreadable().
    std::optional<BatchRecord> next();

    [[nodiscard]] bool unreadable() const { return unreadable_; }

    /// Bytes taken so far over bytes in all; nothing when a stream's length is not known.
    [[nodiscard]] std::optional<double> share_done() const;

private:
    RecordSource(std::istream& standard_input, bool (*wait_for_line)(std::istream&))
        : standard_input_(&standard_input), wait_for_line_(wait_for_line) {}

    bool open_next();

    std::istream* standard_input_;
    bool (*wait_for_line_)(std::istream&);
    std::deque<std::string> files_;
    std::unique_ptr<std::ifstream> file_;
    std::istream* lines_{}; ///< the stream of lines being read, when there is one
    std::string name_;
    std::size_t line_{};
    std::size_t number_{};
    double bytes_total_{};
    double bytes_done_{};
    bool endless_{};
    bool unreadable_{};
};

} // namespace fluewright::cli
