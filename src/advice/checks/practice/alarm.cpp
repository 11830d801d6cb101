#include "advice/checks/subject.hpp"

namespace fluewright::checking {

void alarm(Subject& s) {
    const bool sounded = alarm_has_sounded(s.view.written.observed);
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
