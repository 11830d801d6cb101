#include "fluewright/model/fields/fields.hpp"
#include "limits.hpp"

#include <array>
#include <numbers>

namespace fluewright {

namespace {

using namespace field_limits;

constexpr Limits pitch{
    Kind::angle, 0.0, 80.0 * std::numbers::pi / 180.0, "flat roofs to the steepest"};
constexpr Limits roof_distance{Kind::length, 0.0, 100.0, "roofs of houses and halls"};
constexpr Limits above_roof{Kind::length, 0.0, 30.0, "chimneys this program is made for"};
constexpr Limits below_top{Kind::length, -100.0, 100.0, "houses and trees"};

constexpr std::array roof_fields{
    Field<Roof>{quantity("pitch", pitch, {"Slope of the roof against the level.", "35 deg"}),
                &Roof::pitch_rad},
    Field<Roof>{quantity("distance_to_ridge",
                         roof_distance,
                         {"Level distance from the chimney to the ridge.", "2.4 m"}),
                &Roof::distance_to_ridge_m},
    Field<Roof>{
        quantity(
            "top_above_roof",
            above_roof,
            {"Height of the chimney top over the highest place where the chimney leaves the roof.",
             "1.1 m"}),
        &Roof::top_above_roof_m},
    choice_field<&Roof::covering>(text("covering", {"What the roof is covered with.", "tiles"})),
    Field<Roof>{text("braced", {"Whether the part above the roof is braced.", "false"}),
                &Roof::braced},
};

constexpr std::array near_fields{
    choice_field<&NearThing::what>(
        text("what",
             {"A building or part of one, an opening (window, door, vent, roof "
              "light) or a tree.",
              "building"})),
    Field<NearThing>{
        quantity("distance", roof_distance, {"Level distance from the chimney top.", "2.2 m"}),
        &NearThing::distance_m},
    Field<NearThing>{
        quantity(
            "below_top",
            below_top,
            {"How far its top lies under the chimney top; negative where it is taller.", "0.8 m"}),
        &NearThing::below_top_m},
};

constexpr std::array alarm_fields{
    Field<Alarms>{text("carbon_monoxide", {"Whether there is a carbon monoxide alarm.", "true"}),
                  &Alarms::carbon_monoxide},
    Field<Alarms>{text("smoke", {"Whether there are smoke alarms.", "true"}), &Alarms::smoke},
    Field<Alarms>{quantity("distance",
                           distance,
                           {"Level distance from the heater to the carbon monoxide alarm.", "2 m"}),
                  &Alarms::distance_m},
};

constexpr std::array clearance_fields{
    Field<Clearances>{quantity("side", distance, {"To the side.", "900 mm"}), &Clearances::side_m},
    Field<Clearances>{quantity("back", distance, {"Behind.", "900 mm"}), &Clearances::back_m},
    Field<Clearances>{quantity("corner", distance, {"From a corner to the walls.", "900 mm"}),
                      &Clearances::corner_m},
    Field<Clearances>{quantity("front", distance, {"Before the door.", "1.2 m"}),
                      &Clearances::front_m},
    Field<Clearances>{quantity("above", distance, {"Over the top.", "1.2 m"}),
                      &Clearances::above_m},
    choice_field<&Clearances::shield>(
        text("shield", {"Shield between the heater and the wall.", "sheet steel"})),
    Field<Clearances>{
        quantity("shield_gap", short_distance, {"Air gap behind that shield.", "25 mm"}),
        &Clearances::shield_gap_m},
};

constexpr std::array floor_fields{
    Field<FloorProtection>{quantity("front", distance, {"Before the door.", "450 mm"}),
                           &FloorProtection::front_m},
    Field<FloorProtection>{quantity("sides", distance, {"Past each side.", "300 mm"}),
                           &FloorProtection::sides_m},
    Field<FloorProtection>{quantity("back", distance, {"Past the back.", "300 mm"}),
                           &FloorProtection::back_m},
    choice_field<&FloorProtection::build>(text("build", {"What it is made of.", "slab"})),
};

constexpr std::array hearth_wall_fields{
    Field<HearthWall>{quantity("distance", distance, {"From the heater to that wall.", "100 mm"}),
                      &HearthWall::distance_m},
    Field<HearthWall>{
        quantity("thickness", distance, {"Thickness of its solid masonry.", "100 mm"}),
        &HearthWall::thickness_m},
};

} // namespace

template <>
std::span<const Field<Roof>> fields() {
    return roof_fields;
}

template <>
std::span<const Field<NearThing>> fields() {
    return near_fields;
}

template <>
std::span<const Field<Alarms>> fields() {
    return alarm_fields;
}

template <>
std::span<const Field<Clearances>> fields() {
    return clearance_fields;
}

template <>
std::span<const Field<FloorProtection>> fields() {
    return floor_fields;
}

template <>
std::span<const Field<HearthWall>> fields() {
    return hearth_wall_fields;
}

} // namespace fluewright
