#include "advice/checks/subject.hpp"

#include <algorithm>

namespace fluewright::checking {

void alarm(Subject& s) {
    const auto& seen = s.view.written.observed;
    const bool sounded = std::any_of(seen.begin(), seen.end(), [](const Observation& entry) {
        return entry.co_alarm.value_or(false);
    });
    CheckResult* f = s.hold(own("alarm-has-sounded"),
                            !sounded,
                            {.kind = Kind::number,
                             .figure = {},
                             .limit = {},
                             .weight = sounded ? 1000.0 : 0.0}, // before all other dangers
                            {.section = nullptr, .place = "the room"});
    if (f != nullptr && s.with_words()) {
        f->message = "The file says that a carbon monoxide alarm has sounded.";
    }
}

} // namespace fluewright::checking
