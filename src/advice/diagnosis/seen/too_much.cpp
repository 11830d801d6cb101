#include "too_much.hpp"

#include <algorithm>

namespace fluewright::diagnosis {

bool tells_of_too_much(const Evidence& e, const ApplianceCase& heater) {
    if (e.seen == Seen::roaring) {
        return e.answer == Answer::yes;
    }
    return e.seen == Seen::draft && e.point == 0 && e.situation.doing == Doing::high_fire
           && e.value - 2.0 * e.spread > heater.draft_greatest_pa; // by more than a gauge errs
}

TooMuch too_much_in(const std::vector<Evidence>& evidence, const ApplianceCase& heater) {
    bool heard = false;
    bool measured = false;
    bool of_something_else = false;
    for (const Evidence& e : evidence) {
        if (e.seen == Seen::roaring && e.answer == Answer::no) {
            return TooMuch::no;
        }
        const bool tells = tells_of_too_much(e, heater);
        heard = heard || (tells && !e.is_reading());
        measured = measured || (tells && e.is_reading());
        of_something_else = of_something_else || (e.complains() && !tells);
    }
    // Smoke with a strong draft has another reason.
    if (!heard && (!measured || of_something_else)) {
        return TooMuch::no;
    }
    return measured ? TooMuch::measured : TooMuch::heard;
}

bool only_weakens(const Altered& altered) {
    if (altered.flaw != nullptr) {
        return pages_telling(*altered.flaw, symptom_of(SymptomId::roaring).id).value_or(0.0) <= 0.0;
    }
    return !altered.causes.empty()
           && std::none_of(altered.causes.begin(), altered.causes.end(), [](const CauseAt& cause) {
                  return id_of(*cause.cause) == CauseId::leaky_stove;
              });
}

double held_against(const Evidence& e, double x, const ApplianceCase& heater) {
    return x > e.value && tells_of_too_much(e, heater) ? e.value : x;
}

double measured_draft_pa(const Installation& written) {
    double most_pa = 0.0;
    for (const Observation& seen : written.observed) {
        const bool high = seen.state.value_or(StateKind::high_fire) == StateKind::high_fire;
        if (high && point_of(seen.at, written.run.size()) == 0) {
            most_pa = std::max(most_pa, seen.draft_pa.value_or(0.0));
        }
    }
    return most_pa;
}

} // namespace fluewright::diagnosis
