#include "csv_text.hpp"

namespace fluewright {

std::string csv_field(std::string_view text) {
    if (text.find_first_of("\",\n\r") == std::string_view::npos) {
        return std::string{text};
    }
    std::string out = "\"";
    for (const char c : text) {
        out += c == '"' ? "\"\"" : std::string{c};
    }
    return out + '"';
}

} // namespace fluewright
