#include "seen_trouble.hpp"

#include <algorithm>

namespace fluewright {
namespace {

bool roars(const Observation& seen) {
    return seen.roaring.value_or(false);
}

} // namespace

bool tells_of_trouble(const std::vector<Observation>& seen) {
    return std::any_of(seen.begin(), seen.end(), [](const Observation& each) {
        return each.sluggish.value_or(false) || roars(each) || each.drips.value_or(false)
               || each.smoke.value_or(SmokePlace::none) != SmokePlace::none;
    });
}

bool tells_of_a_roaring_fire(const std::vector<Observation>& seen) {
    return std::any_of(seen.begin(), seen.end(), roars);
}

std::string_view words_on_trouble(const std::vector<Observation>& seen, bool passes) {
    if (tells_of_a_roaring_fire(seen)) {
        return "The file tells of a fire that cannot be held down: `fluewright diagnose` looks for "
               "the cause, which comes first. More draft makes it worse. ";
    }
    return passes && tells_of_trouble(seen)
               ? "The file tells of a trouble that its run should not have: `fluewright diagnose` "
                 "looks for the cause, which comes first. "
               : std::string_view{};
}

} // namespace fluewright
