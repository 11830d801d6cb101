#include "files.hpp"

#include <cerrno>
#include <fcntl.h>
#include <fmt/core.h>
#include <iostream>
#include <unistd.h>

namespace fluewright::cli {
namespace {

/// What can be read of a file, up to a little more than the reader takes.
Result<std::string, std::string> read_all(int descriptor, bool (*stop)()) {
    std::string text;
    constexpr std::size_t block = 1U << 16U;
    while (text.size() < most_bytes_read) {
        if (!wait_for_input(descriptor, stop)) {
            return Failure{std::string{}};
        }
        const std::size_t before = text.size();
        text.resize(before + block);
        const ssize_t count = ::read(descriptor, text.data() + before, block);
        text.resize(before + static_cast<std::size_t>(count > 0 ? count : 0));
        if (count < 0 && errno != EINTR && errno != EAGAIN) {
            return Failure{system_reason()};
        }
        if (count == 0) {
            break;
        }
    }
    return text;
}

std::string read_all(std::istream& in) {
    std::string text;
    constexpr std::size_t block = 1U << 16U;
    while (in && text.size() < most_bytes_read) {
        const std::size_t before = text.size();
        text.resize(before + block);
        in.read(text.data() + before, static_cast<std::streamsize>(block));
        text.resize(before + static_cast<std::size_t>(in.gcount()));
    }
    return text;
}

int write_file(const Context& context,
               const std::string& typed,
               std::string_view text,
               int status,
               bool only_new = false) {
    auto file = open_output(context, typed);
    if (!file) {
        return refuse(context, file.error().status, file.error().message);
    }
    (void)file->write(text); // finish() tells
    const std::string why = only_new ? file->finish_as_new() : file->finish();
    return why.empty()
               ? status
               : refuse(context, no_access, fmt::format("cannot write `{}`: {}", typed, why));
}

} // namespace

int refuse(const Context& context, int status, std::string_view message) {
    context.streams.err << "fluewright: " << message << '\n';
    return status;
}

Result<Input, std::string>
read_input(std::string_view file, std::istream& in, FilesRead& files_read, bool (*stop)()) {
    if (file == "-") {
        if (&in != &std::cin) {
            return Input{.name = "<stdin>", .text = read_all(in)};
        }
        auto text = read_all(STDIN_FILENO, stop);
        if (!text) {
            return Failure{"cannot read standard input: " + text.error()};
        }
        files_read.add(STDIN_FILENO);
        return Input{.name = "<stdin>", .text = std::move(text).value()};
    }
    std::string path{file};
    errno = 0;
    // A named pipe nobody writes to yet would hold up the opening itself.
    const int no_wait = stop != nullptr ? O_NONBLOCK : 0;
    const Descriptor opened{::open(path.c_str(), O_RDONLY | O_CLOEXEC | no_wait)};
    auto text = opened.is_open() ? read_all(opened.number(), stop)
                                 : Result<std::string, std::string>{Failure{system_reason()}};
    if (!text && stop != nullptr && stop()) {
        return Failure{std::string{}};
    }
    if (!text) {
        return Failure{errno == EISDIR ? fmt::format("cannot read `{}`: it is a folder", file)
                                       : fmt::format("cannot read `{}`: {}", file, text.error())};
    }
    files_read.add(opened.number());
    return Input{.name = std::move(path), .text = std::move(text).value()};
}

Result<OutputFile, Refusal> open_output(const Context& context, const std::string& typed) {
    const auto place =
        output_place(typed, context.files_read, context.arguments.has(option::force));
    return place ? OutputFile::open(*place) : Result<OutputFile, Refusal>{Failure{place.error()}};
}

int write_answer(const Context& context, std::string_view text, int status) {
    if (context.arguments.has(option::output)) {
        return write_file(
            context, std::string{context.arguments.value(option::output)}, text, status);
    }
    context.streams.out << text;
    return status;
}

int write_to_file(const Context& context, std::string_view target, std::string_view text) {
    return write_file(context, std::string{target}, text, all_pass);
}

int write_new_file(const Context& context, const std::string& target, std::string_view text) {
    return write_file(context, target, text, all_pass, true);
}

} // namespace fluewright::cli
