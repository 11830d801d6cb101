#include "visible_stream.hpp"

#include "io/input/json_document.hpp"

#include <ostream>
#include <string_view>

namespace fluewright::cli {
namespace {

constexpr std::size_t longest_line = 2000;

} // namespace

VisibleLines::~VisibleLines() {
    pass_on();
}

VisibleLines::int_type VisibleLines::overflow(int_type c) {
    if (!traits_type::eq_int_type(c, traits_type::eof())) {
        const char one = traits_type::to_char_type(c);
        xsputn(&one, 1);
    }
    return traits_type::not_eof(c);
}

std::streamsize VisibleLines::xsputn(const char* text, std::streamsize count) {
    for (const char c : std::string_view{text, static_cast<std::size_t>(count)}) {
        if (c == '\n') {
            pass_on();
            *out_ << '\n';
        } else if (line_.size() <= longest_line) {
            line_ += c; // one more than is shown, so that a longer line is known
        }
    }
    return count;
}

int VisibleLines::sync() {
    pass_on();
    out_->flush();
    return 0;
}

void VisibleLines::pass_on() {
    *out_ << json::shown(line_, longest_line);
    line_.clear();
}

} // namespace fluewright::cli
