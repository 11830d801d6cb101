#include "untroubled.hpp"

#include <algorithm>

namespace fluewright::diagnosis {
namespace {

bool tells_of_trouble(const Evidence& e) {
    switch (e.seen) {
    case Seen::worse:
        return true;
    case Seen::look:
        return e.answer == Answer::yes;
    case Seen::stick:
        return e.answer == Answer::out;
    default:
        return e.complains();
    }
}

bool denies_trouble(const Evidence& e) {
    return e.is_complaint() && e.answer == Answer::no;
}

bool is_draft_of_the_high_fire(const Evidence& e) {
    return e.seen == Seen::draft && e.point == 0 && e.situation.doing == Doing::high_fire;
}

bool is_enough(const Evidence& e, const ApplianceCase& heater) {
    return e.value - 2.0 * e.spread >= heater.high.draft_needed_pa
           && e.value <= heater.draft_greatest_pa;
}

} // namespace

std::optional<std::size_t> measured_enough(const std::vector<Evidence>& evidence,
                                           const ApplianceCase& heater) {
    std::optional<std::size_t> least;
    for (std::size_t e = 0; e < evidence.size(); ++e) {
        if (tells_of_trouble(evidence[e])) {
            return std::nullopt;
        }
        if (!is_draft_of_the_high_fire(evidence[e])) {
            continue;
        }
        if (!is_enough(evidence[e], heater)) {
            return std::nullopt;
        }
        if (!least || evidence[e].value < evidence[*least].value) {
            least = e;
        }
    }
    return least;
}

bool is_untroubled(const std::vector<Evidence>& evidence, const ApplianceCase& heater) {
    return evidence.empty()
           || (std::none_of(evidence.begin(),
                            evidence.end(),
                            [](const Evidence& e) { return e.complains(); })
               && std::any_of(evidence.begin(), evidence.end(), denies_trouble))
           || measured_enough(evidence, heater);
}

} // namespace fluewright::diagnosis
