#pragma once

#include "fluewright/advice/remedies/improve.hpp"

/// What is told of the plans that are shown, and of the whole.
namespace fluewright {

/// Solves the plan with its profile and notes what it may worsen.
void add_details(const Improvement& made, Plan& plan);

/// The answer in a sentence or two.
[[nodiscard]] std::string improvement_sentence(const Improvement& made);

/// Why nothing helps, with what comes nearest.
[[nodiscard]] std::string hopeless_reason(const Improvement& made);

} // namespace fluewright
