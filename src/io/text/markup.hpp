#pragma once

#include <string>
#include <string_view>

/// Text of a file as text of a picture or a page.
namespace fluewright {

/// The text with the signs of markup spelled out, for content and quoted attributes of XML and
/// HTML. What does not show, steers how other text shows, or is no character comes out escaped as
/// everywhere else, so that the result is well-formed whatever a title holds.
[[nodiscard]] std::string markup(std::string_view text);

} // namespace fluewright
