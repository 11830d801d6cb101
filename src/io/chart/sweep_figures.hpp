#pragma once

#include "fluewright/advice/score.hpp"

namespace fluewright {

/// Least draft less the draft needed of all states with the door shut [Pa]; not a number where one
/// has no working point.
[[nodiscard]] double least_margin_pa(const Score& score);

} // namespace fluewright
