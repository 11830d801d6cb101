#pragma once

#include <array>
#include <cstdint>
#include <string_view>

/// The closed vocabularies of what was seen on an installation. Each has its words in words_of(),
/// in the order of its enumerators.
namespace fluewright {

/// Where or when smoke comes into the room.
enum class SmokePlace : std::uint8_t { joints, door, lighting, wind, fan, none };

enum class TroubleCourse : std::uint8_t { over_weeks, overnight, steady };

enum class SmokeStick : std::uint8_t { in, out, still };

enum class LookedAt : std::uint8_t { cap, flue, joints, damper, door_seal, baffle, sizes };

enum class FoundState : std::uint8_t { good, bad };

enum class WindowState : std::uint8_t { open, shut };

enum class FanState : std::uint8_t { running, off };

enum class WindState : std::uint8_t { windy, calm };

[[nodiscard]] constexpr auto words_of(SmokePlace) {
    return std::to_array<std::string_view>({"joints", "door", "lighting", "wind", "fan", "none"});
}

[[nodiscard]] constexpr auto words_of(TroubleCourse) {
    return std::to_array<std::string_view>({"over weeks", "overnight", "steady"});
}

[[nodiscard]] constexpr auto words_of(SmokeStick) {
    return std::to_array<std::string_view>({"in", "out", "still"});
}

[[nodiscard]] constexpr auto words_of(LookedAt) {
    return std::to_array<std::string_view>(
        {"cap", "flue", "joints", "damper", "door seal", "baffle", "sizes"});
}

[[nodiscard]] constexpr auto words_of(FoundState) {
    return std::to_array<std::string_view>({"good", "bad"});
}

[[nodiscard]] constexpr auto words_of(WindowState) {
    return std::to_array<std::string_view>({"open", "shut"});
}

[[nodiscard]] constexpr auto words_of(FanState) {
    return std::to_array<std::string_view>({"running", "off"});
}

[[nodiscard]] constexpr auto words_of(WindState) {
    return std::to_array<std::string_view>({"windy", "calm"});
}

} // namespace fluewright
