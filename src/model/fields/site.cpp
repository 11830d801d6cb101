#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr Limits altitude{Kind::length, -430.0, 5000.0, "the lowest shore to the highest towns"};
constexpr Limits air_pressure{Kind::pressure, 50.0e3, 110.0e3, "the same range of heights"};

constexpr Limits inlet{Kind::area, 0.0, 1.0, "openings in houses"};
constexpr Limits heaters{Kind::number, 1.0, 10.0, "heaters people put on one flue"};
constexpr Limits months{Kind::number, 0.0, 1200.0, "chimneys people still use"};
constexpr Limits year{Kind::number, 1800.0, 2200.0, "years chimneys are fitted in"};
constexpr Limits room_volume{Kind::volume, 1.0, 10000.0, "rooms to halls"};
constexpr Limits wind{Kind::speed, 0.0, 60.0, weather_range};

constexpr std::array installation_fields{
    Field<Installation>{
        text("id",
             {"What a batch calls this installation, so that results can be joined.", "hall-017"}),
        &Installation::id},
    Field<Installation>{text("title", {"What the report is headed with.", "Bindery, east wall"}),
                        &Installation::title},
    choice_field<&Installation::units>(text(
        "units", {"The units of the text output; left out, those the file uses most.", "metric"})),
};

constexpr std::array site_fields{
    Field<Site>{
        quantity(
            "altitude",
            altitude,
            {"Height above the sea; thin air carries less draft.", "310 m", DefaultId::altitude_m}),
        &Site::altitude_m},
    Field<Site>{quantity("air_pressure",
                         air_pressure,
                         {"Absolute air pressure at the place; left out, it follows from the "
                          "altitude.",
                          "980 hPa"}),
                &Site::air_pressure_pa},
    Field<Site>{
        quantity(
            "attic_temperature",
            zone_temperature,
            {"Air temperature around parts in the zone attic.", "5 degC", DefaultId::attic_share}),
        &Site::attic_temperature_k},
    Field<Site>{
        quantity(
            "chase_temperature",
            zone_temperature,
            {"Air temperature around parts in the zone chase.", "12 degC", DefaultId::chase_share}),
        &Site::chase_temperature_k},
    Field<Site>{quantity("air_inlet",
                         inlet,
                         {"Opening that lets in air from outdoors; 0 cm2 for none.", "80 cm2"}),
                &Site::air_inlet_m2},
    Field<Site>{whole(quantity("flue_shared_by",
                               heaters,
                               {"How many heaters use the flue, this one counted.", "1"})),
                &Site::flue_shared_by},
    Field<Site>{
        quantity("flue_other_area",
                 inlet,
                 {"Areas of the other heaters' connectors on the flue, together.", "180 cm2"}),
        &Site::flue_other_area_m2},
    Field<Site>{quantity("months_since_inspection",
                         months,
                         {"Months since somebody of the trade looked at flue and pipe; 0 for new "
                          "work.",
                          "8"}),
                &Site::months_since_inspection},
    Field<Site>{whole(quantity("year_fitted", year, {"The year the chimney is built in.", "2024"})),
                &Site::year_fitted},
    Field<Site>{text("tight_house", {"Whether the house is built tight against drafts.", "false"}),
                &Site::tight_house},
    choice_field<&Site::shelter>(text(
        "shelter",
        {"What the heater stands in. A house has a pressure of its own, and so has a workshop or "
         "cabin of one room, whose house is that room. In an open shed or outdoors the air "
         "round heater and run is that of the weather. Left out, a house.",
         "house"})),
    choice_field<&Site::rules>(text("rules",
                                    {"Whose rules of installation to check the file against; left "
                                     "out, us in a file with US units, else none.",
                                     "us"})),
    choice_field<&Site::top_position>(
        text("top_position",
             {"How the wind meets the chimney top. Clear: well over the ridge and all that is "
              "near; near ridge: in the eddies of the roof; adverse: below the ridge or beside a "
              "higher wall, tree or slope. Left out, wind neither helps nor harms.",
              "clear"})),
};

constexpr std::array room_fields{
    Field<Room>{quantity("volume", room_volume, {"Air in the room.", "55 m3"}), &Room::volume_m3},
    Field<Room>{
        quantity("temperature",
                 room_temperature,
                 {"Air temperature in the room.", "19 degC", DefaultId::room_temperature_k}),
        &Room::temperature_k},
    Field<Room>{quantity("pressure",
                         room_pressure,
                         {"Pressure in the room minus that outdoors at the height of the outlet; "
                          "an exhaust fan makes it negative, and a negative one takes from the "
                          "draft. Where it is given, `house` is not used. Holds with the fire "
                          "burning and out, with fans and fire as they are.",
                          "-1 Pa"}),
                &Room::pressure_pa},
    Field<Room>{quantity("pressure_burning",
                         room_pressure,
                         {"The same while the fire burns, where it differs.", "-3 Pa"}),
                &Room::pressure_burning_pa},
    Field<Room>{quantity("pressure_idle",
                         room_pressure,
                         {"The same with no fire, where it differs.", "0 Pa"}),
                &Room::pressure_idle_pa},
    Field<Room>{
        quantity("humidity",
                 share,
                 {"Relative humidity in the room.", "45 %", DefaultId::relative_humidity_room}),
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
        quantity("wind",
                 wind,
                 {"Wind at the height of the chimney top.", "2 m/s", DefaultId::wind_speed_m_s}),
        &Weather::wind_m_s},
    Field<Weather>{
        quantity("humidity",
                 share,
                 {"Relative humidity outdoors.", "80 %", DefaultId::relative_humidity_outdoor}),
        &Weather::relative_humidity},
    Field<Weather>{quantity("room_temperature",
                            room_temperature,
                            {"Air temperature in the room in this weather, where it differs from "
                             "`room.temperature`.",
                             "12 degC"}),
                   &Weather::room_temperature_k},
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
