#pragma once

#include "elevation.hpp"

#include <string_view>

/// The colors of the drawing that carry no figure: grays and earth, apart from the ramp.
namespace fluewright::drawing {

inline constexpr std::string_view ink = "#222222";
inline constexpr std::string_view faint = "#9a9a9a";
inline constexpr std::string_view extension = "#d0d0d0";
inline constexpr std::string_view indoors = "#f4f2ec";
inline constexpr std::string_view attic_air = "#ebe8df";
inline constexpr std::string_view chase_air = "#e4e0d4";
inline constexpr std::string_view wall_color = "#b9b2a3";
inline constexpr std::string_view body = "#dcdcdc";
inline constexpr std::string_view opening = "#ffffff";
inline constexpr std::string_view burns = "#8a5a2b";
inline constexpr std::string_view smoke = "#b3261e";
inline constexpr std::string_view no_figure = "#ffffff";

[[nodiscard]] constexpr std::string_view color_of(Stuff stuff) {
    switch (stuff) {
    case Stuff::insulation:
        return "#e9dfbd";
    case Stuff::air:
        return "#ffffff";
    case Stuff::masonry:
        return "#cdb8a5";
    case Stuff::sheet:
        break;
    }
    return "#6d6d6d";
}

} // namespace fluewright::drawing
