#pragma once

#include <string>
#include <string_view>

namespace fluewright {

/// A field of RFC 4180: in quotation marks where it holds a comma, a quotation mark or a line end.
/// A text that a table program would take for a formula, since it begins with = + - or @ and is no
/// number, gets an apostrophe before it, as those programs have it (common practice, no source).
[[nodiscard]] std::string csv_field(std::string_view text);

} // namespace fluewright
