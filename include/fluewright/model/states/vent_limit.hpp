#pragma once

#include "fluewright/model/march/march.hpp"

#include <cmath>

/// What a run can be asked to carry at all. Beyond it a figure would be arithmetic, not a flue.
namespace fluewright::vent_limit {

/// Gas at the outlet above the air of the room [Pa]. A domestic chimney is tested for tightness at
/// no more (class P1); a fire that has to push harder comes out into the room.   [en1443]
inline constexpr double overpressure_pa = 200.0;

/// Speed of the gas over that of sound. Up to here its density may be taken as not changed by its
/// speed: by less than 5 %.   [from memory: textbooks of fluid mechanics]
inline constexpr double mach = 0.3;

/// Speed of the gas over that of sound where most flows through an area, the gas as hot as it
/// entered.   [theory eq. 75]
[[nodiscard]] double
mach_of(const FlueModel& model, const GasStream& stream, const MarchResult& flow);

/// Whether a march that met the chimney top stays within both limits, with this draft at the
/// outlet.
[[nodiscard]] bool
holds(const FlueModel& model, const GasStream& stream, const MarchResult& flow, double draft_pa);

/// The greatest share of a flow for which `holds(share)`, to a millionth of it; that least one
/// where none does. What holds is held by every lesser share.
template <class Holds>
[[nodiscard]] double greatest_share(const Holds& holds) {
    constexpr int halvings = 16; // of a ratio of a million: to 2e-4
    double held = 1e-6;
    double not_held = 1.0;
    for (int i = 0; i < halvings; ++i) {
        const double share = std::sqrt(held * not_held);
        (holds(share) ? held : not_held) = share;
    }
    return held;
}

/// The flow [kg/s] at which the gas of the stream reaches the limit of speed in the outlet.
[[nodiscard]] double fastest_kg_s(const FlueModel& model, const GasStream& stream);

} // namespace fluewright::vent_limit
