#pragma once

#include <string>
#include <string_view>
#include <vector>

/// How much room text takes in a picture: the one place that knows.
namespace fluewright::chart {

/// The font of every picture: the plain sans serif of the reader's machine.
inline constexpr std::string_view font_family = "sans-serif";

enum class Weight : std::uint8_t { regular, bold };

/// Width of a text [px] at a font size [px]: no less than in any of the fonts measured, so that
/// what is placed by it does not overlap, whichever of them the reader has. Of characters beyond
/// Latin the widest of their block is taken.
/// Measured from the font files as Debian has them: greatest advance width (table hmtx) of DejaVu
/// Sans 2.37, Liberation Sans 1.07 and Lato 2.0, regular and bold.
[[nodiscard]] double
text_width(std::string_view text, double size, Weight weight = Weight::regular);

/// Height of a line over and under its base line, over the font size: the greatest of the same
/// fonts.
inline constexpr double ascent_share = 0.93;
inline constexpr double descent_share = 0.24;

/// The lines of a text broken between words so that none is wider [px]; a longer word is cut. What
/// does not show comes out escaped. At least one line.
[[nodiscard]] std::vector<std::string>
wrap_to(std::string_view text, double width, double size, Weight weight = Weight::regular);

/// The text, or as much of it as the width [px] takes, ended by dots.
[[nodiscard]] std::string
fitted(std::string_view text, double width, double size, Weight weight = Weight::regular);

} // namespace fluewright::chart
