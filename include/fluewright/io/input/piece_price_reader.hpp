#pragma once

#include "fluewright/advice/parts/piece_prices.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/input/diagnostic.hpp"

#include <string_view>

namespace fluewright {

/// The user's prices of pipe and parts: {"currency": "...", "prices": [{"wall": "single-wall
/// steel", "diameter": "150 mm", "length": "1 m", "each": 21.5}, {"wall": "single-wall steel",
/// "per_metre": 19}, {"what": "wall thimble", "each": 60}]}. "per_foot" may stand for "per_metre".
/// `telescopes` tells a length that slides from one that does not. An entry whose price is null has
/// none. Comments are allowed.
[[nodiscard]] Result<PiecePrices, Diagnostics> read_piece_prices(std::string_view text,
                                                                 std::string_view file);

} // namespace fluewright
