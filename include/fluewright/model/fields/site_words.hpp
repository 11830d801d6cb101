#pragma once

#include <array>
#include <cstdint>
#include <string_view>

/// The closed vocabularies of the place and of the file itself. Each has its words in words_of(),
/// in the order of its enumerators.
namespace fluewright {

enum class NearThingKind : std::uint8_t { building, opening, tree };

enum class RoofCovering : std::uint8_t { tiles, metal, felt, thatch, shingles };

enum class HouseSide : std::uint8_t { windward, lee };

enum class ChimneyTopPosition : std::uint8_t { clear, near_ridge, adverse };

/// What the heater stands in; of one room: a workshop or cabin that is no more than its room.
enum class Shelter : std::uint8_t { house, one_room, open_shed, outdoors };

/// Whether the air round the heater is that of the weather.
[[nodiscard]] constexpr bool is_open(Shelter shelter) {
    return shelter == Shelter::open_shed || shelter == Shelter::outdoors;
}

enum class RuleSet : std::uint8_t { us, uk, ca, au, de, none };

enum class FileUnits : std::uint8_t { metric, us };

[[nodiscard]] constexpr auto words_of(NearThingKind) {
    return std::to_array<std::string_view>({"building", "opening", "tree"});
}

[[nodiscard]] constexpr auto words_of(RoofCovering) {
    return std::to_array<std::string_view>({"tiles", "metal", "felt", "thatch", "shingles"});
}

[[nodiscard]] constexpr auto words_of(HouseSide) {
    return std::to_array<std::string_view>({"windward", "lee"});
}

[[nodiscard]] constexpr auto words_of(ChimneyTopPosition) {
    return std::to_array<std::string_view>({"clear", "near ridge", "adverse"});
}

[[nodiscard]] constexpr auto words_of(Shelter) {
    return std::to_array<std::string_view>({"house", "one room", "open shed", "outdoors"});
}

[[nodiscard]] constexpr auto words_of(RuleSet) {
    return std::to_array<std::string_view>({"us", "uk", "ca", "au", "de", "none"});
}

[[nodiscard]] constexpr auto words_of(FileUnits) {
    return std::to_array<std::string_view>({"metric", "us"});
}

} // namespace fluewright
