#pragma once

#include "outcome.hpp"

namespace published {

/// Computed against published values of one topic as an SVG drawing: logarithmic axes when the
/// published values span more than a factor of 20, and the line on which both agree.
[[nodiscard]] std::string scatter_svg(const std::vector<Outcome>& outcomes);

} // namespace published
