#pragma once

#include "fluewright/model/warmup/warmup.hpp"

#include <array>
#include <optional>
#include <string_view>
#include <vector>

/// What would bring a slow flue to its draft, and its walls to where they are dry and clean,
/// sooner.
namespace fluewright {

enum class Quicker : std::uint8_t {
    preheat,       ///< the idle flue pushes down: warm it and open a window before lighting
    liner_to_size, ///< the flue is wider than the collar
    lighter_wall,  ///< walls that keep the heat: an insulated or lighter liner
    insulate,      ///< walls that lose it outside the warm room: insulate or enclose them
    double_wall,   ///< bare pipe in the room that loses it
    more_fire,     ///< nothing of the run stands out: a brisk fire with the air open
    room_air,      ///< the idle flue pushes down on a burner: let air into the room
};

[[nodiscard]] constexpr auto words_of(Quicker) {
    return std::to_array<std::string_view>({"preheat and open a window",
                                            "liner of the collar's size",
                                            "lighter or insulated liner",
                                            "insulate or enclose the chimney",
                                            "double-wall connector",
                                            "brisk fire with the air open",
                                            "air for the room"});
}

/// One of them, with the figures of this run that speak for it.
struct WarmupHint {
    Quicker what{};
    std::optional<std::size_t> section{};     ///< the first it is about; none: the run as a whole
    std::optional<double> idle_draft_pa{};    ///< preheat
    std::optional<double> area_over_outlet{}; ///< liner_to_size: the greatest
    // Of all sections it is about, while the fire burned:
    std::optional<double> kept_j{}; ///< lighter_wall: what their walls kept
    std::optional<double> lost_j{}; ///< insulate, double_wall: what they gave to the air around
};

/// Heat the gas gave to the run while the fire burned [J].
[[nodiscard]] double taken_while_lit_j(const Warmup& course);

/// Whether the draft, a dry wall or, where the smoke makes tar, a clean one comes later than
/// warmup_long_s of the catalog, or never.
[[nodiscard]] bool is_slow(const Case& resolved, const Warmup& course);

/// What shortens it, what does most first; empty where it is not slow.
[[nodiscard]] std::vector<WarmupHint>
warmup_hints(const Case& resolved, std::size_t weather, const Warmup& course);

} // namespace fluewright
