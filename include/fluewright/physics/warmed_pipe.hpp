#pragma once

#include <algorithm>

/// What a heater adds to the surroundings of the pipe on its collar.   [theory eq. 74]
namespace fluewright::warmed_pipe {

/// Along the pipe from the collar the warmth falls to a half over this length: about the half width
/// of a stove's top, from which both its glow and the air that rises spread (judgement).
inline constexpr double half_length_m = 0.5;

/// How much warmer than the room the surroundings are at the collar [K]; never colder.
///
/// `share` of the gas's rise over the room there, 0..0.4
/// Source   judgement: 0.16 for a bare stove lifts the surface of single-wall pipe over its first
///          half meter from 0.43-0.44 of the gas's temperature at high fire to 0.47-0.50 (both in
///          degF), towards the half that is found beside hot stoves (common practice, no source)
[[nodiscard]] constexpr double at_collar_k(double share, double gas_k, double room_k) {
    return share * std::max(0.0, gas_k - room_k);
}

/// How much warmer than the room it is round the pipe at a distance along it [K].
///
///   at_collar / (1 + (x/L)^2), at most half of what the gas there is hotter than the room
///
/// The bound matters for trickles only, whose gas has cooled to the room before it leaves the
/// heater's reach: what warms the pipe must not become the source of heat of the gas.
/// Source   the form in which the glow of a disc falls off along its axis (any handbook of
///          radiation) [memory]; that the rising air follows it, and the bound, are judgement
[[nodiscard]] constexpr double
around_k(double at_collar_k, double distance_m, double gas_over_room_k) {
    constexpr double most_of_gas = 0.5;
    const double ratio = distance_m / half_length_m;
    return std::min(at_collar_k / (1.0 + ratio * ratio),
                    most_of_gas * std::max(0.0, gas_over_room_k));
}

} // namespace fluewright::warmed_pipe
