#pragma once

#include <array>
#include <cstdint>
#include <string_view>

/// The closed vocabularies of the appliance and its fuel, and the ways of firing it. Each has its
/// words in words_of(), in the order of its enumerators.
namespace fluewright {

enum class FuelGroup : std::uint8_t { wood, pellets, coal, oil, gas };

enum class ApplianceType : std::uint8_t {
    stove,
    fireplace,
    furnace,
    boiler,
    draft_hood,
    masonry_heater, ///< burns one charge at a time and stores its heat
};

enum class ApplianceStyle : std::uint8_t {
    radiant,
    jacketed,
    fireplace_stove,
    furnace,
    boiler,
    lined_range,
    unlined_range,
};

enum class BurnRateBasis : std::uint8_t { as_fired, dry };

enum class EfficiencyBasis : std::uint8_t { net, gross };

/// What a gas temperature tells: a bare probe shows less than the gas, for it sees the wall.
enum class GasReading : std::uint8_t { true_gas, bare_probe };

enum class FloorKind : std::uint8_t { burnable, noncombustible };

/// How throat and smoke chamber of an open hearth lead its smoke into the flue.
enum class SmokeChamber : std::uint8_t { none, corbelled, tapered };

enum class FloorBuild : std::uint8_t { sheet, slab, close_masonry, hollow_masonry };

/// The ways of firing in which a run must work.
enum class StateKind : std::uint8_t {
    high_fire,        ///< flow set by the high burn rate
    low_fire,         ///< flow set by the low burn rate
    free_burn,        ///< the flow at which run and appliance balance
    door_open_high,   ///< loading door open on a high fire
    door_open_embers, ///< loading door open on embers: the reload
    idle,             ///< no fire
    cold_start,       ///< the first minutes of kindling, walls still cold
};

[[nodiscard]] constexpr auto words_of(FuelGroup) {
    return std::to_array<std::string_view>({"wood", "pellets", "coal", "oil", "gas"});
}

[[nodiscard]] constexpr auto words_of(ApplianceType) {
    return std::to_array<std::string_view>(
        {"stove", "fireplace", "furnace", "boiler", "draft-hood", "masonry-heater"});
}

[[nodiscard]] constexpr auto words_of(ApplianceStyle) {
    return std::to_array<std::string_view>({"radiant",
                                            "jacketed",
                                            "fireplace stove",
                                            "furnace",
                                            "boiler",
                                            "range with lined firepot",
                                            "range with unlined firepot"});
}

[[nodiscard]] constexpr auto words_of(BurnRateBasis) {
    return std::to_array<std::string_view>({"as fired", "dry"});
}

[[nodiscard]] constexpr auto words_of(EfficiencyBasis) {
    return std::to_array<std::string_view>({"net", "gross"});
}

[[nodiscard]] constexpr auto words_of(GasReading) {
    return std::to_array<std::string_view>({"true gas", "bare probe"});
}

[[nodiscard]] constexpr auto words_of(FloorKind) {
    return std::to_array<std::string_view>({"combustible", "noncombustible"});
}

[[nodiscard]] constexpr auto words_of(SmokeChamber) {
    return std::to_array<std::string_view>({"none", "corbelled", "tapered"});
}

[[nodiscard]] constexpr auto words_of(FloorBuild) {
    return std::to_array<std::string_view>({"sheet", "slab", "close masonry", "hollow masonry"});
}

[[nodiscard]] constexpr auto words_of(StateKind) {
    return std::to_array<std::string_view>({"high fire",
                                            "low fire",
                                            "air control open",
                                            "reloading on a high fire",
                                            "reloading on embers",
                                            "idle",
                                            "cold start"});
}

} // namespace fluewright
