#include "fields_limits.hpp"
#include "fluewright/model/fields.hpp"

#include <array>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr std::array<std::string_view, 2> unit_systems{"metric", "us"};

constexpr Limits altitude{Kind::length, -430.0, 5000.0, "the lowest shore to the highest towns"};
constexpr Limits air_pressure{Kind::pressure, 50.0e3, 110.0e3, "the same range of heights"};
constexpr Limits wind{Kind::speed, 0.0, 60.0, weather_range};

constexpr std::array installation_fields{
    Field<Installation>{text("title", {"What the report is headed with.", "Bindery, east wall"}),
                        &Installation::title},
    Field<Installation>{
        choice("units",
               unit_systems,
               {"The units of the text output; left out, those the file uses most.", "metric"}),
        &Installation::units},
};

constexpr std::array site_fields{
    Field<Site>{
        quantity("altitude",
                 altitude,
                 {"Height above the sea; thin air carries less draft.", "310 m", "altitude_m"}),
        &Site::altitude_m},
    Field<Site>{quantity("air_pressure",
                         air_pressure,
                         {"Absolute air pressure at the place; left out, it follows from the "
                          "altitude.",
                          "980 hPa"}),
                &Site::air_pressure_pa},
    Field<Site>{
        quantity("attic_temperature",
                 zone_temperature,
                 {"Air temperature around parts in the zone attic.", "5 degC", "attic_share"}),
        &Site::attic_temperature_k},
    Field<Site>{
        quantity("chase_temperature",
                 zone_temperature,
                 {"Air temperature around parts in the zone chase.", "12 degC", "chase_share"}),
        &Site::chase_temperature_k},
};

constexpr std::array room_fields{
    Field<Room>{quantity("temperature",
                         room_temperature,
                         {"Air temperature in the room.", "19 degC", "room_temperature_k"}),
                &Room::temperature_k},
    Field<Room>{quantity("pressure",
                         room_pressure,
                         {"Pressure in the room minus that outdoors at the height of the outlet; "
                          "an exhaust fan makes it negative, and a negative one takes from the "
                          "draft.",
                          "-1 Pa",
                          "room_pressure_burning_pa"}),
                &Room::pressure_pa},
    Field<Room>{quantity("humidity",
                         share,
                         {"Relative humidity in the room.", "45 %", "relative_humidity_room"}),
                &Room::relative_humidity},
};

constexpr std::array weather_fields{
    Field<Weather>{text("name", {"What the weather is called in the output.", "frost"}),
                   &Weather::name},
    Field<Weather>{quantity("outdoor_temperature",
                            outdoor_temperature,
                            {"Air temperature outdoors.", "-12 degC"}),
                   &Weather::outdoor_temperature_k},
    Field<Weather>{
        quantity("wind", wind, {"Wind at the height of the mouth.", "2 m/s", "wind_speed_m_s"}),
        &Weather::wind_m_s},
    Field<Weather>{quantity("humidity",
                            share,
                            {"Relative humidity outdoors.", "80 %", "relative_humidity_outdoor"}),
                   &Weather::relative_humidity},
};

} // namespace

template <>
std::span<const Field<Installation>> fields() {
    return installation_fields;
}

template <>
std::span<const Field<Site>> fields() {
    return site_fields;
}

template <>
std::span<const Field<Room>> fields() {
    return room_fields;
}

template <>
std::span<const Field<Weather>> fields() {
    return weather_fields;
}

} // namespace fluewright
