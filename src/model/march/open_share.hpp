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

} // namespace fluewright
