#pragma once

#include "cli/shell/run.hpp"

#include <sstream>
#include <string>
#include <vector>

/// One call of the program in this process.
namespace session {

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
