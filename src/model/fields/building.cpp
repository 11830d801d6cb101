#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>
#include <numbers>

namespace fluewright {

namespace {

using namespace field_limits;

/// The rows of data/building_elements.csv that have a U value; a test holds the two together.
constexpr std::array<std::string_view, 13> elements{"solid brick 9 in",
                                                    "insulated cavity wall",
                                                    "empty cavity wall",
                                                    "sheet",
                                                    "concrete wall 4 in",
                                                    "concrete floor",
                                                    "timber floor",
                                                    "flat roof 25 mm",
                                                    "flat roof 50 mm",
                                                    "single glazing",
                                                    "double glazing",
                                                    "roller door",
                                                    "insulated roller door"};

constexpr Limits building_volume{Kind::volume, 1.0, 100000.0, "huts to halls"};
constexpr Limits air_changes{Kind::leakage, 0.0, 20.0 / 3600.0, "tight houses to open sheds"};
constexpr Limits area{Kind::area, 0.0, 10000.0, "parts of buildings", true};
constexpr Limits u_value{Kind::transmittance, 0.05, 10.0, "thick wool to bare sheet"};
constexpr Limits resistance{Kind::thermal_resistance, 0.1, 20.0, "bare sheet to thick wool"};
constexpr Limits turned{
    Kind::angle, std::numbers::pi / 36.0, std::numbers::pi, "elbows that can be made"};
constexpr Limits piece{Kind::length, 0.05, 20.0, "pieces of pipe"};

constexpr std::array building_fields{
    Field<Building>{quantity("volume", building_volume, {"Air inside.", "140 m3"}),
                    &Building::volume_m3},
    Field<Building>{quantity("air_changes",
                             air_changes,
                             {"How often an hour the wind and leaks change that air.", "1 ach"}),
                    &Building::air_changes_per_s},
    Field<Building>{quantity("outdoor_temperature",
                             outdoor_temperature,
                             {"Air outdoors on the cold day to heat for.", "-10 degC"}),
                    &Building::outdoor_temperature_k},
    Field<Building>{quantity("indoor_temperature",
                             room_temperature,
                             {"Air wanted inside; left out, that of the room.", "19 degC"}),
                    &Building::indoor_temperature_k},
};

constexpr std::array building_part_fields{
    Field<BuildingPart>{text("name", {"What it is called in the report.", "north wall"}),
                        &BuildingPart::name},
    Field<BuildingPart>{
        choice("element",
               elements,
               {"A kind of wall, roof, floor or opening with a known U value.", "sheet"}),
        &BuildingPart::element},
    Field<BuildingPart>{required(quantity("area", area, {"Its area.", "24 m2"})),
                        &BuildingPart::area_m2},
    Field<BuildingPart>{
        quantity("u_value", u_value, {"Heat through it per area and degree.", "0.6 W/m2K"}),
        &BuildingPart::u_value_w_m2k},
    Field<BuildingPart>{
        quantity("thermal_resistance",
                 resistance,
                 {"Resistance (R value) from air to air, instead of a U value.", "2 m2K/W"}),
        &BuildingPart::thermal_resistance_m2k_w},
};

constexpr std::array stock_fields{
    choice_field<&StockPiece::part>(text("part", {"What it is; left out, a straight.", "adapter"})),
    Field<StockPiece>{
        name_from("wall", Words::walls, {"What the pipe is made of.", "single-wall steel"}),
        &StockPiece::wall},
    Field<StockPiece>{
        quantity("diameter", flue_side, {"Inside diameter; left out, any.", "150 mm"}),
        &StockPiece::diameter_m},
    Field<StockPiece>{
        quantity(
            "to_diameter",
            flue_side,
            {"Inside diameter at the chimney end of a reducer, increaser or adapter.", "180 mm"}),
        &StockPiece::to_diameter_m},
    Field<StockPiece>{
        quantity("length", piece, {"Length of a straight, which must have one.", "1 m"}),
        &StockPiece::length_m},
    Field<StockPiece>{
        quantity("shortest", piece, {"Shortest length of a telescoping piece.", "0.3 m"}),
        &StockPiece::shortest_m},
    Field<StockPiece>{quantity("angle", turned, {"By how much an elbow turns.", "90 deg"}),
                      &StockPiece::angle_rad},
    choice_field<&StockPiece::heater_end>(
        text("heater_end", {"Its end towards the heater.", "crimped"}),
        words_between(PipeEnd::plain, PipeEnd::locking)),
    choice_field<&StockPiece::chimney_end>(
        text("chimney_end", {"Its end towards the chimney top.", "plain"}),
        words_between(PipeEnd::plain, PipeEnd::locking)),
    Field<StockPiece>{
        whole(quantity(
            "count", count, {"How many are at hand; left out, a length the shop sells.", "2"})),
        &StockPiece::count},
};

} // namespace

template <>
std::span<const Field<Building>> fields() {
    return building_fields;
}

template <>
std::span<const Field<BuildingPart>> fields() {
    return building_part_fields;
}

template <>
std::span<const Field<StockPiece>> fields() {
    return stock_fields;
}

} // namespace fluewright
