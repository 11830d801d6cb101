#include "fluewright/advice/opening_words.hpp"

#include "fluewright/model/run/open_front.hpp"

#include <algorithm>

namespace fluewright {

std::string_view condition_word(const Case& resolved, StateKind kind) {
    if (is_door_open(kind) && has_open_front(resolved.appliance)) {
        return kind == StateKind::door_open_high ? "open front, high fire" : "open front, embers";
    }
    return name(kind);
}

FrontVelocity front_velocity(const Case& resolved, const StateResult& state) {
    const double share =
        state.kind == StateKind::door_open_embers ? resolved.appliance.embers_share : 1.0;
    const double wanted_m_s = face_velocity_wanted_m_s(share);
    return {.has_m_s = std::max(0.0, state.door.opening_share) * wanted_m_s,
            .wanted_m_s = wanted_m_s};
}

std::string opening_words(const Case& resolved, const StateResult& state) {
    if (!has_open_front(resolved.appliance)) {
        return "the door may be opened "
               + format_quantity(std::clamp(state.door.opening_share, 0.0, 1.0),
                                 Kind::fraction,
                                 resolved.units,
                                 2)
               + " of its width";
    }
    const FrontVelocity front = front_velocity(resolved, state);
    return "air enters the opening at "
           + format_quantity(front.has_m_s, Kind::speed, resolved.units) + " of the "
           + format_quantity(front.wanted_m_s, Kind::speed, resolved.units) + " wanted";
}

} // namespace fluewright
