#pragma once

#include "outcome.hpp"

#include <string>
#include <vector>

namespace published {

/// Geometric mean of computed over published for each value of each named input, as tables: a trend
/// left over shows here.
[[nodiscard]] std::string trends_of(const std::vector<Outcome>& outcomes,
                                    const std::vector<std::string>& inputs);

} // namespace published
