#pragma once

#include "outcome.hpp"

namespace published {

/// A deviation in the words of its row: per cent, or in its unit.
[[nodiscard]] std::string deviation_of(const Outcome& outcome, double deviation);

/// A deviation without its sign, in the unit of the rows.
[[nodiscard]] std::string size_text(const std::vector<Outcome>& outcomes, double size);

/// Size of a deviation to six digits, so that equal ones are equal on every machine.
[[nodiscard]] double rounded_size(const Outcome& outcome);

/// The value that a share of the sizes, sorted to fall, does not exceed.
[[nodiscard]] double percentile(const std::vector<Outcome>& falling, double share);

struct Spread {
    std::string median;
    std::string most; ///< the 95th percentile
};

/// Of the rows whose tolerance is of the same kind as that of most of them.
[[nodiscard]] Spread spread_of(const std::vector<Outcome>& outcomes);

} // namespace published
