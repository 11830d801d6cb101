#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/core/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace fluewright {

/// Several values of a quantity as one text, in SI and in the order written.
///
/// Forms    "-20..15 degC:8"  eight values at equal distances, both ends among them
///          "3..8m"           five of them
///          "3 m, 4 m, 6 m"   these; "3,4,6 m" too
///          "4 m"             one
/// Notes    A number without a unit takes the unit at the end. At most 1000 values.
/// Failure  a sentence that stands alone, without its full stop
[[nodiscard]] Result<std::vector<double>, std::string> parse_range(std::string_view text,
                                                                   Kind kind);

/// A value in whichever accepted unit takes the shortest text, rounded to twelve digits; what
/// write_quantity() gives where nothing is shorter. The value must be finite.
[[nodiscard]] std::string shortest_to_twelve_digits(double si, Kind kind);

} // namespace fluewright
