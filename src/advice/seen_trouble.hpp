#pragma once

#include "fluewright/model/fields/observed.hpp"

#include <string_view>

/// Trouble that was seen on a run in which the file shows no reason for it.
namespace fluewright {

/// Whether somebody saw smoke in the room, a fire that burns badly or cannot be held down, or
/// creosote or water that runs out.
[[nodiscard]] bool tells_of_trouble(const std::vector<Observation>& seen);

/// Whether somebody saw a fire that cannot be held down: more draft makes it worse.
[[nodiscard]] bool tells_of_a_roaring_fire(const std::vector<Observation>& seen);

/// What is said first of a run where the file tells of trouble: of one that passes as it is
/// written, and of any whose fire cannot be held down, since what is short there is not the cause.
/// Ends with a blank; empty where nothing is to be said.
[[nodiscard]] std::string_view words_on_trouble(const std::vector<Observation>& seen, bool passes);

} // namespace fluewright
