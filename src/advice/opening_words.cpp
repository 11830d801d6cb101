#include "fluewright/advice/opening_words.hpp"

#include "fluewright/advice/score.hpp"
#include "fluewright/model/run/open_front.hpp"

#include <algorithm>
#include <cmath>

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
        return "the door may be opened " + opening_share_words(resolved, state.door.opening_share)
               + " of its width";
    }
    const FrontVelocity front = front_velocity(resolved, state);
    return "air enters the opening at "
           + format_quantity(front.has_m_s, Kind::speed, resolved.units) + " of the "
           + format_quantity(front.wanted_m_s, Kind::speed, resolved.units) + " wanted";
}

std::string opening_share_words(double share, double wanted, UnitSystem units) {
    constexpr double per_cent = 100.0;
    const double open = std::clamp(share, 0.0, 1.0);
    const double nearest = std::round(per_cent * open) / per_cent;
    const bool up_to_limit = open < wanted && nearest >= wanted;
    const double told = up_to_limit ? std::floor(per_cent * open) / per_cent : nearest;
    // Less than half a per cent is not nothing.
    return told > 0.0 ? format_quantity(told, Kind::fraction, units)
                      : format_quantity(open, Kind::fraction, units, 1);
}

std::string opening_share_words(const Case& resolved, double share) {
    return opening_share_words(share, door_wanted(resolved), resolved.units);
}

} // namespace fluewright
