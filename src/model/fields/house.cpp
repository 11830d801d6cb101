#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr double per_hour = 1.0 / 3600.0;
constexpr std::string_view houses = "houses people live and work in";

constexpr Limits storeys{Kind::number, 1.0, 10.0, houses};
constexpr Limits shell_height{Kind::length, 2.0, 50.0, houses};
constexpr Limits level{Kind::length, 0.0, 50.0, houses};
constexpr Limits volume{Kind::volume, 10.0, 20000.0, houses};
constexpr Limits air_changes{Kind::leakage, 0.05 * per_hour, 60.0 * per_hour, houses};
constexpr Limits leakage_area{Kind::area, 1e-4, 5.0, houses};
constexpr Limits exponent{Kind::number, 0.5, 1.0, "a square-law hole to a fine crack"};
constexpr Limits fan_flow{Kind::volume_flow, -3.0, 3.0, "fans in houses and workshops"};
constexpr Limits opening_area{Kind::area, 1e-4, 10.0, "inlets and windows"};

constexpr std::array house_fields{
    Field<House>{quantity("stories",
                          storeys,
                          {"Stories within the heated shell; a plain number. Gives the height "
                           "where that is left out.",
                           "2"}),
                 &House::storeys},
    Field<House>{quantity("height",
                          shell_height,
                          {"Height of the heated shell, cellar floor to top ceiling.",
                           "5.4 m",
                           DefaultId::house_height_m}),
                 &House::height_m},
    Field<House>{quantity("appliance_level",
                          level,
                          {"Height of the floor the appliance stands on over the lowest floor of "
                           "the shell.",
                           "0 m",
                           DefaultId::house_appliance_level_m}),
                 &House::appliance_level_m},
    Field<House>{
        quantity("volume", volume, {"Heated volume.", "300 m3", DefaultId::house_volume_m3}),
        &House::volume_m3},
    Field<House>{quantity("air_changes_at_50_pa",
                          air_changes,
                          {"Air changes of the pressure test at 50 Pa.",
                           "3 1/h",
                           DefaultId::house_air_changes_50_pa}),
                 &House::air_changes_50_pa_1_s},
    Field<House>{quantity("leakage_area",
                          leakage_area,
                          {"Area of one opening that leaks as the whole shell does at 4 Pa, "
                           "instead of air changes.",
                           "400 cm2"}),
                 &House::leakage_area_m2},
    Field<House>{quantity("leakage_exponent",
                          exponent,
                          {"Exponent of pressure in the leakage of the shell; a plain number.",
                           "0.65",
                           DefaultId::house_leak_exponent}),
                 &House::leakage_exponent},
    Field<House>{quantity("neutral_level",
                          level,
                          {"Height over the lowest floor at which the house is at outdoor "
                           "pressure with fans off and no fire; left out, it follows from leaks "
                           "spread evenly between top and bottom.",
                           "2.6 m"}),
                 &House::neutral_level_m},
    Field<House>{
        text("outdoor_air",
             {"Whether the fire takes its air from outdoors through a duct of its own.", "true"}),
        &House::outdoor_air},
};

constexpr std::array fan_fields{
    Field<Fan>{text("name", {"What the fan is called in the report.", "cooker hood"}), &Fan::name},
    Field<Fan>{required(quantity(
                   "flow",
                   fan_flow,
                   {"Air it takes out of the house; negative where it blows in.", "75 L/s"})),
               &Fan::flow_m3_s},
};

constexpr std::array opening_fields{
    Field<HouseOpening>{text("name", {"What the opening is called in the report.", "air inlet"}),
                        &HouseOpening::name},
    Field<HouseOpening>{
        required(quantity("area", opening_area, {"Clear area of the opening.", "150 cm2"})),
        &HouseOpening::area_m2},
    choice_field<&HouseOpening::side>(
        text("side",
             {"The side of the house it is on, as the wind blows; left out, "
              "lee.",
              "lee"})),
    Field<HouseOpening>{quantity("height",
                                 level,
                                 {"Height of its center above the floor the appliance stands on; "
                                  "left out, that of the outlet.",
                                  "0.4 m"}),
                        &HouseOpening::height_m},
};

} // namespace

template <>
std::span<const Field<House>> fields() {
    return house_fields;
}

template <>
std::span<const Field<Fan>> fields() {
    return fan_fields;
}

template <>
std::span<const Field<HouseOpening>> fields() {
    return opening_fields;
}

} // namespace fluewright
