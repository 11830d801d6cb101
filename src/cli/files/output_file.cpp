#include "output_file.hpp"

#include "cli/shell/exit_status.hpp"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <fmt/core.h>
#include <random>
#include <sys/stat.h>
#include <unistd.h>

namespace fluewright::cli {
namespace {

namespace fs = std::filesystem;

constexpr int most_links = 40; ///< as the system itself has it
constexpr unsigned readable_by_all = 0666;
constexpr unsigned permission_bits = 07777;

Refusal cannot_write(std::string_view path, std::string_view why) {
    return {.status = no_access, .message = fmt::format("cannot write `{}`: {}", path, why)};
}

/// The file at the end of a chain of links, whether it exists or not; empty for a chain without
/// end.
fs::path behind_links(fs::path path) {
    std::error_code error;
    for (int i = 0; i < most_links; ++i) {
        if (!fs::is_symlink(fs::symlink_status(path, error))) {
            return path;
        }
        const fs::path next = fs::read_symlink(path, error);
        if (error) {
            return path;
        }
        path = next.is_absolute() ? next : path.parent_path() / next;
    }
    return {};
}

/// A name nobody else has, beside the file: a long name of its own must not make one too long.
std::string name_aside(const fs::path& file) {
    std::random_device random;
    return (file.parent_path() / fmt::format(".fluewright-{:08x}{:08x}", random(), random()))
        .string();
}

} // namespace

Result<OutputPlace, Refusal>
output_place(const std::string& typed, const FilesRead& files_read, bool force) {
    if (typed.empty()) {
        return Failure{Refusal{.status = wrong_input, .message = "the name of a file is empty"}};
    }
    const fs::path file = behind_links(typed);
    if (file.empty()) {
        return Failure{cannot_write(typed, "its links lead in a circle")};
    }
    OutputPlace place{.typed = typed,
                      .file = file.string(),
                      .exists = false,
                      .in_place = false,
                      .permissions = 0};

    struct stat found {};

    if (::stat(place.file.c_str(), &found) != 0) {
        return errno == ENOENT
                   ? Result<OutputPlace, Refusal>{std::move(place)}
                   : Result<OutputPlace, Refusal>{Failure{cannot_write(typed, system_reason())}};
    }
    if (S_ISDIR(found.st_mode)) {
        return Failure{cannot_write(typed, "it is a folder")};
    }
    if (files_read.has(place.file)) {
        return Failure{Refusal{
            .status = wrong_input,
            .message = fmt::format(
                "`{}` is an input of this command; choose another name for the output", typed)}};
    }
    if (::access(place.file.c_str(), W_OK) != 0) {
        return Failure{cannot_write(typed, system_reason())};
    }
    place.exists = S_ISREG(found.st_mode);
    place.in_place = !place.exists;
    place.permissions = found.st_mode & permission_bits;
    if (place.in_place && !force) {
        return Failure{
            cannot_write(typed, "it is a device or a pipe, no plain file; --force writes into it")};
    }
    return place;
}

Result<OutputFile, Refusal> OutputFile::open(const OutputPlace& place) {
    OutputFile made;
    made.name_ = place.file;
    if (place.in_place) {
        made.file_ = Descriptor{::open(place.file.c_str(), O_WRONLY | O_CLOEXEC)};
    } else {
        constexpr int tries = 16;
        for (int i = 0; i < tries && !made.file_.is_open(); ++i) {
            made.aside_ = name_aside(place.file);
            errno = 0;
            made.file_ = Descriptor{::open(
                made.aside_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, readable_by_all)};
            if (errno != EEXIST) {
                break;
            }
        }
    }
    if (!made.file_.is_open()) {
        made.aside_.clear();
        return Failure{cannot_write(place.typed, system_reason())};
    }
    if (place.exists) {
        // Whoever may read the old file may read the new one; a system without permissions is no
        // reason not to write.
        (void)::fchmod(made.file_.number(), place.permissions);
    }
    return made;
}

OutputFile::OutputFile(OutputFile&& other) noexcept
    : file_(std::move(other.file_)), name_(std::move(other.name_)),
      aside_(std::exchange(other.aside_, {})), why_(std::move(other.why_)) {}

OutputFile::~OutputFile() {
    if (!aside_.empty()) {
        ::unlink(aside_.c_str());
    }
}

bool OutputFile::write(std::string_view text) {
    if (why_.empty() && !file_.write(text)) {
        why_ = system_reason();
    }
    return why_.empty();
}

std::string OutputFile::finish() {
    if (!file_.close() && why_.empty()) {
        why_ = system_reason();
    }
    if (why_.empty() && !aside_.empty()) {
        if (::rename(aside_.c_str(), name_.c_str()) == 0) {
            aside_.clear();
        } else {
            why_ = system_reason();
        }
    }
    return why_;
}

std::string OutputFile::finish_as_new() {
    if (!file_.close() && why_.empty()) {
        why_ = system_reason();
    }
    // A second name is refused where the name is taken; the first one goes with this object. Where
    // the disk knows no second names, looking before must do.
    if (why_.empty() && ::link(aside_.c_str(), name_.c_str()) != 0) {
        if (errno == EEXIST || ::access(name_.c_str(), F_OK) == 0) {
            errno = EEXIST;
            why_ = system_reason();
        } else {
            return finish();
        }
    }
    return why_;
}

} // namespace fluewright::cli
