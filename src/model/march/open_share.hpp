#pragma once

#include "fluewright/model/run/case.hpp"

#include <algorithm>

namespace fluewright {

/// Whether it is the gate of a draft regulator.
[[nodiscard]] inline bool has_gate(const Section& section) {
    return section.opens_over_pa > 0.0;
}

/// Whether it is an opening that stands open, as of a draft hood.
[[nodiscard]] inline bool has_plain_opening(const Section& section) {
    return section.opening_m2 > 0.0 && !has_gate(section);
}

/// How far a draft regulator's gate is open at this pressure in the flue against its surroundings.
[[nodiscard]] inline double open_share(const Section& section, double excess_pa) {
    if (!has_gate(section)) {
        return 1.0;
    }
    return std::clamp((-excess_pa - section.opens_above_pa) / section.opens_over_pa, 0.0, 1.0);
}

/// How much more of it opens per pascal of draft, between shut and open.
[[nodiscard]] inline double open_share_slope(const Section& section, double excess_pa) {
    const double share = open_share(section, excess_pa);
    return share > 0.0 && share < 1.0 ? 1.0 / section.opens_over_pa : 0.0;
}

} // namespace fluewright
