#include "advice/checks/physics/odd.hpp"
#include "fluewright/physics/atmosphere.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fluewright::checking {
namespace {

/// More wind than anybody lights a fire in: a slip of the unit.
void storm(Subject& s) {
    constexpr double most_m_s = 33.0; // hurricane force, 12 Beaufort
    for (const WeatherCase& weather : s.resolved.weathers) {
        odd(s, weather.wind_m_s <= most_m_s, "the wind", [&] {
            return "Unusual: wind of " + s.show(weather.wind_m_s, Kind::speed) + " (" + weather.name
                   + ") is of hurricane force.";
        });
    }
}

/// A top in bad air, and no wind told: a calm shows nothing of it.
void bad_top_in_a_calm(Subject& s) {
    const auto& weathers = s.resolved.weathers;
    const bool windy = std::any_of(weathers.begin(), weathers.end(), [](const WeatherCase& each) {
        return each.wind_m_s > 0.0;
    });
    const bool adverse = s.view.written.site.top_position == ChimneyTopPosition::adverse;
    odd(s, !adverse || windy, "the wind", [] {
        return "The chimney top stands where wind pushes down on it, but no weather has wind: give "
               "that of a windy day.";
    });
}

/// What the house does to the room is not asked where the room's pressure is given.
void house_beside_room_pressure(Subject& s) {
    const Site& site = s.view.written.site;
    odd(s, !site.room.pressure_is_given() || site.house.fans.empty(), "the house", [] {
        return "The file gives the pressure of the room and a house with fans. The pressure holds "
               "as "
               "given, and what the fans do is not computed: leave the room's `pressure` out for "
               "that.";
    });
}

/// Weather services tell the pressure as it would be at the sea.
void pressure_and_altitude(Subject& s) {
    constexpr double most_apart = 0.06; // weather moves the pressure by 5 % at most
    const Site& site = s.view.written.site;
    if (!site.air_pressure_pa || !site.altitude_m) {
        return;
    }
    const double usual_pa = atmosphere::pressure_pa(*site.altitude_m);
    const auto shown = [&](double pa) {
        return format_in_unit(
            pa, Kind::pressure, s.resolved.units == UnitSystem::us ? "inHg" : "hPa");
    };
    odd(s, std::abs(*site.air_pressure_pa / usual_pa - 1.0) <= most_apart, "the air pressure", [&] {
        return "Unusual: air pressure of " + shown(*site.air_pressure_pa) + " at an altitude of "
               + s.show(*site.altitude_m, Kind::length) + ", where " + shown(usual_pa)
               + " is usual. Weather services tell it as at the sea: leave it out, and the "
                 "altitude gives it.";
    });
}

/// A label that lets wood touch the chimney: mostly "0" for what nobody has read. That chimney for
/// solid fuel is listed from about an inch on is common practice, no source.
void label_of_nothing(Subject& s) {
    constexpr double least_m = 0.015;
    if (!s.view.solid_fuel()) {
        return;
    }
    for (const Piece& piece : s.view.pieces) {
        const std::optional<double>& listed_m = piece.part->listed_clearance_m;
        if (!listed_m || piece.is_single() || piece.run_part->wall_kind == WallKind::masonry) {
            continue;
        }
        odd(s, *listed_m >= least_m, s.resolved.run.label_at(piece.run_part->index), [&] {
            return "Unusual: a label of " + s.show(*listed_m, Kind::length)
                   + " to combustibles. Chimney for solid fuel is hardly ever listed for so "
                     "little: read the label, and keep the distance that it states.";
        });
    }
}

} // namespace

void doubtful_surroundings(Subject& s) {
    storm(s);
    bad_top_in_a_calm(s);
    house_beside_room_pressure(s);
    pressure_and_altitude(s);
    label_of_nothing(s);
}

} // namespace fluewright::checking
