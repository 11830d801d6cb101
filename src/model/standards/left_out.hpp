#pragma once

#include "fluewright/model/run/case.hpp"

#include <string>
#include <vector>

namespace fluewright {

/// What the run has and no standard method here computes, in sentences for its notes.
[[nodiscard]] std::vector<std::string> left_out_of_methods(const Case& resolved);

/// Whether the file tells of wind, or that its chimney top is where wind pushes down.
[[nodiscard]] bool tells_of_wind(const Case& resolved);

} // namespace fluewright
