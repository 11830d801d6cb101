#include "json_text.hpp"

#include "io/input/json_document.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <fmt/core.h>

namespace fluewright::json {
namespace {

/// Length of the UTF-8 sequence at the beginning of the text; 0 where it is none.
std::size_t sequence_length(std::string_view text) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const auto tail = [&](std::size_t i, unsigned low = 0x80, unsigned high = 0xBF) {
        return i < text.size() && byte(i) >= low && byte(i) <= high;
    };
    const unsigned lead = byte(0);
    if (lead < 0x80) {
        return 1;
    }
    if (lead >= 0xC2 && lead <= 0xDF) {
        return tail(1) ? 2 : 0;
    }
    if (lead >= 0xE0 && lead <= 0xEF) {
        const unsigned low = lead == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = lead == 0xED ? 0x9F : 0xBF;
        return tail(1, low, high) && tail(2) ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const unsigned low = lead == 0xF0 ? 0x90 : 0x80;
        const unsigned high = lead == 0xF4 ? 0x8F : 0xBF;
        return tail(1, low, high) && tail(2) && tail(3) ? 4 : 0;
    }
    return 0;
}

void append_escaped(char c, std::string& out) {
    constexpr std::string_view plain = "\"\\bfnrt";
    constexpr std::string_view meant = "\"\\\b\f\n\r\t";
    if (const auto at = meant.find(c); at != std::string_view::npos) {
        out += '\\';
        out += plain[at];
    } else {
        out += fmt::format("\\u{:04x}", static_cast<unsigned>(static_cast<unsigned char>(c)));
    }
}

/// A character by its code, of two units where one does not hold it (RFC 8259, 7).
void append_code(std::string_view character, std::string& out) {
    const std::string digits = code_of(character, 0).substr(2);
    unsigned code = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), code, 16);
    constexpr unsigned beyond_one_unit = 0x10000U;
    if (code < beyond_one_unit) {
        out += fmt::format("\\u{:04x}", code);
        return;
    }
    const unsigned rest = code - beyond_one_unit;
    out += fmt::format("\\u{:04x}\\u{:04x}", 0xD800U + (rest >> 10U), 0xDC00U + (rest & 0x3FFU));
}

void append_quoted(std::string_view text, std::string& out) {
    out += '"';
    while (!text.empty()) {
        const std::size_t length = sequence_length(text);
        const char c = text.front();
        if (length == 0) {
            out += "\xEF\xBF\xBD";
        } else if (length == 1 && (c == '"' || c == '\\' || (c >= 0 && c < ' '))) {
            append_escaped(c, out);
        } else if ((length > 1 || c == 0x7F) && find_unprintable(text.substr(0, length)) == 0) {
            // Whoever reads the answer as it stands is not misled.
            append_code(text.substr(0, length), out);
        } else {
            out += text.substr(0, length);
        }
        text.remove_prefix(std::max<std::size_t>(length, 1));
    }
    out += '"';
}

/// Writes values one behind the other; `step` < 0: all on one line.
class Writer {
public:
    explicit Writer(int step) : step_(step) {}

    void write(const Value& value, int depth) {
        if (value.is_object()) {
            write_members(value.members(), depth);
        } else if (value.is_list()) {
            write_list(value.list(), depth);
        } else if (value.is_text()) {
            append_quoted(value.text(), out);
        } else if (const bool* truth = value.truth()) {
            out += *truth ? "true" : "false";
        } else if (const std::int64_t* whole = value.whole()) {
            out += fmt::format("{}", *whole);
        } else if (const auto number = value.number()) {
            out += number_text(*number);
        } else {
            out += "null";
        }
    }

    std::string out;

private:
    void begin_line(int depth) {
        if (step_ >= 0) {
            out += '\n';
            out.append(static_cast<std::size_t>(depth) * static_cast<std::size_t>(step_), ' ');
        }
    }

    void write_members(const Value::Members& members, int depth) {
        if (members.empty()) {
            out += "{}";
            return;
        }
        char before = '{';
        for (const Member& member : members) {
            out += before;
            before = ',';
            begin_line(depth + 1);
            append_quoted(member.key, out);
            out += step_ >= 0 ? ": " : ":";
            write(member.value, depth + 1);
        }
        begin_line(depth);
        out += '}';
    }

    void write_list(const Value::List& list, int depth) {
        if (list.empty()) {
            out += "[]";
            return;
        }
        char before = '[';
        for (const Value& entry : list) {
            out += before;
            before = ',';
            begin_line(depth + 1);
            write(entry, depth + 1);
        }
        begin_line(depth);
        out += ']';
    }

    int step_;
};

Value value_of_node(const Document& document, const Node& node) {
    switch (node.type) {
    case Type::boolean:
        return node.truth;
    case Type::number: {
        const std::string_view typed = document.typed(node);
        std::int64_t whole = 0;
        const auto read = std::from_chars(typed.data(), typed.data() + typed.size(), whole);
        const bool is_whole = read.ec == std::errc{} && read.ptr == typed.data() + typed.size();
        return is_whole ? Value(whole) : Value(node.number);
    }
    case Type::string:
        return node.text;
    case Type::array:
    case Type::object:
        break;
    case Type::nothing:
        return {};
    }
    Value made = node.type == Type::array ? Value::array() : Value::object();
    for (std::uint32_t at = node.first; at != no_node; at = document.at(at).next) {
        const Node& child = document.at(at);
        if (node.type == Type::array) {
            made.push_back(value_of_node(document, child));
        } else {
            made[child.key] = value_of_node(document, child);
        }
    }
    return made;
}

} // namespace

Value value_of(std::string_view text) {
    const Parsed parsed = parse(text);
    return parsed.complete ? value_of_node(parsed.document, parsed.document.root()) : Value();
}

Value::Value(std::initializer_list<Member> members) : held_(Members(members)) {}

Value Value::array() {
    Value value;
    value.held_ = List{};
    return value;
}

Value Value::object() {
    Value value;
    value.held_ = Members{};
    return value;
}

void Value::push_back(Value entry) {
    if (is_null()) {
        held_ = List{};
    }
    std::get<List>(held_).push_back(std::move(entry));
}

void Value::add(std::string key, Value value) {
    std::get<Members>(held_).push_back({std::move(key), std::move(value)});
}

Value& Value::operator[](std::string_view key) {
    if (is_null()) {
        held_ = Members{};
    }
    auto& members = std::get<Members>(held_);
    const auto found = std::find_if(
        members.begin(), members.end(), [key](const Member& each) { return each.key == key; });
    if (found != members.end()) {
        return found->value;
    }
    members.push_back({std::string{key}, Value{}});
    return members.back().value;
}

std::optional<double> Value::number() const {
    if (const auto* number = std::get_if<double>(&held_)) {
        return *number;
    }
    if (const auto* whole_number = std::get_if<std::int64_t>(&held_)) {
        return static_cast<double>(*whole_number);
    }
    return {};
}

std::string number_text(double value) {
    // From 1e-4 up to 1e15 without an exponent, as the format of this file has been from its start.
    constexpr int least_plain = -4;
    constexpr int most_plain = 15;
    constexpr std::size_t longest = 32;
    std::array<char, longest> buffer{};
    const auto end =
        std::to_chars(
            buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific)
            .ptr;
    std::string_view text(buffer.data(), static_cast<std::size_t>(end - buffer.data()));
    std::string out;
    if (text.front() == '-') {
        out += '-';
        text.remove_prefix(1);
    }
    const std::size_t e = text.find('e');
    std::string digits{text.substr(0, 1)};
    if (e > 1) {
        digits += text.substr(2, e - 2);
    }
    std::string_view exponent_text = text.substr(e + 1);
    exponent_text.remove_prefix(exponent_text.front() == '+' ? 1 : 0);
    int exponent = 0;
    std::from_chars(exponent_text.data(), exponent_text.data() + exponent_text.size(), exponent);
    // digits stand for 0.DIGITS x 10^point
    const int point = exponent + 1;
    const int count = static_cast<int>(digits.size());
    if (value == 0.0) {
        return out + "0.0";
    }
    if (point >= count && point <= most_plain) {
        return out + digits + std::string(static_cast<std::size_t>(point - count), '0') + ".0";
    }
    if (point > 0 && point <= most_plain) {
        digits.insert(static_cast<std::size_t>(point), 1, '.');
        return out + digits;
    }
    if (point > least_plain && point <= 0) {
        return out + "0." + std::string(static_cast<std::size_t>(-point), '0') + digits;
    }
    if (count > 1) {
        digits.insert(1, 1, '.');
    }
    return out + fmt::format("{}e{}{:02}", digits, exponent < 0 ? '-' : '+', std::abs(exponent));
}

std::string quoted(std::string_view text) {
    std::string out;
    append_quoted(text, out);
    return out;
}

std::string compact_text(const Value& value) {
    Writer writer(-1);
    writer.write(value, 0);
    return std::move(writer.out);
}

std::string indented_text(const Value& value, int step) {
    Writer writer(step);
    writer.write(value, 0);
    return std::move(writer.out);
}

} // namespace fluewright::json
