#pragma once

#include "fluewright/advice/assessment.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// The run as a picture (SVG): a side elevation to scale, and what happens along it.
namespace fluewright {

struct PartsList;

/// What the colors of the elevation tell.
enum class Show : std::uint8_t { temperature, surface, pressure, creosote, cut_list };

inline constexpr std::array<std::string_view, 5> show_words{
    "temperature", "surface", "pressure", "creosote", "cut-list"};

[[nodiscard]] constexpr std::string_view name(Show show) {
    return show_words[static_cast<std::size_t>(show)];
}

struct DrawOptions {
    Show show{Show::temperature};
    const StateResult* state{}; ///< one of the assessment; null: drawn_state()
    const PartsList* parts{};   ///< for Show::cut_list
    bool legend{true};          ///< false: findings by number only, where a page lists them
};

/// The condition that a drawing shows unasked: for pressure the one with least to spare, for
/// creosote low fire in the coldest weather, else high fire in the weather that decides. Null where
/// no condition has figures along the run.
[[nodiscard]] const StateResult* drawn_state(const Assessment& assessment, Show show);

/// The condition of this name, "low fire, frost"; null where none is called so or has figures.
[[nodiscard]] const StateResult* state_named(const Assessment& assessment, std::string_view name);

/// The names of all that have figures, in order.
[[nodiscard]] std::vector<std::string> drawn_state_names(const Assessment& assessment);

/// Side elevation to scale: heater, run with its true build, walls, ceilings and roof as far as the
/// file tells, sizes, distances to what burns, joints that leak, findings by number. In the units
/// of the assessment.
[[nodiscard]] std::string
draw_run(const Installation& written, const Assessment& assessment, const DrawOptions& options);

/// Pressure against the surroundings, gas and wall along the run in one condition, with the limits
/// of the parts, the dew point and the threshold of creosote.
[[nodiscard]] std::string
draw_profile(const Installation& written, const Assessment& assessment, const StateResult* state);

} // namespace fluewright
