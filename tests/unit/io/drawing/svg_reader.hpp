#pragma once

#include "io/drawing/placing.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What a test reads out of a finished picture, with no help from the code that drew it but the
/// widths of letters.
namespace fluewright::picture {

/// What is wrong with a text as XML: an open tag, an attribute without quotation marks, a bare
/// ampersand, a character that XML does not know. Empty where nothing is.
[[nodiscard]] std::string fault_of_xml(std::string_view text);

struct SetText {
    drawing::Box box;
    std::string words;
};

struct Svg {
    double width{};
    double height{};
    std::vector<SetText> texts;
};

/// Canvas and every <text> with the room it takes.
[[nodiscard]] Svg read_svg(std::string_view text);

/// The first two texts that overlap or one that leaves the canvas, in words; empty for none.
[[nodiscard]] std::string crowded(const Svg& svg);

} // namespace fluewright::picture
