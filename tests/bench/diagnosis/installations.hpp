#pragma once

#include "dice.hpp"
#include "fluewright/model/fields/installation.hpp"

/// Made-up installations.
namespace bench {

/// A stove on a run that works as described.
[[nodiscard]] fluewright::Installation sound_installation(Dice& dice);

/// The flaw of the design put into a sound one; false where it does not fit.
bool put_flaw(fluewright::Installation& written, std::string_view flaw, Dice& dice);

/// Whether every state that counts passes.
[[nodiscard]] bool works(const fluewright::Installation& written);

} // namespace bench
