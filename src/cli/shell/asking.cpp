#include "asking.hpp"

#include "fluewright/io/text/text_layout.hpp"
#include "io/input/json_document.hpp"

#include <iostream>

namespace fluewright::cli {
namespace {

/// No answer is so long; what comes behind it is left out.
constexpr std::size_t most_answer_bytes = 1000;

/// Where a line goes on so far without an end, nobody sits behind it.
constexpr std::size_t most_line_bytes = 1U << 20U;

/// The next line, of which no more than an answer is kept. False where there is none.
bool read_line(std::istream& in, std::string& line) {
    line.clear();
    std::size_t bytes = 0;
    for (char c = 0; in.get(c); ++bytes) {
        if (c == '\n') {
            return true;
        }
        if (bytes >= most_line_bytes) {
            return false;
        }
        if (line.size() < most_answer_bytes) {
            line += c;
        }
    }
    return bytes > 0 && in.eof();
}

} // namespace

std::optional<std::string>
read_answer(const Context& context, std::string_view question, const Style& style) {
    std::ostream& out = context.streams.out;
    out << paragraph(question, {.first = 0, .rest = 2}, style.width) << "> " << std::flush;
    std::string line;
    if (!read_line(context.streams.in, line)) {
        out << '\n';
        return std::nullopt;
    }
    if (!context.environment.input_is_terminal) {
        out << json::visible(line) << '\n';
    }
    return line;
}

void tell_misfit(const Context& context, std::string_view why, const Style& style) {
    context.streams.out << paragraph(why, {.first = 0, .rest = 0}, style.width);
}

std::string plain_answer(std::string_view line) {
    std::string text;
    for (const char c : line) {
        text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    const std::size_t first = text.find_first_not_of(" \t\r");
    const std::size_t last = text.find_last_not_of(" \t\r.");
    return first == std::string::npos || last == std::string::npos || last < first
               ? std::string{}
               : text.substr(first, last - first + 1);
}

bool is_unknown_answer(std::string_view plain) {
    return plain.empty() || plain == "?" || plain == "don't know" || plain == "dont know"
           || plain == "do not know" || plain == "unknown" || plain == "dunno" || plain == "no idea"
           || plain == "not sure" || plain == "skip";
}

bool is_stop_answer(std::string_view plain) {
    return plain == "stop" || plain == "quit" || plain == "q";
}

} // namespace fluewright::cli
