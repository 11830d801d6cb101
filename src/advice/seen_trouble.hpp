#pragma once

#include "fluewright/model/fields/observed.hpp"
#include "fluewright/model/run/case.hpp"

#include <string_view>

/// Trouble that was seen on a run in which the file shows no reason for it.
namespace fluewright {

/// What somebody saw of which a person may come to harm before its cause is found.
enum class Hazard : std::uint8_t {
    smoke,       ///< smoke in the room, wherever it came out
    blown_out,   ///< smoke held at a joint is blown out while the heater burns
    reversed,    ///< pressure in the flue while it burns, which no fan makes
    fallen_back, ///< air comes down the cold flue: what is lit comes into the room
    roaring,     ///< the fire cannot be held down: glowing pipe, or the flue itself burns
    creosote,    ///< what runs from the flue of a wood fire burns
};

/// A hazard, and the key of the observation that tells of it: "smoke", "draft".
struct HazardSeen {
    Hazard hazard{};
    std::string_view key;
};

/// The hazards an observation tells of, in the order above.
[[nodiscard]] std::vector<HazardSeen> hazards_of(const Observation& seen,
                                                 const ApplianceCase& heater);

/// Whether somebody saw what more draft cures or no draft at all explains: smoke in the room, gas
/// that comes out, a fire that burns badly.
[[nodiscard]] bool tells_of_too_little_draft(const std::vector<Observation>& seen,
                                             const ApplianceCase& heater);

/// Whether somebody saw a hazard, a fire that burns badly, or water that runs out.
[[nodiscard]] bool tells_of_trouble(const std::vector<Observation>& seen,
                                    const ApplianceCase& heater);

/// Whether somebody saw a fire that cannot be held down: more draft makes it worse.
[[nodiscard]] bool tells_of_a_roaring_fire(const std::vector<Observation>& seen);

/// What is said first of a run where the file tells of trouble: of one that passes as it is
/// written, and of any whose fire cannot be held down, since what is short there is not the cause.
/// Ends with a blank; empty where nothing is to be said.
[[nodiscard]] std::string_view
words_on_trouble(const std::vector<Observation>& seen, const ApplianceCase& heater, bool passes);

} // namespace fluewright
