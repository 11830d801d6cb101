#pragma once

#include "fluewright/core/quantity/quantity.hpp"

#include <cstddef>
#include <string>
#include <string_view>

/// How text for people looks. Decided once, where the streams are known, and handed down.
namespace fluewright {

struct Style {
    UnitSystem units{UnitSystem::metric};
    bool color{false};     ///< escape sequences may be written
    bool unicode{true};    ///< otherwise only ASCII is
    std::size_t width{80}; ///< columns no line passes
    /// The text becomes a page: headings are of this level and tables are tables of it; 0: plain
    /// text. See io/text/page_text.hpp.
    int page_level{0};

    [[nodiscard]] bool is_page() const { return page_level > 0; }
};

/// What a stretch of text says by its color. Color is never the only sign of it.
enum class Ink : std::uint8_t { plain, heading, good, warning, bad, quiet };

/// The text between the escape sequences of its ink; the bare text where the style has no color.
[[nodiscard]] std::string inked(std::string_view text, Ink ink, const Style& style);

} // namespace fluewright
