#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Words into lines.
namespace fluewright {

/// Columns a text takes on a terminal, counted in characters of UTF-8.
[[nodiscard]] std::size_t shown_width(std::string_view text);

/// The lines of a text broken between words at `width` columns; a longer word is cut. Control
/// characters come out escaped, so that a title cannot steer the terminal. At least one line.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t width);

struct Indent {
    std::size_t first; ///< of the first line
    std::size_t rest;  ///< of those after it
};

inline constexpr Indent flush_left{.first = 0, .rest = 0};
/// An entry of a list under a heading.
inline constexpr Indent hung_in{.first = 2, .rest = 4};

/// A wrapped text with its indent, each line ended.
[[nodiscard]] std::string paragraph(std::string_view text, Indent indent, std::size_t width);

/// The text in ASCII, for terminals of another encoding: signs the trade uses are spelled ("+-",
/// "1/2", "deg"), accents fall, and what is left becomes '?'.
[[nodiscard]] std::string in_plain_letters(std::string_view text);

} // namespace fluewright
