#pragma once

#include "advice/checks/subject.hpp"

#include <string_view>

namespace fluewright::checking {

/// Something of the file that can hardly be so, with words() for it.
template <class Words>
void odd(Subject& s, bool met, std::string_view place, const Words& words) {
    CheckResult* f = s.hold(own("unusual-input"),
                            met,
                            {.kind = Kind::number, .figure = {}, .limit = {}, .weight = 0.0},
                            {.section = nullptr, .place = place});
    if (f != nullptr && s.with_words()) {
        f->message = words();
    }
}

/// Weather, air pressure, house and distances that can hardly be so, or that the file gives and
/// nothing uses.
void doubtful_surroundings(Subject& s);

/// Figures of one fire that say different things of its air or heat, and a draft hood told twice.
void doubtful_combustion(Subject& s);

} // namespace fluewright::checking
