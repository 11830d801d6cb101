#pragma once

#include "fluewright/advice/remedies/improve.hpp"

namespace fluewright {

/// What harms most comes first. That the draft is short is a matter of the states.
[[nodiscard]] Goal goal_of(const Improvement& made);

/// What a change is to reach. Where the door is what falls short, no strip that brings it past the
/// least it may be opened is a cure: it has to open as far as is wanted. Nor is upkeep mended
/// before a door that is short, though nobody asked for it: reloading harms more.
[[nodiscard]] Required asked_of(const Assessment& present);

} // namespace fluewright
