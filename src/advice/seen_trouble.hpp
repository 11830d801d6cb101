#pragma once

#include "fluewright/model/fields/observed.hpp"

#include <string_view>

/// Trouble that was seen on a run in which the file shows no reason for it.
namespace fluewright {

/// Whether somebody saw smoke in the room or a sluggish fire.
[[nodiscard]] bool tells_of_trouble(const std::vector<Observation>& seen);

/// What is said first of a run that passes as it is written, where the file tells of trouble.
inline constexpr std::string_view cause_comes_first =
    "The file tells of a trouble that its run should not have: `fluewright diagnose` looks for the "
    "cause, which comes first. ";

} // namespace fluewright
