#pragma once

#include <optional>
#include <string_view>

namespace fluewright {

/// The rise of a roof that is told over 12 in of run, as its carpenter tells it: 7 of "7/12",
/// "7:12", "7 in 12", "7-in-12", "7 in 12 in" or "7 on 12". Empty for any other text.
[[nodiscard]] std::optional<double> rise_in_twelve(std::string_view text);

} // namespace fluewright
