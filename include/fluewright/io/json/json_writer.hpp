#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <string>
#include <string_view>

namespace fluewright {

/// An installation in the format of the input file: what read_installation() reads as the same
/// installation, to the last bit of every value. Keys stand in the order of the field tables, an
/// object or list stands on one line where it fits. Quantities are in US units where the
/// installation asks for them or its file used them most, and a short text exists.
[[nodiscard]] std::string write_installation(const Installation& installation);

/// The same, with every quantity that stands in `text`, the file it was made from, written as it is
/// written there: "150 mm" stays "150 mm". Of two texts for one value that at the same place
/// counts.
[[nodiscard]] std::string write_installation_like(const Installation& installation,
                                                  std::string_view text);

/// The same on a single line, for a stream of one installation a line.
[[nodiscard]] std::string write_installation_line(const Installation& installation);

/// One entry of its "observed" list, on one line.
[[nodiscard]] std::string write_observation(const Observation& seen, UnitSystem units);

/// The key "observed" with its whole list, to be put into a file by hand.
[[nodiscard]] std::string write_observed(const Installation& installation);

} // namespace fluewright
