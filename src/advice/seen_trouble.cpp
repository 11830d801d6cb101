#include "seen_trouble.hpp"

#include <algorithm>

namespace fluewright {

bool tells_of_trouble(const std::vector<Observation>& seen) {
    return std::any_of(seen.begin(), seen.end(), [](const Observation& each) {
        return each.sluggish.value_or(false)
               || each.smoke.value_or(SmokePlace::none) != SmokePlace::none;
    });
}

} // namespace fluewright
