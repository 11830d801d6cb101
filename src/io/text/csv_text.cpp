#include "csv_text.hpp"

#include <charconv>

namespace fluewright {
namespace {

bool is_number(std::string_view text) {
    double value = 0.0;
    text.remove_prefix(text.starts_with('+') ? 1U : 0U);
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size();
}

} // namespace

std::string csv_field(std::string_view text) {
    const bool would_be_computed =
        !text.empty() && std::string_view{"=+-@\t"}.find(text.front()) != std::string_view::npos
        && !is_number(text);
    if (!would_be_computed && text.find_first_of("\",\n\r") == std::string_view::npos) {
        return std::string{text};
    }
    std::string out = would_be_computed ? "\"'" : "\"";
    for (const char c : text) {
        out += c == '"' ? "\"\"" : std::string{c};
    }
    return out + '"';
}

} // namespace fluewright
