#pragma once

#include "fluewright/model/fields/installation.hpp"

#include <string_view>
#include <vector>

namespace fluewright::bench {

/// A run of six parts as they are met every day: single-wall pipe with an elbow and a level piece
/// in the room, a tee, an insulated chimney outdoors, a cap; two weathers, no leaks.
[[nodiscard]] Installation typical();

/// A kin of the typical run that couples what it does: joints with the flow, the fire with the
/// room.
struct Kin {
    std::string_view id;
    std::string_view what;
    Installation installation;
};

/// What real installations add to the typical one: loose joints, a house, both, a draft hood, a
/// draft regulator, and 20 loose parts in a house in six weathers.
[[nodiscard]] std::vector<Kin> kin_of_typical();

} // namespace fluewright::bench
