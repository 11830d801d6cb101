#include "cli/shell/options.hpp"
#include "fluewright/io/reference/first_plan.hpp"

/// The options of `new`: an answer each.
namespace fluewright::cli::option {

constexpr OptionInfo plan_heater{
    "--heater", "", "KIND", "what kind of heater it is", plan_heater_words};
constexpr OptionInfo plan_way{
    "--way",
    "",
    "WAY",
    "where the run goes: up through the roof, through the wall and up, into masonry",
    plan_way_words};
constexpr OptionInfo plan_fire{
    "--fire",
    "",
    "SIZE",
    "how big the fire is: heat (8 kW), fuel an hour (2.5 kg/h), the room in the firebox (40 L), or "
    "the charge of a masonry heater (15 kg)",
    {}};
constexpr OptionInfo plan_front{
    "--front", "", "SIZE", "the opening of a fireplace, width x height: 700 mm x 600 mm", {}};
constexpr OptionInfo plan_collar{
    "--collar", "", "LENGTH", "inside diameter of the flue collar", {}};
constexpr OptionInfo plan_collar_height{
    "--collar-height",
    "",
    "LENGTH",
    "height of the flue collar, or of a fireplace's throat, above the floor",
    {}};
constexpr OptionInfo plan_distance{
    "--distance", "", "LENGTH", "level, from the flue collar to the middle of the chimney", {}};
constexpr OptionInfo plan_entry{
    "--entry", "", "LENGTH", "height above the floor where the run enters wall or masonry", {}};
constexpr OptionInfo plan_flue{
    "--flue",
    "",
    "SIZE",
    "inside of the masonry chimney: a diameter, or two sides such as 200 mm x 200 mm",
    {}};
constexpr OptionInfo plan_ceiling{"--ceiling",
                                  "",
                                  "LENGTH",
                                  "height of the highest ceiling it goes through, above the floor",
                                  {}};
constexpr OptionInfo plan_roof{
    "--roof", "", "LENGTH", "height of the roof at the chimney, above the floor", {}};
constexpr OptionInfo plan_top{
    "--top", "", "LENGTH", "height of the chimney top above the floor", {}};
constexpr OptionInfo plan_pitch{"--pitch", "", "ANGLE", "slope of the roof, such as 35 deg", {}};
constexpr OptionInfo plan_ridge{
    "--ridge", "", "LENGTH", "level distance from the chimney to the ridge", {}};

constexpr OptionInfo plan_clearance{
    "--clearance", "", "LENGTH", "from single-wall pipe to the nearest combustible thing", {}};
constexpr OptionInfo plan_pass{
    "--pass-through", "", "SYSTEM", "how single-wall pipe goes through the wall", plan_pass_words};

} // namespace fluewright::cli::option
