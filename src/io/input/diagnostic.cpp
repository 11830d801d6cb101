#include "fluewright/io/input/diagnostic.hpp"

#include "json_document.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {

namespace {

constexpr std::size_t most_shown = 20;

void append_line(std::string& out, std::string_view label, std::string_view text) {
    if (!text.empty()) {
        out += fmt::format("  {:<7} {}\n", label, json::visible(text));
    }
}

} // namespace

std::string diagnostics_text(const Diagnostics& diagnostics) {
    std::string out;
    const auto count = diagnostics.size();
    for (std::size_t i = 0; i < std::min(count, most_shown); ++i) {
        const auto& [file, line, column, fault] = diagnostics[i];
        out += fmt::format("{}:{}:{}: error: {}\n",
                           json::visible(file),
                           line,
                           column,
                           json::visible(fault.message));
        append_line(out, "at", fault.pointer);
        append_line(out, "found", fault.found);
        append_line(out, "allowed", fault.allowed);
        append_line(out, "help", fault.help);
        out += '\n';
    }
    if (count > most_shown) {
        out += fmt::format("and {} more\n", count - most_shown);
    }
    out += fmt::format("{} {}; nothing was computed\n", count, count == 1 ? "error" : "errors");
    return out;
}

} // namespace fluewright
