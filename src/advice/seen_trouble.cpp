#include "seen_trouble.hpp"

#include <algorithm>

namespace fluewright {
namespace {

bool roars(const Observation& seen) {
    return seen.roaring.value_or(false);
}

} // namespace

std::vector<Hazard> hazards_of(const Observation& seen, const ApplianceCase& heater) {
    const bool lit = seen.state != StateKind::idle;
    const bool at_outlet = !seen.at || seen.at == "outlet";
    const bool reversed = seen.draft_pa.value_or(0.0) < 0.0;
    const bool blown_out = seen.smoke_stick == SmokeStick::out;
    std::vector<Hazard> found;
    const auto add = [&found](Hazard hazard, bool is_told) {
        if (is_told) {
            found.push_back(hazard);
        }
    };
    add(Hazard::smoke, seen.smoke.value_or(SmokePlace::none) != SmokePlace::none);
    add(Hazard::blown_out, lit && blown_out);
    add(Hazard::reversed, lit && reversed && !heater.pushed_by_fan);
    add(Hazard::fallen_back, !lit && at_outlet && (reversed || blown_out));
    add(Hazard::roaring, roars(seen));
    add(Hazard::creosote, seen.drips.value_or(false) && heater.fuel_group == FuelGroup::wood);
    return found;
}

std::string_view key_of(Hazard hazard, const Observation& seen) {
    switch (hazard) {
    case Hazard::smoke:
        return "smoke";
    case Hazard::blown_out:
        return "smoke_stick";
    case Hazard::reversed:
        return "draft";
    case Hazard::fallen_back:
        return seen.draft_pa.value_or(0.0) < 0.0 ? "draft" : "smoke_stick";
    case Hazard::roaring:
        return "roaring";
    case Hazard::creosote:
        return "drips";
    }
    return {};
}

bool tells_of_too_little_draft(const std::vector<Observation>& seen, const ApplianceCase& heater) {
    return std::any_of(seen.begin(), seen.end(), [&](const Observation& each) {
        const std::vector<Hazard> hazards = hazards_of(each, heater);
        return each.sluggish.value_or(false)
               || std::any_of(hazards.begin(), hazards.end(), [](Hazard hazard) {
                      return hazard <= Hazard::reversed;
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
