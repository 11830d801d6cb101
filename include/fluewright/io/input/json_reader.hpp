#pragma once

#include "fluewright/core/result.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <string_view>

namespace fluewright {

/// The installation, or all that is wrong with the text, sorted by place.
using ReadResult = Result<Installation, Diagnostics>;

/// Reads one installation from JSON text (RFC 8259, UTF-8, comments with // and /* */).
///
/// Limits  16 MB, 32 levels of nesting
/// Notes   Checks all that the file alone can show: grammar, keys, units, ranges, words, names and
///         the order of the parts. Whether enough is given for the physics, resolve() decides; its
///         faults get their places from locate(). Duplicate keys are faults.
[[nodiscard]] ReadResult read_installation(std::string_view text,
                                           std::string_view file = "<input>");

/// Reads a list of pieces at hand: {"stock": [{"length": "1 m", "count": 2}]}.
[[nodiscard]] Result<std::vector<StockPiece>, Diagnostics>
read_stock(std::string_view text, std::string_view file = "<input>");

} // namespace fluewright
