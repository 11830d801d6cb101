#include "fluewright/io/text/style.hpp"

#include "page_text.hpp"

#include <array>

namespace fluewright {

std::string inked(std::string_view text, Ink ink, const Style& style) {
    constexpr std::array<std::string_view, 6> sequences{
        "", "\x1b[1m", "\x1b[32m", "\x1b[33m", "\x1b[1;31m", "\x1b[2m"};
    if (style.is_page()) {
        return page_inked(text, ink);
    }
    const auto sequence = sequences[static_cast<std::size_t>(ink)];
    if (!style.color || sequence.empty() || text.empty()) {
        return std::string{text};
    }
    std::string out{sequence};
    out += text;
    out += "\x1b[0m";
    return out;
}

} // namespace fluewright
