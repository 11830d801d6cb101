#pragma once

#include "resolving.hpp"

#include <cstdint>
#include <string>
#include <string_view>

/// What the two fires of an appliance share on their way from the file.
namespace fluewright::resolving {

/// The two ends of one HighLow value with their names in the file.
enum class End : std::uint8_t { high, low };

inline const Given& at(const HighLow& pair, End end) {
    return end == End::high ? pair.high : pair.low;
}

inline std::string pointer_to(std::string_view key, End end) {
    return "/appliance/" + std::string{key} + (end == End::high ? "/high" : "/low");
}

inline std::string words_for(std::string_view what, End end) {
    return std::string{what} + (end == End::high ? ", high fire" : ", low fire");
}

/// Fuel burned as the file states it itself, kg/s as fired; not what follows from other figures.
[[nodiscard]] Given stated_burn_rate(const CaseWork& work, End end);

/// Whether the air of an open front follows the opening: the file tells nothing of it.
[[nodiscard]] bool air_by_opening(const CaseWork& work, End end);

/// Combustion air over the least that would do. `burned_kg_s` is the fuel burned where it is known
/// whatever the air.
[[nodiscard]] double air_ratio(const CaseWork& work,
                               const catalog::ApplianceDefault& defaults,
                               const Given& burned_kg_s,
                               End end);

/// Draft at the outlet that the fire needs [Pa], negative where a fan gives more.
/// `density_kg_m3` is that of its gas at the outlet.   [theory eq. 13]
[[nodiscard]] double draft_needed(const CaseWork& work,
                                  const catalog::ApplianceDefault& defaults,
                                  const Firing& firing,
                                  double density_kg_m3,
                                  End end);

} // namespace fluewright::resolving
