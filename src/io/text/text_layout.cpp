#include "fluewright/io/text/text_layout.hpp"

#include "io/input/json_document.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace fluewright {
namespace {

bool continues_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

/// Bytes of the first `columns` characters.
std::size_t bytes_of(std::string_view text, std::size_t columns) {
    std::size_t at = 0;
    while (at < text.size() && columns > 0) {
        ++at;
        while (at < text.size() && continues_character(text[at])) {
            ++at;
        }
        --columns;
    }
    return at;
}

using Spelling = std::pair<std::string_view, std::string_view>;

constexpr std::array spellings{
    Spelling{"±", "+-"},   Spelling{"°", "deg"},  Spelling{"′", "'"},    Spelling{"″", "\""},
    Spelling{"½", " 1/2"}, Spelling{"¼", " 1/4"}, Spelling{"¾", " 3/4"}, Spelling{"×", "x"},
    Spelling{"–", "-"},    Spelling{"—", "-"},    Spelling{"‘", "'"},    Spelling{"’", "'"},
    Spelling{"“", "\""},   Spelling{"”", "\""},   Spelling{"…", "..."},  Spelling{"²", "2"},
    Spelling{"³", "3"},    Spelling{"µ", "u"},    Spelling{"·", "."},    Spelling{"ä", "a"},
    Spelling{"ö", "o"},    Spelling{"ü", "u"},    Spelling{"Ä", "A"},    Spelling{"Ö", "O"},
    Spelling{"Ü", "U"},    Spelling{"ß", "ss"},   Spelling{"á", "a"},    Spelling{"à", "a"},
    Spelling{"â", "a"},    Spelling{"å", "a"},    Spelling{"Å", "A"},    Spelling{"æ", "ae"},
    Spelling{"ç", "c"},    Spelling{"é", "e"},    Spelling{"è", "e"},    Spelling{"ê", "e"},
    Spelling{"í", "i"},    Spelling{"ñ", "n"},    Spelling{"ó", "o"},    Spelling{"ô", "o"},
    Spelling{"ø", "o"},    Spelling{"Ø", "O"},    Spelling{"ú", "u"},    Spelling{"É", "E"},
};

} // namespace

std::size_t shown_width(std::string_view text) {
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return !continues_character(c); }));
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
    const std::string clean = json::visible(text);
    std::vector<std::string> lines{""};
    std::size_t taken = 0;
    std::string_view left = clean;
    while (!left.empty()) {
        const std::size_t blank = left.find(' ');
        std::string_view word = left.substr(0, blank);
        left = blank == std::string_view::npos ? std::string_view{} : left.substr(blank + 1);
        if (word.empty()) {
            continue;
        }
        std::size_t columns = shown_width(word);
        if (taken > 0 && taken + 1 + columns > width) {
            lines.emplace_back();
            taken = 0;
        }
        while (columns > width) {
            const std::size_t cut = bytes_of(word, width);
            lines.back() = word.substr(0, cut);
            lines.emplace_back();
            word.remove_prefix(cut);
            columns -= width;
        }
        if (taken > 0) {
            lines.back() += ' ';
            ++taken;
        }
        lines.back() += word;
        taken += columns;
    }
    return lines;
}

std::string paragraph(std::string_view text, Indent indent, std::size_t width) {
    // The first line may have another indent than the rest, so it is broken on its own.
    const std::size_t narrow = width - std::max(indent.first, indent.rest);
    std::string out;
    std::size_t blanks = indent.first;
    for (const std::string& line : wrap(text, narrow)) {
        if (!line.empty()) {
            out.append(blanks, ' ');
        }
        out += line;
        out += '\n';
        blanks = indent.rest;
    }
    return out;
}

std::string in_plain_letters(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        if (static_cast<unsigned char>(text.front()) < 0x80U) {
            out += text.front();
            text.remove_prefix(1);
            continue;
        }
        const std::size_t size = bytes_of(text, 1);
        const std::string_view sign = text.substr(0, size);
        const auto* found =
            std::find_if(spellings.begin(), spellings.end(), [&](const Spelling& spelling) {
                return spelling.first == sign;
            });
        out += found == spellings.end() ? "?" : found->second;
        text.remove_prefix(size);
    }
    return out;
}

} // namespace fluewright
