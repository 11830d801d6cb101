#pragma once

#include <span>
#include <string_view>

namespace fluewright {

/// What stands below every report, whatever its outcome.
[[nodiscard]] std::span<const std::string_view> cautions();

/// The same in few words, for the short report.
[[nodiscard]] std::span<const std::string_view> short_cautions();

} // namespace fluewright
