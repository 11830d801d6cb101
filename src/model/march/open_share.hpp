#pragma once

#include "fluewright/model/run/case.hpp"

#include <algorithm>

namespace fluewright {

/// How far a draft regulator's gate is open at this pressure in the flue against its surroundings.
[[nodiscard]] inline double open_share(const Section& section, double excess_pa) {
    if (section.opens_over_pa <= 0.0) {
        return 1.0;
    }
    return std::clamp((-excess_pa - section.opens_above_pa) / section.opens_over_pa, 0.0, 1.0);
}

/// How much more of it opens per pascal of draft, between shut and open.
[[nodiscard]] inline double open_share_slope(const Section& section, double excess_pa) {
    const double share = section.opens_over_pa > 0.0 ? open_share(section, excess_pa) : 1.0;
    return share > 0.0 && share < 1.0 ? 1.0 / section.opens_over_pa : 0.0;
}

} // namespace fluewright
