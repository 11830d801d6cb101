#pragma once

#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/catalog/trade_equivalents.hpp"
#include "fluewright/model/run/run.hpp"

namespace fluewright::checking {

/// Whether two areas are one size by the names of two markets: 6 in and 150 mm.
[[nodiscard]] inline bool same_trade_size(double area_m2, double other_m2) {
    return catalog::are_trade_equivalents(circle_diameter_m(area_m2), circle_diameter_m(other_m2));
}

/// Narrower by more than makers' tolerances, and not the other market's name for the same size.
[[nodiscard]] inline bool is_narrower(double area_m2, double other_m2) {
    return is_smaller_size(area_m2, other_m2) && !same_trade_size(area_m2, other_m2);
}

} // namespace fluewright::checking
