#pragma once

#include "cli/shell/run.hpp"

#include <cstddef>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <system_error>
#include <unistd.h>
#include <vector>

/// One call of the program in this process.
namespace session {

/// A folder of its own, gone when the test is over.
class Folder {
public:
    Folder()
        : path_(std::filesystem::temp_directory_path()
                / ("fluewright-cli-" + std::to_string(::getpid()))) {
        std::filesystem::create_directories(path_);
    }

    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }

    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    [[nodiscard]] std::string file(const std::string& name) const { return path_ / name; }

    [[nodiscard]] std::string write(const std::string& name, const std::string& text) const {
        std::ofstream(path_ / name) << text;
        return path_ / name;
    }

    [[nodiscard]] std::ptrdiff_t count() const {
        return std::distance(std::filesystem::directory_iterator(path_),
                             std::filesystem::directory_iterator());
    }

private:
    std::filesystem::path path_;
};

struct Outcome {
    int status;
    std::string out;
    std::string err;
};

inline fluewright::cli::Environment plain_environment() {
    fluewright::cli::Environment environment;
    environment.variables["LANG"] = "C.UTF-8";
    return environment;
}

inline Outcome run(const std::vector<std::string>& arguments,
                   const std::string& input = "",
                   const fluewright::cli::Environment& environment = plain_environment()) {
    std::istringstream in(input);
    std::ostringstream out;
    std::ostringstream err;
    const int status = fluewright::cli::run(arguments, environment, in, out, err);
    return {status, out.str(), err.str()};
}

/// A text as one line, however it was broken into lines.
inline std::string in_one_line(const std::string& text) {
    std::istringstream words(text);
    std::string line;
    for (std::string word; words >> word;) {
        line += (line.empty() ? "" : " ") + word;
    }
    return line;
}

/// The starting file, which draws.
inline std::string sound_file() {
    return run({"template"}).out;
}

/// The same with one piece of text exchanged.
inline std::string file_with(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    return at == std::string::npos ? std::string{} : text.replace(at, from.size(), to);
}

} // namespace session
