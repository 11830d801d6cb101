#pragma once

#include "fluewright/advice/assessment.hpp"

#include <string>

/// Why an installation does not pass, in a few words.
namespace fluewright {

/// What makes a kind of harm fall short or leaves it open, as harm_sentence() tells it at length:
/// "low fire, mild day, 9.5 Pa where 12 Pa is required (and 1 more)". Empty where neither.
[[nodiscard]] std::string reason_of(const Assessment& assessment, const HarmVerdict& verdict);

/// That of every kind that counts, each behind its name: "fire: smoke from joints, joint 1; draft:
/// ...". Empty where all that counts is decided and passes.
[[nodiscard]] std::string reasons_against(const Assessment& assessment);

} // namespace fluewright
