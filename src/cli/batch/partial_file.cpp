#include "partial_file.hpp"

#include "cli/shell/exit_status.hpp"

#include <cerrno>
#include <charconv>
#include <fcntl.h>
#include <fmt/core.h>
#include <fstream>
#include <functional>
#include <sys/file.h>
#include <tuple>
#include <unistd.h>

namespace fluewright::cli {
namespace {

constexpr int hexadecimal = 16;
constexpr unsigned mode_of_new_files = 0666;
/// Far more than a batch writes at a time: what is longer is no piece of one.
constexpr std::size_t most_bytes_of_piece = 1U << 28U;

/// How far the batch has come, what the piece before is, as one line.
std::string text_of(const BatchProgress& progress, std::string_view piece) {
    TextSum sum;
    sum.add(piece);
    return fmt::format(
        "records={} pass={} open={} short={} fault={} failed={} method={} input={:016x} bytes={} "
        "sum={:016x}",
        progress.records,
        progress.pass,
        progress.undecided,
        progress.short_of_draft,
        progress.fault,
        progress.failed,
        progress.off_method,
        progress.input_sum,
        piece.size(),
        sum.value());
}

/// The number behind "name=".
std::optional<std::uint64_t> number_behind(std::string_view name, int base, std::string_view text) {
    const std::size_t at = text.find(std::string{name} + "=");
    if (at == std::string_view::npos) {
        return std::nullopt;
    }
    std::uint64_t value = 0;
    const char* const first = text.data() + at + name.size() + 1;
    const auto [end, error] = std::from_chars(first, text.data() + text.size(), value, base);
    return error == std::errc{} ? std::optional{value} : std::nullopt;
}

/// The line of progress read back; nothing where it does not belong to that piece.
std::optional<BatchProgress> progress_in(std::string_view text, std::string_view piece) {
    constexpr int decimal = 10;
    BatchProgress progress;
    for (const auto& [name, base, member] :
         {std::tuple{"records", decimal, &BatchProgress::records},
          std::tuple{"pass", decimal, &BatchProgress::pass},
          std::tuple{"open", decimal, &BatchProgress::undecided},
          std::tuple{"short", decimal, &BatchProgress::short_of_draft},
          std::tuple{"fault", decimal, &BatchProgress::fault},
          std::tuple{"failed", decimal, &BatchProgress::failed},
          std::tuple{"method", decimal, &BatchProgress::off_method},
          std::tuple{"input", hexadecimal, &BatchProgress::input_sum}}) {
        const auto value = number_behind(name, base, text);
        if (!value) {
            return std::nullopt;
        }
        progress.*member = *value;
    }
    return text == text_of(progress, piece) ? std::optional{progress} : std::nullopt;
}

/// Goes through the pieces of a partial file behind its first line. A line that looks like one of
/// progress but does not fit its piece belongs to the piece.
///
/// take  called with each whole piece and the progress after it; false ends the search
void each_piece(std::istream& in,
                std::string_view mark,
                std::string_view mark_end,
                const std::function<bool(const std::string&, const BatchProgress&)>& take) {
    std::string piece;
    std::string line;
    while (piece.size() < most_bytes_of_piece && std::getline(in, line) && !in.eof()) {
        const std::string_view text = line;
        if (text.size() >= mark.size() + mark_end.size() && text.starts_with(mark)
            && text.ends_with(mark_end)) {
            const std::string_view inner =
                text.substr(mark.size(), text.size() - mark.size() - mark_end.size());
            if (const auto progress = progress_in(inner, piece)) {
                if (!take(piece, *progress)) {
                    return;
                }
                piece.clear();
                continue;
            }
        }
        piece += line;
        piece += '\n';
    }
}

Refusal cannot_write_partial(std::string_view path) {
    return {.status = no_access,
            .message = fmt::format("cannot write `{}`: {}", path, system_reason())};
}

} // namespace

PartialFile::PartialFile(const OutputPlace& place, std::string_view format)
    : path_(place.file + ".partial"), typed_(place.typed + ".partial"),
      mark_(format == "ndjson" ? "{\"partial\":\"" : "# partial "),
      mark_end_(format == "ndjson" ? "\"}"
                : format == "csv"  ? "\r"
                                   : "") {}

std::optional<Refusal> PartialFile::open_locked(int flags) {
    file_ = Descriptor{::open(
        path_.c_str(), O_RDWR | O_APPEND | O_CLOEXEC | O_NOFOLLOW | flags, mode_of_new_files)};
    if (!file_.is_open()) {
        return cannot_write_partial(typed_);
    }
    if (::flock(file_.number(), LOCK_EX | LOCK_NB) != 0) {
        return Refusal{.status = no_access,
                       .message = fmt::format("another batch is writing `{}`", typed_)};
    }
    return std::nullopt;
}

Result<PartialFile, Refusal> PartialFile::begin(const OutputPlace& place,
                                                std::string_view format,
                                                std::string command,
                                                bool force) {
    PartialFile made(place, format);
    errno = 0;
    auto refused = made.open_locked(O_CREAT | (force ? 0 : O_EXCL));
    if (refused) {
        if (errno == EEXIST) {
            refused->message = fmt::format(
                "there is an unfinished `{}`: --resume goes on with it, --force begins anew",
                made.typed_);
        }
        return Failure{std::move(*refused)};
    }
    const std::string head = fmt::format("{}{}{}\n", made.mark_, command, made.mark_end_);
    if (::ftruncate(made.file_.number(), 0) != 0 || !made.file_.write(head)) {
        return Failure{cannot_write_partial(made.typed_)};
    }
    made.head_bytes_ = head.size();
    return made;
}

std::optional<Refusal> PartialFile::look_through(const std::string& command) {
    std::ifstream in(path_, std::ios::binary);
    std::string head;
    std::getline(in, head);
    const std::string wanted = fmt::format("{}{}{}", mark_, command, mark_end_);
    if (head != wanted) {
        const bool ours = std::string_view{head}.starts_with(mark_) && !in.eof();
        return Refusal{
            .status = wrong_input,
            .message = ours ? fmt::format(
                           "`{}` was begun by `{}`; this is `{}`",
                           typed_,
                           head.substr(mark_.size(), head.size() - mark_.size() - mark_end_.size()),
                           command)
                            : fmt::format("`{}` is no unfinished batch of this format", typed_)};
    }
    head_bytes_ = head.size() + 1;
    whole_bytes_ = head_bytes_;
    each_piece(in, mark_, mark_end_, [&](const std::string&, const BatchProgress& progress) {
        progress_ = progress;
        whole_bytes_ = static_cast<std::uint64_t>(in.tellg());
        return true;
    });
    return std::nullopt;
}

Result<PartialFile, Refusal> PartialFile::take_up(const OutputPlace& place,
                                                  std::string_view format,
                                                  const std::string& command) {
    PartialFile made(place, format);
    errno = 0;
    if (auto refused = made.open_locked(0)) {
        if (errno == ENOENT) {
            refused->message = fmt::format("there is nothing to resume: no file `{}`", made.typed_);
        }
        return Failure{std::move(*refused)};
    }
    if (auto refused = made.look_through(command)) {
        return Failure{std::move(*refused)};
    }
    if (::ftruncate(made.file_.number(), static_cast<off_t>(made.whole_bytes_)) != 0) {
        return Failure{cannot_write_partial(made.typed_)};
    }
    return made;
}

bool PartialFile::add(std::string_view lines, const BatchProgress& progress) {
    progress_ = progress;
    std::string piece{lines};
    piece += fmt::format("{}{}{}\n", mark_, text_of(progress, lines), mark_end_);
    return file_.write(piece);
}

std::optional<Refusal> PartialFile::finish(const OutputPlace& place) {
    auto whole = OutputFile::open(place);
    if (!whole) {
        return whole.error();
    }
    std::ifstream in(path_, std::ios::binary);
    in.seekg(static_cast<std::streamoff>(head_bytes_));
    std::uint64_t records = 0;
    each_piece(in, mark_, mark_end_, [&](const std::string& piece, const BatchProgress& progress) {
        records = progress.records;
        return whole->write(piece);
    });
    if (records != progress_.records) {
        return Refusal{.status = no_access,
                       .message = fmt::format("cannot read back `{}`", typed_)};
    }
    if (const std::string why = whole->finish(); !why.empty()) {
        return Refusal{.status = no_access,
                       .message = fmt::format("cannot write `{}`: {}", place.typed, why)};
    }
    ::unlink(path_.c_str());
    return std::nullopt;
}

} // namespace fluewright::cli
