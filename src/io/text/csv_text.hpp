#pragma once

#include <string>
#include <string_view>

namespace fluewright {

/// A field of RFC 4180: in quotation marks where it holds a comma, a quotation mark or a line end.
[[nodiscard]] std::string csv_field(std::string_view text);

} // namespace fluewright
