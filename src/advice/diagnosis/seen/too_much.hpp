#pragma once

#include "evidence.hpp"

/// What comes of too much draft or air.
namespace fluewright::diagnosis {

/// Whether what was seen comes of too much draft or air: a fire that cannot be held down, or surely
/// more draft measured on a high fire than it can be held at. No cause that takes draft away is the
/// reason of that.
[[nodiscard]] bool tells_of_too_much(const Evidence& evidence, const ApplianceCase& heater);

/// Whether any of what was seen does, and nobody says that the fire can be held down all the same,
/// nor, where only a gauge tells it, complains of anything else.
enum class TooMuch : std::uint8_t { no, heard, measured };
[[nodiscard]] TooMuch too_much_in(const std::vector<Evidence>& evidence,
                                  const ApplianceCase& heater);

/// Whether all that is wrong takes draft or air away: no fire roars of that, and who says so speaks
/// of something else.
[[nodiscard]] bool only_weakens(const Altered& altered);

/// What is predicted, as a reading is held against it. Too much draft takes more air through the
/// fire than the file says, so that less is measured than is computed at the flow of the file.
[[nodiscard]] double held_against(const Evidence& evidence, double x, const ApplianceCase& heater);

/// The most draft that was measured at the outlet on a high fire [Pa]; 0 for none.
[[nodiscard]] double measured_draft_pa(const Installation& written);

} // namespace fluewright::diagnosis
