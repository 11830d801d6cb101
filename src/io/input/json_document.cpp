#include "json_document.hpp"

#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <cstring>
#include <fmt/core.h>

namespace fluewright::json {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool continues_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

/// Bytes of the character that starts at `at`, or 0 where none does (RFC 3629, table of section 4).
std::size_t character_length(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) {
        return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
    };
    const auto tail = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned first = byte(0);
    if (first < 0x80U) {
        return 1;
    }
    if (first >= 0xC2U && first <= 0xDFU) {
        return tail(1) ? 2 : 0;
    }
    if (first >= 0xE0U && first <= 0xEFU) {
        const bool overlong = first == 0xE0U && byte(1) < 0xA0U;
        const bool surrogate = first == 0xEDU && byte(1) > 0x9FU;
        return tail(1) && tail(2) && !overlong && !surrogate ? 3 : 0;
    }
    if (first >= 0xF0U && first <= 0xF4U) {
        const bool overlong = first == 0xF0U && byte(1) < 0x90U;
        const bool beyond = first == 0xF4U && byte(1) > 0x8FU;
        return tail(1) && tail(2) && tail(3) && !overlong && !beyond ? 4 : 0;
    }
    return 0;
}

} // namespace

std::string Document::pointer_to(const Node& node) const {
    if (node.parent == no_node) {
        return {};
    }
    const Node& parent = at(node.parent);
    std::string pointer = pointer_to(parent);
    pointer += '/';
    if (parent.type == Type::object) {
        const bool long_key = node.key.size() > longest_text; // a fault, and nobody follows it
        return pointer += pointer_step(long_key ? shown(node.key) : std::string{node.key});
    }
    return pointer += std::to_string(node.place);
}

std::size_t Document::child_count(const Node& node) const {
    std::size_t count = 0;
    for (auto i = node.first; i != no_node; i = at(i).next) {
        ++count;
    }
    return count;
}

const Node& Document::nearest_to(std::string_view pointer, bool& exact) const {
    const Node* node = &root();
    exact = true;
    while (!pointer.empty()) {
        pointer.remove_prefix(1);
        const auto step = pointer.substr(0, pointer.find('/'));
        pointer.remove_prefix(step.size());
        const Node* found = nullptr;
        std::uint32_t wanted = no_node;
        if (node->type == Type::array) {
            std::from_chars(step.data(), step.data() + step.size(), wanted);
        }
        for (auto i = node->first; i != no_node && found == nullptr; i = at(i).next) {
            const bool here = node->type == Type::object ? pointer_step(at(i).key) == step
                                                         : at(i).place == wanted;
            found = here ? &at(i) : nullptr;
        }
        if (found == nullptr) {
            exact = false;
            break;
        }
        node = found;
    }
    return *node;
}

Place place_of(std::string_view text, std::size_t offset) {
    std::size_t start = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
    offset = std::clamp(offset, start, text.size());
    Place place{1, 1};
    for (std::size_t i = start; i < offset; ++i) {
        if (text[i] == '\n') {
            ++place.line;
            start = i + 1;
        }
    }
    for (std::size_t i = start; i < offset; ++i) {
        place.column += continues_character(text[i]) ? 0 : 1;
    }
    return place;
}

std::size_t find_invalid_utf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        // Most files are plain ASCII: eight characters at once.
        std::uint64_t eight = 0;
        constexpr std::uint64_t not_ascii = 0x8080808080808080U;
        while (i + sizeof eight <= text.size()) {
            std::memcpy(&eight, text.data() + i, sizeof eight);
            if ((eight & not_ascii) != 0) {
                break;
            }
            i += sizeof eight;
        }
        if (i == text.size()) {
            break;
        }
        const auto length = character_length(text, i);
        if (length == 0) {
            return i;
        }
        i += length;
    }
    return std::string_view::npos;
}

namespace {

/// The code of a whole character of UTF-8.
unsigned decoded(std::string_view character) {
    const auto first = static_cast<unsigned char>(character.front());
    constexpr std::array<unsigned, 5> masks{0, 0x7FU, 0x1FU, 0x0FU, 0x07U};
    unsigned code = first & masks[character.size()];
    for (const char c : character.substr(1)) {
        code = code << 6U | (static_cast<unsigned char>(c) & 0x3FU);
    }
    return code;
}

bool is_unprintable(unsigned code) {
    const auto within = [code](unsigned first, unsigned last) {
        return code >= first && code <= last;
    };
    return code < 0x20U || within(0x7FU, 0x9FU) || code == 0x061CU || within(0x200EU, 0x200FU)
           || within(0x2028U, 0x202EU) || within(0x2066U, 0x2069U) || code == 0xFEFFU
           || within(0xFDD0U, 0xFDEFU) || (code & 0xFFFEU) == 0xFFFEU;
}

} // namespace

std::size_t find_unprintable(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t length = character_length(text, i);
        if (length == 0 || is_unprintable(decoded(text.substr(i, length)))) {
            return i;
        }
        i += length;
    }
    return std::string_view::npos;
}

std::string code_of(std::string_view text, std::size_t at) {
    return fmt::format("U+{:04X}", decoded(text.substr(at, character_length(text, at))));
}

std::string visible(std::string_view text) {
    std::string out;
    std::size_t length = 0;
    for (std::size_t i = 0; i < text.size(); i += length) {
        const auto byte = static_cast<unsigned char>(text[i]);
        length = character_length(text, i);
        if (byte == '\n' || byte == '\r' || byte == '\t') {
            out += ' ';
        } else if (length == 0) {
            out += fmt::format("\\x{:02x}", byte);
            length = 1;
        } else if (const unsigned code = decoded(text.substr(i, length)); is_unprintable(code)) {
            out += fmt::format("\\u{:04x}", code);
        } else {
            out += text.substr(i, length);
        }
    }
    return out;
}

std::string shown(std::string_view text, std::size_t longest) {
    if (text.size() <= longest) {
        return visible(text);
    }
    // A character has no more bytes than this behind its first; where more follow, they are none.
    constexpr std::size_t most_behind = 3;
    std::size_t end = longest;
    while (end > 0 && longest - end < most_behind && continues_character(text[end])) {
        --end;
    }
    return visible(text.substr(0, end)) + " ...";
}

} // namespace fluewright::json
