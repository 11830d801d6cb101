#pragma once

#include "fluewright/model/fields/installation.hpp"

namespace fluewright::bench {

/// A run of six parts as they are met every day: single-wall pipe with an elbow and a level piece
/// in the room, a tee, an insulated chimney outdoors, a cap; two weathers, no leaks.
[[nodiscard]] Installation typical();

} // namespace fluewright::bench
