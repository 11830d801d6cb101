#include "commented_file.hpp"

#include "fluewright/io/reference/explain.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <fmt/core.h>

namespace fluewright {

std::string with_meanings(std::string_view skeleton) {
    constexpr std::size_t width = 80;
    constexpr std::string_view slashes = "// ";
    std::string out;
    while (!skeleton.empty()) {
        const std::size_t end = skeleton.find('\n');
        std::string_view line = skeleton.substr(0, end);
        skeleton.remove_prefix(end + 1);
        if (const std::size_t at = line.find(" @/"); at != std::string_view::npos) {
            const std::size_t indent = line.find_first_not_of(' ');
            const std::string_view meaning = meaning_of_key(line.substr(at + 2));
            for (const std::string& words : wrap(meaning, width - indent - slashes.size())) {
                out += fmt::format("{:{}}{}{}\n", "", indent, slashes, words);
            }
            line = line.substr(0, at);
        }
        out += fmt::format("{}\n", line);
    }
    return out;
}

} // namespace fluewright
