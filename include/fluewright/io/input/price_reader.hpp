#pragma once

#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/input/diagnostic.hpp"

#include <string_view>

namespace fluewright {

/// The user's prices: {"currency": "EUR", "prices": {"sweep": 90, "raise-top": {"fixed": 150,
/// "per_metre": 120}}}. A bare number is the fixed price; "per_foot" may stand for "per_metre".
/// Names are those of the remedies; comments are allowed.
[[nodiscard]] Result<PriceList, Diagnostics> read_prices(std::string_view text,
                                                         std::string_view file);

} // namespace fluewright
