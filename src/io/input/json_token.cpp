#include "json_parser.hpp"

#include <charconv>
#include <cmath>
#include <fmt/core.h>

/// The words of the JSON grammar: strings, numbers, true, false and null.
namespace fluewright::json {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

void append_utf8(std::string& out, unsigned code) {
    const auto put = [&out](unsigned byte) { out += static_cast<char>(byte); };
    if (code < 0x80U) {
        put(code);
    } else if (code < 0x800U) {
        put(0xC0U | (code >> 6U));
        put(0x80U | (code & 0x3FU));
    } else if (code < 0x10000U) {
        put(0xE0U | (code >> 12U));
        put(0x80U | ((code >> 6U) & 0x3FU));
        put(0x80U | (code & 0x3FU));
    } else {
        put(0xF0U | (code >> 18U));
        put(0x80U | ((code >> 12U) & 0x3FU));
        put(0x80U | ((code >> 6U) & 0x3FU));
        put(0x80U | (code & 0x3FU));
    }
}

} // namespace

bool Parser::quoted(std::string_view& out) {
    const auto open = at_++;
    const auto begin = at_;
    std::string* resolved = nullptr;
    bool plain = true;
    while (!at_end() && here() != '"') {
        const char c = here();
        plain = plain && static_cast<unsigned char>(c) < 0x7FU && c != '\\';
        if (static_cast<unsigned char>(c) < 0x20U) {
            return c == '\n' || c == '\r'
                       ? stop(
                           open, "this text has no closing quote in its line", "put \" at its end")
                       : stop(at_, "a control character inside a text", "take it away");
        }
        if (c == '\\') {
            if (resolved == nullptr) {
                resolved =
                    &parsed_.document.resolved_.emplace_back(text_.substr(begin, at_ - begin));
            }
            if (!escape(*resolved)) {
                return false;
            }
        } else {
            if (resolved != nullptr) {
                *resolved += c;
            }
            ++at_;
        }
    }
    if (at_end()) {
        return stop(open, "this text has no closing quote", "put \" at its end");
    }
    out = resolved != nullptr ? std::string_view{*resolved} : text_.substr(begin, at_ - begin);
    // The grammar allows it, a person cannot read it; once is enough.
    if (const auto bad =
            plain || told_unprintable_ ? std::string_view::npos : find_unprintable(out);
        bad != std::string_view::npos) {
        told_unprintable_ = true;
        (void)stop(open,
                   fmt::format("a control character ({}) inside a text", code_of(out, bad)),
                   "take it away; a text is one line of what can be read");
    }
    ++at_;
    return true;
}

bool Parser::escape(std::string& out) {
    constexpr std::string_view letters = "\"\\/bfnrt";
    constexpr std::string_view meanings = "\"\\/\b\f\n\r\t";
    const auto start = at_++;
    const char letter = here();
    if (const auto found = letters.find(letter);
        letter != '\0' && found != std::string_view::npos) {
        out += meanings[found];
        ++at_;
        return true;
    }
    if (letter != 'u') {
        return stop(start,
                    "a backslash that stands for nothing",
                    R"(write \\ for a backslash and \" for a quote or an inch mark)");
    }
    ++at_;
    const auto first = four_hex_digits();
    bool good = first.has_value();
    unsigned code = first.value_or(0U);
    if (good && code >= 0xD800U && code < 0xDC00U && text_.substr(at_, 2) == "\\u") {
        at_ += 2;
        const auto second = four_hex_digits();
        good = second && *second >= 0xDC00U && *second < 0xE000U;
        code = good ? 0x10000U + ((code - 0xD800U) << 10U) + (*second - 0xDC00U) : 0U;
    } else if (code >= 0xD800U && code < 0xE000U) {
        good = false;
    }
    if (!good) {
        return stop(start, "this is not a character code", R"(write \u and four digits 0-9, a-f)");
    }
    append_utf8(out, code);
    return true;
}

std::optional<unsigned> Parser::four_hex_digits() {
    const auto digits = text_.substr(at_, 4);
    unsigned code = 0;
    const auto* last = digits.data() + digits.size();
    const auto result = std::from_chars(digits.data(), last, code, 16);
    if (digits.size() != 4 || result.ptr != last || result.ec != std::errc{}) {
        return std::nullopt;
    }
    at_ += 4;
    return code;
}

bool Parser::number(Node& node) {
    const auto begin = at_;
    at_ += here() == '-' ? 1U : 0U;
    const auto skip_digits = [this] {
        const auto from = at_;
        while (is_digit(here())) {
            ++at_;
        }
        return at_ - from;
    };
    const bool leading_zero = here() == '0' && at_ + 1 < text_.size() && is_digit(text_[at_ + 1]);
    bool good = skip_digits() > 0 && !leading_zero;
    if (good && here() == '.') {
        ++at_;
        good = skip_digits() > 0;
    }
    if (good && (here() == 'e' || here() == 'E')) {
        ++at_;
        at_ += here() == '+' || here() == '-' ? 1U : 0U;
        good = skip_digits() > 0;
    }
    const char after = here();
    if (!good || (after >= 'a' && after <= 'z') || (after >= 'A' && after <= 'Z') || after == '.'
        || after == '%') {
        at_ = begin;
        return stop(begin,
                    fmt::format("{} is not a number", seen()),
                    good ? "write a value and its unit in double quotes, such as \"6 in\""
                         : "write digits with one point between them, such as 0.5");
    }
    const auto result = std::from_chars(text_.data() + begin, text_.data() + at_, node.number);
    if (result.ec != std::errc{} || !std::isfinite(node.number)) {
        return stop(begin, "this number is too large or too small to be worked with");
    }
    node.type = Type::number;
    return true;
}

bool Parser::word(Node& node) {
    struct Known {
        std::string_view name;
        Type type;
        bool truth;
    };

    for (const auto& [name, type, truth] : {Known{"true", Type::boolean, true},
                                            Known{"false", Type::boolean, false},
                                            Known{"null", Type::nothing, false}}) {
        if (text_.substr(at_, name.size()) == name) {
            at_ += name.size();
            node.type = type;
            node.truth = truth;
            return true;
        }
    }
    if (at_end()) {
        return stop(at_, "the file ends where a value is missing");
    }
    const auto found = seen();
    if (found == "`NaN`" || found == "`nan`" || found.find("nfinity") != std::string::npos
        || found.find("inf") != std::string::npos) {
        return stop(at_,
                    fmt::format("{} is not a number", found),
                    "leave the key out where the value is not known");
    }
    return stop(at_,
                fmt::format("a value is missing before {}", found),
                here() == '\'' ? "write texts in double quotes"
                               : "a value is a text in double quotes, true, false or a number");
}

} // namespace fluewright::json
