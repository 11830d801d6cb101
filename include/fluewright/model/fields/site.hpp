#pragma once

#include "fluewright/model/fields/given.hpp"
#include "fluewright/model/fields/house.hpp"

#include <vector>

/// The place, as the user wrote it: weather, roof, house and room.
namespace fluewright {

struct Weather {
    Word name;
    Given outdoor_temperature_k;
    Given wind_m_s;
    Given relative_humidity;
    Given room_temperature_k; ///< of the room in this weather

    bool operator==(const Weather&) const = default;
};

/// What stands near the chimney top.
struct NearThing {
    Choice<NearThingKind> what; ///< building, opening or tree
    Given distance_m;           ///< level, from the chimney top
    Given below_top_m; ///< how far its top lies under the chimney top; negative where it is taller

    bool operator==(const NearThing&) const = default;
};

/// The roof the chimney leaves through.
struct Roof {
    Given pitch_rad;
    Given distance_to_ridge_m;     ///< level
    Given top_above_roof_m;        ///< over the highest place where the chimney leaves the roof
    Choice<RoofCovering> covering; ///< tiles, metal, felt, thatch or shingles
    Flag braced;
    std::vector<NearThing> near;

    bool operator==(const Roof&) const = default;
};

struct Alarms {
    Flag carbon_monoxide;
    Flag smoke;
    Given distance_m; ///< level, from the heater to the carbon monoxide alarm

    bool operator==(const Alarms&) const = default;
};

struct Site {
    Given altitude_m;
    Given air_pressure_pa;
    Given attic_temperature_k;
    Given chase_temperature_k;
    Given air_inlet_m2;            ///< opening for air from outdoors
    Given flue_shared_by;          ///< heaters on the flue, this one counted
    Given flue_other_area_m2;      ///< areas of the other heaters' connectors together
    Given months_since_inspection; ///< of flue and pipe
    Given year_fitted;
    Choice<Shelter> shelter; ///< house, one room, open shed or outdoors
    Flag tight_house;
    Choice<RuleSet> rules; ///< us, uk, ca, au, de or none
    Roof roof;
    Alarms alarms;
    Choice<ChimneyTopPosition> top_position; ///< clear, near ridge or adverse
    Room room;
    House house;
    std::vector<Weather> weather;

    bool operator==(const Site&) const = default;
};

} // namespace fluewright
