#include "files.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fmt/core.h>
#include <fstream>
#include <iostream>
#include <unistd.h>

namespace fluewright::cli {
namespace {

namespace fs = std::filesystem;

/// One byte more than the reader takes, so that it is the reader who refuses what is too large.
constexpr std::size_t most_bytes = (16U << 20U) + 1;

std::string reason() {
    return errno != 0 ? std::strerror(errno) : "unknown reason";
}

std::string read_all(std::istream& in) {
    std::string text;
    constexpr std::size_t block = 1U << 16U;
    while (in && text.size() < most_bytes) {
        const std::size_t before = text.size();
        text.resize(before + block);
        in.read(text.data() + before, static_cast<std::streamsize>(block));
        text.resize(before + static_cast<std::size_t>(in.gcount()));
    }
    return text;
}

bool write_whole(const fs::path& path, std::string_view text) {
    errno = 0;
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file.write(text.data(), static_cast<std::streamsize>(text.size()));
    file.close();
    return file.good();
}

int write_file(const Context& context,
               const fs::path& target,
               std::string_view text,
               int status,
               std::string_view input_file) {
    std::error_code error;
    if (!input_file.empty() && input_file != "-" && fs::equivalent(target, input_file, error)) {
        return refuse(
            context,
            wrong_input,
            fmt::format("`{}` is the input; choose another name for the output", target.string()));
    }
    if (fs::is_directory(target, error)) {
        return refuse(
            context, no_access, fmt::format("cannot write `{}`: it is a folder", target.string()));
    }
    const bool exists = fs::exists(target, error);
    if (exists && !fs::is_regular_file(target, error)) {
        // A device or a pipe cannot be renamed onto.
        return write_whole(target, text)
                   ? status
                   : refuse(context,
                            no_access,
                            fmt::format("cannot write `{}`: {}", target.string(), reason()));
    }
    // Behind a link it is the file that is replaced, not the link.
    const fs::path place = exists ? fs::canonical(target, error) : target;
    fs::path aside = place;
    aside += fmt::format(".{}.part", ::getpid());
    if (!write_whole(aside, text)) {
        const std::string why = reason();
        fs::remove(aside, error);
        return refuse(
            context, no_access, fmt::format("cannot write `{}`: {}", target.string(), why));
    }
    if (exists) {
        fs::permissions(aside, fs::status(place, error).permissions(), error);
    }
    fs::rename(aside, place, error);
    if (error) {
        const std::string why = error.message();
        fs::remove(aside, error);
        return refuse(
            context, no_access, fmt::format("cannot write `{}`: {}", target.string(), why));
    }
    return status;
}

} // namespace

int refuse(const Context& context, int status, std::string_view message) {
    context.streams.err << "fluewright: " << message << '\n';
    return status;
}

Result<Input, std::string> read_input(std::string_view file, std::istream& in) {
    if (file == "-") {
        Input input{.name = "<stdin>", .text = read_all(in)};
        if (in.bad()) {
            return Failure{std::string{"cannot read standard input"}};
        }
        return input;
    }
    const fs::path path{file};
    std::error_code error;
    if (fs::is_directory(path, error)) {
        return Failure{fmt::format("cannot read `{}`: it is a folder", file)};
    }
    errno = 0;
    std::ifstream stream(path, std::ios::binary);
    if (!stream) {
        return Failure{fmt::format("cannot read `{}`: {}", file, reason())};
    }
    Input input{.name = std::string{file}, .text = read_all(stream)};
    if (stream.bad()) {
        return Failure{fmt::format("cannot read `{}`: {}", file, reason())};
    }
    return input;
}

int write_answer(const Context& context,
                 std::string_view text,
                 int status,
                 std::string_view input_file) {
    if (context.arguments.has(option::output)) {
        return write_file(
            context, fs::path{context.arguments.value(option::output)}, text, status, input_file);
    }
    context.streams.out << text;
    return status;
}

int write_to_file(const Context& context,
                  std::string_view target,
                  std::string_view text,
                  std::string_view input_file) {
    return write_file(context, fs::path{target}, text, all_pass, input_file);
}

} // namespace fluewright::cli
