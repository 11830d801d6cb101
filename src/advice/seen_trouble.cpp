#include "seen_trouble.hpp"

#include <algorithm>

namespace fluewright {
namespace {

bool roars(const Observation& seen) {
    return seen.roaring.value_or(false);
}

} // namespace

std::vector<HazardSeen> hazards_of(const Observation& seen, const ApplianceCase& heater) {
    const bool lit = seen.state != StateKind::idle;
    const bool at_outlet = !seen.at || seen.at == "outlet";
    const bool reversed = seen.draft_pa.value_or(0.0) < 0.0;
    const bool blown_out = seen.smoke_stick == SmokeStick::out;
    std::vector<HazardSeen> found;
    const auto add = [&found](Hazard hazard, std::string_view key, bool is_told) {
        if (is_told) {
            found.push_back({hazard, key});
        }
    };
    add(Hazard::smoke, "smoke", seen.smoke.value_or(SmokePlace::none) != SmokePlace::none);
    add(Hazard::blown_out, "smoke_stick", lit && blown_out);
    add(Hazard::reversed, "draft", lit && reversed && !heater.pushed_by_fan);
    add(Hazard::fallen_back,
        reversed ? "draft" : "smoke_stick",
        !lit && at_outlet && (reversed || blown_out));
    add(Hazard::roaring, "roaring", roars(seen));
    add(Hazard::creosote,
        "drips",
        seen.drips.value_or(false) && heater.fuel_group == FuelGroup::wood);
    return found;
}

bool tells_of_too_little_draft(const std::vector<Observation>& seen, const ApplianceCase& heater) {
    return std::any_of(seen.begin(), seen.end(), [&](const Observation& each) {
        const std::vector<HazardSeen> hazards = hazards_of(each, heater);
        return each.sluggish.value_or(false)
               || std::any_of(hazards.begin(), hazards.end(), [](const HazardSeen& one) {
                      return one.hazard <= Hazard::reversed;
                  });
    });
}

bool tells_of_trouble(const std::vector<Observation>& seen, const ApplianceCase& heater) {
    return std::any_of(seen.begin(), seen.end(), [&](const Observation& each) {
        return each.sluggish.value_or(false) || each.drips.value_or(false)
               || !hazards_of(each, heater).empty();
    });
}

bool tells_of_a_roaring_fire(const std::vector<Observation>& seen) {
    return std::any_of(seen.begin(), seen.end(), roars);
}

std::string_view
words_on_trouble(const std::vector<Observation>& seen, const ApplianceCase& heater, bool passes) {
    if (tells_of_a_roaring_fire(seen)) {
        return "The file tells of a fire that cannot be held down: `fluewright diagnose` looks for "
               "the cause, which comes first. More draft makes it worse. ";
    }
    return passes && tells_of_trouble(seen, heater)
               ? "The file tells of a trouble that its run should not have: `fluewright diagnose` "
                 "looks for the cause, which comes first. "
               : std::string_view{};
}

} // namespace fluewright
