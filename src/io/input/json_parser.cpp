#include "json_parser.hpp"

#include "fluewright/core/same_name.hpp"

#include <algorithm>
#include <cctype>
#include <fmt/core.h>
#include <unordered_set>

namespace fluewright::json {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool belongs_to_word(char c) {
    return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == '.'
           || c == '+' || c == '-' || c == '%' || static_cast<unsigned char>(c) >= 0x80U;
}

} // namespace

Parser::Parser(std::string_view text) : text_{text} {
    parsed_.document.text_ = text;
    parsed_.document.nodes_.reserve(16 + text.size() / 24);
}

Parsed Parser::run() {
    if (text_.size() > greatest_size) {
        stop(0, "the file is larger than 16 MB", "an installation takes a few kilobytes");
        return std::move(parsed_);
    }
    if (const auto bad = find_invalid_utf8(text_); bad != std::string_view::npos) {
        stop(bad, "the text is not UTF-8", "save the file in the encoding UTF-8");
        return std::move(parsed_);
    }
    if (text_.starts_with("\xEF\xBB\xBF")) {
        at_ = 3;
    }
    if (!skip_space()) {
        return std::move(parsed_);
    }
    if (at_end()) {
        stop(at_, "the file is empty", "start with { \"appliance\": { }, \"run\": [ ] }");
        return std::move(parsed_);
    }
    if (value({}, 0) && skip_space()) {
        if (at_end()) {
            parsed_.complete = true;
        } else {
            stop(at_,
                 "there is something after the end of the installation",
                 "one file holds one installation, in one pair of braces");
        }
    }
    return std::move(parsed_);
}

bool Parser::stop(std::size_t offset, std::string message, std::string help) {
    const auto& document = parsed_.document;
    std::string pointer = open_ == no_node ? "" : document.pointer_to(document.at(open_));
    parsed_.troubles.push_back(
        {offset, {std::move(pointer), std::move(message), {}, {}, std::move(help)}});
    return false;
}

bool Parser::begins_curly() const {
    constexpr std::string_view left = "\u201C";
    constexpr std::string_view right = "\u201D";
    const std::string_view rest = text_.substr(std::min(at_, text_.size()));
    return rest.starts_with(left) || rest.starts_with(right);
}

std::string Parser::seen() const {
    if (at_end()) {
        return "the end of the file";
    }
    std::size_t last = at_;
    while (last < text_.size() && belongs_to_word(text_[last])) {
        ++last;
    }
    return '`' + shown(text_.substr(at_, std::max<std::size_t>(last - at_, 1))) + '`';
}

bool Parser::skip_space() {
    while (!at_end()) {
        const char c = here();
        if (c == ' ' || c == '\n' || c == '\r' || c == '\t') {
            ++at_;
        } else if (c != '/') {
            return true;
        } else if (text_.substr(at_, 2) == "//") {
            const auto line_end = text_.find('\n', at_);
            at_ = line_end == std::string_view::npos ? text_.size() : line_end;
        } else if (text_.substr(at_, 2) == "/*") {
            const auto close = text_.find("*/", at_ + 2);
            if (close == std::string_view::npos) {
                return stop(at_, "this comment has no end", "close it with */");
            }
            at_ = close + 2;
        } else {
            return stop(at_, "a single slash has no meaning here", "comments start with // or /*");
        }
    }
    return true;
}

bool Parser::value(const Start& start, int depth) {
    auto& nodes = parsed_.document.nodes_;
    const auto index = static_cast<std::uint32_t>(nodes.size());
    Node node;
    node.parent = start.parent;
    node.place = start.place;
    node.key_begin = start.key_begin;
    node.key = start.key;
    node.begin = static_cast<std::uint32_t>(at_);
    const char c = here();
    bool good = true;
    if (c == '{' || c == '[') {
        if (depth >= greatest_depth) {
            nodes.push_back(node); // the owner links it already
            return stop(at_,
                        fmt::format("nested more than {} levels deep", greatest_depth),
                        "an installation needs five levels");
        }
        node.type = c == '{' ? Type::object : Type::array;
        nodes.push_back(node);
        open_ = index;
        ++at_;
        good = c == '{' ? members(index, depth + 1) : elements(index, depth + 1);
        if (good) {
            open_ = start.parent;
        }
    } else if (c == '"') {
        node.type = Type::string;
        good = quoted(node.text);
        nodes.push_back(node);
    } else {
        good = c == '-' || is_digit(c) ? number(node) : word(node);
        nodes.push_back(node);
    }
    nodes[index].end = static_cast<std::uint32_t>(at_);
    return good;
}

std::optional<std::string> Parser::bare_quantity_help() const {
    const Node& last = parsed_.document.nodes_.back();
    const std::string_view rest = text_.substr(at_);
    const std::size_t end = std::min(rest.find_first_of(",]}\"\r\n"), rest.size());
    constexpr std::size_t longest_unit = 24;
    const std::string_view unit = without_blanks_around(rest.substr(0, end));
    if (last.type != Type::number || unit.empty() || unit.size() > longest_unit
        || std::isalpha(static_cast<unsigned char>(unit.front())) == 0) {
        return std::nullopt;
    }
    const std::string typed{text_.substr(last.begin, last.end - last.begin)};
    return fmt::format("put a value with its unit in quotes: \"{} {}\"", typed, shown(unit));
}

bool Parser::separator(char close, std::uint32_t owner, bool& done) {
    if (!skip_space()) {
        return false;
    }
    if (here() == close) {
        ++at_;
        done = true;
        return true;
    }
    if (at_end()) {
        const auto opened = place_of(text_, parsed_.document.at(owner).begin);
        return stop(
            at_,
            fmt::format("the file ends before `{}`", close),
            fmt::format("close what was opened in line {}, column {}", opened.line, opened.column));
    }
    if (here() != ',') {
        return stop(at_,
                    fmt::format("a comma is missing before {}", seen()),
                    bare_quantity_help().value_or(fmt::format(
                        "put a comma between two values, or `{}` after the last", close)));
    }
    const auto comma = at_++;
    if (!skip_space()) {
        return false;
    }
    if (here() == close) {
        return stop(comma,
                    fmt::format("a comma with nothing between it and `{}`", close),
                    "take the comma away");
    }
    return true;
}

bool Parser::members(std::uint32_t object, int depth) {
    auto& nodes = parsed_.document.nodes_;
    std::uint32_t last = no_node;
    std::uint32_t place = 0;
    std::size_t count = 0;
    std::unordered_set<std::string_view> many; // only filled where looking along gets slow
    constexpr std::size_t few = 48;
    bool done = false;
    if (!skip_space()) {
        return false;
    }
    if (here() == '}') {
        ++at_;
        return true;
    }
    while (!done) {
        if (here() != '"') {
            return stop(at_,
                        fmt::format("a key in double quotes is missing before {}", seen()),
                        begins_curly() ? "a word processor made these quotes curly; type straight "
                                         "ones: \""
                                       : "write \"key\": value");
        }
        const auto key_begin = static_cast<std::uint32_t>(at_);
        std::string_view key;
        if (!quoted(key) || !skip_space()) {
            return false;
        }
        if (here() != ':') {
            return stop(at_,
                        fmt::format("a colon is missing after the key `{}`", shown(key)),
                        fmt::format("write \"{}\": value", shown(key)));
        }
        ++at_;
        if (!skip_space()) {
            return false;
        }
        const auto member = static_cast<std::uint32_t>(nodes.size());
        // Linked before it is read, so that a fault inside it can name its pointer; value() adds
        // the node whatever it finds.
        (last == no_node ? nodes[object].first : nodes[last].next) = member;
        last = member;
        if (!value({.parent = object, .place = place++, .key_begin = key_begin, .key = key},
                   depth)) {
            return false;
        }
        if (++count > few) {
            for (auto i = nodes[object].first; many.empty() && i != member; i = nodes[i].next) {
                many.insert(nodes[i].key);
            }
            if (!many.insert(key).second) {
                note_duplicate(object, member);
            }
        } else {
            for (auto i = nodes[object].first; i != member; i = nodes[i].next) {
                if (nodes[i].key == key) {
                    note_duplicate(object, member);
                    break;
                }
            }
        }
        if (!separator('}', object, done)) {
            return false;
        }
    }
    return true;
}

void Parser::note_duplicate(std::uint32_t object, std::uint32_t member) {
    constexpr std::size_t enough = 30;
    if (parsed_.troubles.size() >= enough) {
        return;
    }
    const auto& document = parsed_.document;
    const Node& second = document.at(member);
    auto i = document.at(object).first;
    while (document.at(i).key != second.key) {
        i = document.at(i).next;
    }
    const auto place = place_of(text_, document.at(i).key_begin);
    const auto key = shown(second.key);
    parsed_.troubles.push_back(
        {second.key_begin,
         {document.pointer_to(second),
          fmt::format("the key `{}` appears twice", key),
          '"' + key + '"',
          {},
          fmt::format("the first is in line {}, column {}; keep the one that is meant",
                      place.line,
                      place.column)}});
}

bool Parser::elements(std::uint32_t array, int depth) {
    auto& nodes = parsed_.document.nodes_;
    std::uint32_t last = no_node;
    std::uint32_t place = 0;
    bool done = false;
    if (!skip_space()) {
        return false;
    }
    if (here() == ']') {
        ++at_;
        return true;
    }
    while (!done) {
        const auto element = static_cast<std::uint32_t>(nodes.size());
        (last == no_node ? nodes[array].first : nodes[last].next) = element;
        last = element;
        if (!value({.parent = array,
                    .place = place++,
                    .key_begin = static_cast<std::uint32_t>(at_),
                    .key = {}},
                   depth)) {
            return false;
        }
        if (!separator(']', array, done)) {
            return false;
        }
    }
    return true;
}

Parsed parse(std::string_view text) {
    return Parser{text}.run();
}

} // namespace fluewright::json
