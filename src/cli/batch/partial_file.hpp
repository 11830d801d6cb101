#pragma once

#include "cli/files/output_file.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

/// What a batch has done so far, kept where it can be taken up again.
namespace fluewright::cli {

/// A sum over text that tells one input from another: FNV-1a with 64 bits, Fowler, Noll and Vo 1991
/// (from memory). It guards against mistakes, not against malice.
class TextSum {
public:
    TextSum() = default;

    explicit TextSum(std::uint64_t value) : value_(value) {}

    void add(std::string_view text) {
        constexpr std::uint64_t prime = 0x100000001b3;
        for (const char c : text) {
            value_ = (value_ ^ static_cast<unsigned char>(c)) * prime;
        }
    }

    [[nodiscard]] std::uint64_t value() const { return value_; }

private:
    std::uint64_t value_{0xcbf29ce484222325};
};

/// How far a batch has come.
struct BatchProgress {
    std::uint64_t records{}; ///< of the input that are dealt with, also those --only left out
    std::uint64_t pass{};
    std::uint64_t undecided{}; ///< nothing short, but not all that counts is decided
    std::uint64_t short_of_draft{};
    std::uint64_t fault{};
    std::uint64_t failed{};     ///< the solver gave up
    std::uint64_t off_method{}; ///< of whatever outcome: do not meet the method asked for
    std::uint64_t input_sum{};  ///< over those records
};

/// OUTPUT.partial: a first line that tells the command, then the lines of the answer. After each
/// piece of them stands a line that tells how far the batch has come and the length and sum of the
/// piece, so that a file cut anywhere is taken up behind its last whole piece.
///
/// One batch at a time holds it: it is locked.
class PartialFile {
public:
    /// A new one. One that is there already is somebody's work, and is replaced only with `force`.
    ///
    /// format  "ndjson", "csv" or "table": the lines of the file itself are such that whoever looks
    ///         in can read on over them
    [[nodiscard]] static Result<PartialFile, Refusal>
    begin(const OutputPlace& place, std::string_view format, std::string command, bool force);

    /// One that an interrupted run has left, cut behind its last whole piece. The command must be
    /// the same.
    [[nodiscard]] static Result<PartialFile, Refusal>
    take_up(const OutputPlace& place, std::string_view format, const std::string& command);

    [[nodiscard]] const BatchProgress& progress() const { return progress_; }

    /// Whether there is a piece of the answer in it already.
    [[nodiscard]] bool is_begun() const { return whole_bytes_ > head_bytes_; }

    /// Adds a piece of the answer and how far it brings the batch. False when it cannot be written.
    [[nodiscard]] bool add(std::string_view lines, const BatchProgress& progress);

    /// Writes the answer, without the lines of the partial file, where it belongs, and removes the
    /// partial file. Returns why not, or nothing.
    [[nodiscard]] std::optional<Refusal> finish(const OutputPlace& place);

private:
    PartialFile(const OutputPlace& place, std::string_view format);

    [[nodiscard]] std::optional<Refusal> open_locked(int flags);
    [[nodiscard]] std::optional<Refusal> look_through(const std::string& command);

    std::string path_;
    std::string typed_;
    std::string_view mark_;
    std::string_view mark_end_;
    Descriptor file_;
    BatchProgress progress_;
    std::uint64_t head_bytes_{};
    std::uint64_t whole_bytes_{};
};

} // namespace fluewright::cli
