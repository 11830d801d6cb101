#pragma once

#include "fluewright/advice/assessment.hpp"

#include <string>

/// The words of a verdict.
namespace fluewright {

/// What one kind of harm came to, with its worst figure and place.
[[nodiscard]] std::string harm_sentence(const Assessment& assessment, const HarmVerdict& verdict);

/// What to do first about it; empty where nothing is to be done.
[[nodiscard]] std::string first_to_do(const Assessment& assessment, const HarmVerdict& verdict);

} // namespace fluewright
