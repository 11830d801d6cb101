#pragma once

#include "fluewright/model/fields/part_words.hpp"

#include <array>
#include <cstdint>
#include <string_view>

/// What a joint under pressure does, by how far, where and with which fit.
namespace fluewright::checking {

/// Where smoke from a joint goes.
enum class SmokeSpace : std::uint8_t {
    living,   ///< the room, or any room above it
    shut,     ///< attic or chase: inside the house, and nobody stays there
    open_air, ///< no harm
};

[[nodiscard]] inline SmokeSpace space_of(Zone zone) {
    return zone == Zone::room       ? SmokeSpace::living
           : zone == Zone::outdoors ? SmokeSpace::open_air
                                    : SmokeSpace::shut;
}

/// How a joint is made, by how much it lets through.
enum class JointMake : std::uint8_t { slip, locked, sealed };

enum class JointHarm : std::uint8_t { none, note, warning, danger };

/// From which pressure outwards a joint does what. Each limit is the first pressure over which it
/// does.
struct JointPressureRow {
    SmokeSpace space;
    JointMake make;
    double note_pa;
    double warning_pa;
    double danger_pa;
    std::string_view why;
};

/// The judgement. What it rests on: a slit all round a 6 in pipe of the width in data/defaults.csv
/// (ordinary 0.05 mm, tight 0.01 mm, sealed 0.002 mm) lets 90, 17 and 3 L/h of gas through at
/// 1 Pa, and by the square root of the pressure at others. With 0.5 % carbon monoxide in the gas of
/// a smoldering fire, in a room of 40 m3 that changes its air every two hours, that is 21, 4 and 1
/// ppm for each joint, where 9 ppm over eight hours is a usual limit for dwellings. Gas, room and
/// limit from memory; the rows are judgement.
inline constexpr auto joint_pressure_rows = std::to_array<JointPressureRow>({
    {SmokeSpace::living,
     JointMake::slip,
     0.0,
     0.1,
     0.1,
     "any smoke into a room is carbon monoxide"},
    {SmokeSpace::living, JointMake::locked, 0.0, 0.5, 2.0, "a lock holds most of it back"},
    {SmokeSpace::living, JointMake::sealed, 0.0, 1.0, 4.0, "cement holds until it cracks"},
    {SmokeSpace::shut, JointMake::slip, 0.0, 0.5, 2.0, "smoke stays there, and finds its way in"},
    {SmokeSpace::shut, JointMake::locked, 0.0, 2.0, 8.0, "little comes out, and not into a room"},
    {SmokeSpace::shut, JointMake::sealed, 0.0, 4.0, 15.0, "next to nothing comes out"},
});

/// What a pressure over that of the air around [Pa] does.
[[nodiscard]] constexpr JointHarm joint_harm(SmokeSpace space, JointMake make, double over_pa) {
    for (const JointPressureRow& row : joint_pressure_rows) {
        if (row.space == space && row.make == make) {
            return over_pa > row.danger_pa    ? JointHarm::danger
                   : over_pa > row.warning_pa ? JointHarm::warning
                   : over_pa > row.note_pa    ? JointHarm::note
                                              : JointHarm::none;
        }
    }
    return JointHarm::none;
}

} // namespace fluewright::checking
