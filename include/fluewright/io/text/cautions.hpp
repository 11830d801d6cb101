#pragma once

#include <span>
#include <string_view>

namespace fluewright {

/// What stands below every report, whatever its outcome.
[[nodiscard]] std::span<const std::string_view> cautions();

} // namespace fluewright
