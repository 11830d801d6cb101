#pragma once

#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// A text for people as part of an HTML page: the same writers, the same words. With
/// Style::page_level set, headings and tables come out as markup on lines of their own, behind a
/// control character that no text of a file can bring in, and everything else as lines of text,
/// which page_html() turns into paragraphs and lists.
namespace fluewright {

/// Columns of a page: lines are broken by whoever shows it.
inline constexpr std::size_t page_width = 1'000'000;

/// A line of markup in such a text. `html` has no line end.
[[nodiscard]] std::string page_line(std::string_view html);

/// "<h3>Size</h3>" as such a line. `level` from 1 to 6.
[[nodiscard]] std::string page_heading(std::string_view words, int level);

/// The same with a word in an ink between others.
struct InkedHeading {
    std::string_view before;
    std::string_view word;
    Ink ink{};
    std::string_view after;
};

[[nodiscard]] std::string page_heading(const InkedHeading& heading, int level);

/// Text with an ink, for inked().
[[nodiscard]] std::string page_inked(std::string_view text, Ink ink);

/// The class of an ink; empty for plain.
[[nodiscard]] std::string_view ink_class(Ink ink);

/// Words as HTML; those between back ticks are code.
[[nodiscard]] std::string page_words(std::string_view text);

/// Text in lines as HTML, well-formed as XML too: a line is a paragraph, one that begins with a
/// dash an entry of a list, one six blanks in or more a line as it stands. Words between back ticks
/// are code.
[[nodiscard]] std::string page_html(std::string_view text);

} // namespace fluewright
