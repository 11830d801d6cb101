#pragma once

#include "fluewright/model/run/heater_kind.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace fluewright {

/// What stands below every report, whatever its outcome, in the words of a kind of heater; of
/// several kinds, or of none, in words for all.
[[nodiscard]] std::vector<std::string_view> cautions(std::optional<HeaterKind> kind);

/// The same in few words, for the short report.
[[nodiscard]] std::vector<std::string_view> short_cautions(std::optional<HeaterKind> kind);

} // namespace fluewright
