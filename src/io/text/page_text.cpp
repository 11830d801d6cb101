#include "page_text.hpp"

#include "fluewright/io/text/text_table.hpp"
#include "markup.hpp"

#include <algorithm>
#include <array>
#include <fmt/core.h>

namespace fluewright {
namespace {

constexpr char markup_line = '\x01';
constexpr char ink_begins = '\x02';
constexpr char ink_ends = '\x03';
constexpr std::size_t preformatted_indent = 6;
constexpr std::size_t inner_indent = 4;
constexpr std::array<std::string_view, 6> ink_classes{
    "", "strong", "good", "warning", "bad", "quiet"};

std::string spanned(const std::string& html, Ink ink) {
    const std::string_view name = ink_class(ink);
    return name.empty() ? html : fmt::format("<span class=\"{}\">{}</span>", name, html);
}

std::string with_inks(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::size_t begin = text.find(ink_begins);
        out += page_words(text.substr(0, begin));
        if (begin == std::string_view::npos) {
            return out;
        }
        const std::size_t end = std::min(text.find(ink_ends, begin), text.size());
        const auto ink = static_cast<Ink>(text[begin + 1] - '0');
        out += spanned(page_words(text.substr(begin + 2, end - begin - 2)), ink);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return out;
}

/// Blanks a line begins with, within its ink or before.
std::size_t indent_of(std::string_view line) {
    const std::size_t skipped = !line.empty() && line.front() == ink_begins ? 2 : 0;
    const std::size_t found = line.find_first_not_of(' ', skipped);
    return found == std::string_view::npos ? 0 : found - skipped;
}

std::string without_indent(std::string_view line) {
    const bool inked = !line.empty() && line.front() == ink_begins;
    const std::string_view sign = line.substr(0, inked ? 2 : 0);
    return std::string{sign} + std::string{line.substr(sign.size() + indent_of(line))};
}

/// What a line belongs to.
enum class Block : std::uint8_t { none, list, preformatted };

std::string_view end_of(Block block) {
    return block == Block::list ? "</ul>\n" : block == Block::preformatted ? "</pre>\n" : "";
}

} // namespace

std::string page_words(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::size_t tick = text.find('`');
        const std::size_t end =
            tick == std::string_view::npos ? std::string_view::npos : text.find('`', tick + 1);
        if (end == std::string_view::npos) {
            return out + markup(text);
        }
        out += markup(text.substr(0, tick));
        out += fmt::format("<code>{}</code>", markup(text.substr(tick + 1, end - tick - 1)));
        text.remove_prefix(end + 1);
    }
    return out;
}

std::string page_line(std::string_view html) {
    return fmt::format("{}{}\n", markup_line, html);
}

std::string page_heading(std::string_view words, int level) {
    return page_line(fmt::format("<h{0}>{1}</h{0}>", level, page_words(words)));
}

std::string page_heading(const InkedHeading& heading, int level) {
    return page_line(fmt::format("<h{0}>{1}{2}{3}</h{0}>",
                                 level,
                                 page_words(heading.before),
                                 spanned(page_words(heading.word), heading.ink),
                                 page_words(heading.after)));
}

std::string page_inked(std::string_view text, Ink ink) {
    return fmt::format("{}{}{}{}", ink_begins, static_cast<int>(ink), text, ink_ends);
}

std::string_view ink_class(Ink ink) {
    return ink_classes[static_cast<std::size_t>(ink)];
}

std::string page_html(std::string_view text) {
    std::string out;
    Block open = Block::none;
    const auto turn_to = [&](Block block) {
        if (open != block) {
            out += end_of(open);
            out += block == Block::list ? "<ul>\n" : block == Block::preformatted ? "<pre>" : "";
            open = block;
        }
    };
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        if (line.empty()) {
            continue;
        }
        if (line.front() == markup_line) {
            turn_to(Block::none);
            out += line.substr(1);
            out += '\n';
            continue;
        }
        const std::size_t indent = indent_of(line);
        if (indent >= preformatted_indent) {
            turn_to(Block::preformatted);
            out += with_inks(line.substr(preformatted_indent)) + '\n';
            continue;
        }
        std::string words = without_indent(line);
        const std::size_t sign = !words.empty() && words.front() == ink_begins ? 2 : 0;
        if (words.compare(sign, 2, "- ") == 0) {
            turn_to(Block::list);
            words.erase(sign, 2);
            out += fmt::format("<li>{}</li>\n", with_inks(words));
        } else {
            turn_to(Block::none);
            out += fmt::format(
                "<p{}>{}</p>\n", indent >= inner_indent ? " class=\"in\"" : "", with_inks(words));
        }
    }
    turn_to(Block::none);
    return out;
}

namespace {

/// A number stays with its unit: "150 mm", "3 ft 4 1/2 in".
std::string with_units_kept(std::string_view text) {
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool kept =
            text[i] == ' ' && i > 0 && i + 1 < text.size() && is_digit(text[i - 1])
            && (is_letter(text[i + 1]) || is_digit(text[i + 1]) || text[i + 1] == '%');
        out += kept ? std::string_view{"\u00a0"} : text.substr(i, 1);
    }
    return out;
}

} // namespace

std::string TextTable::page_table() const {
    const auto cell = [this](std::size_t column, std::string_view tag, const TableCell& of) {
        std::string classes{columns_[column].align == Align::left ? "" : "number"};
        const std::string_view ink = ink_class(of.ink);
        classes += (classes.empty() || ink.empty() ? "" : " ") + std::string{ink};
        return fmt::format("<{}{}>{}</{}>",
                           tag,
                           classes.empty() ? "" : fmt::format(" class=\"{}\"", classes),
                           page_words(with_units_kept(of.text)),
                           tag.substr(0, tag.find(' ')));
    };
    std::string html =
        "<div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"Table\"><table>";
    const bool headed = std::any_of(
        columns_.begin(), columns_.end(), [](const TableColumn& c) { return !c.heading.empty(); });
    if (headed) {
        html += "<thead><tr>";
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            std::string words = columns_[c].heading;
            std::replace(words.begin(), words.end(), '\n', ' ');
            // A column without a heading has cells that speak for themselves.
            html += words.empty() ? "<td></td>" : cell(c, "th scope=\"col\"", {words});
        }
        html += "</tr></thead>";
    }
    html += "<tbody>";
    for (const Row& row : rows_) {
        html += "<tr>";
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            const bool heads = c == 0 && !row.cells[c].text.empty();
            html += cell(c, heads ? "th scope=\"row\"" : "td", row.cells[c]);
        }
        html += "</tr>";
        for (const std::string& note : row.notes) {
            html += fmt::format("<tr><td class=\"note\" colspan=\"{}\">{}</td></tr>",
                                columns_.size(),
                                page_words(note));
        }
    }
    return page_line(html + "</tbody></table></div>");
}

} // namespace fluewright
