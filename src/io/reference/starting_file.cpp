#include "fluewright/io/reference/starting_file.hpp"

#include "commented_file.hpp"

namespace fluewright {
namespace {

/// A line that ends in "@pointer" gets the meaning of that key as a comment above it; <a|b> is a in
/// metric and b in US units.
constexpr std::string_view skeleton =
    R"json(// An installation for fluewright. Comments like this one are allowed.
// A value with a unit stands in quotes: "150 mm", "6 in", "3 ft 4 1/2 in".
// A key you leave out is assumed, and the report says so. More on any key:
//   fluewright explain /appliance/draft_needed
{
  "title": "Workshop stove", @/title
  "site": {
    "altitude": "<200 m|650 ft>", @/site/altitude
    "weather": [ @/site/weather
      {"name": "frost", "outdoor_temperature": "<-10 degC|14 degF>"},
      {"name": "mild", "outdoor_temperature": "<12 degC|54 degF>"}
    ],
    "room": {
      "temperature": "<20 degC|68 degF>", @/site/room/temperature
      "pressure": "<-2 Pa|-0.008 inH2O>" @/site/room/pressure
    }
  },
  "appliance": {
    "type": "stove", @/appliance/type
    "fuel": {
      "name": "beech", @/appliance/fuel/name
      "moisture": "18 %" @/appliance/fuel/moisture
    },
    "outlet": {
      "diameter": "<150 mm|6 in>", @/appliance/outlet/diameter
      "height": "<0.8 m|31 1/2 in>" @/appliance/outlet/height
    },
    "burn_rate": { @/appliance/burn_rate
      "low": "<1.0 kg/h|2.2 lb/h>",
      "high": "<3.0 kg/h|6.6 lb/h>"
    },
    "efficiency": "70 %", @/appliance/efficiency
    "draft_needed": "<12 Pa|0.048 inH2O>", @/appliance/draft_needed
    "door": {
      "width": "<350 mm|14 in>", @/appliance/door/width
      "height": "<250 mm|10 in>", @/appliance/door/height
      "sill": "<350 mm|14 in>" @/appliance/door/sill
    }
  },
  "run": [ @/run
    // A part has the diameter, wall and zone of the part before it, unless it
    // says otherwise. Zones: room, attic, chase, outdoors.
    // `fluewright catalog walls` lists the walls.
    {
      "part": "straight",
      "up": "<1.2 m|4 ft>", @/run/up
      "diameter": "<150 mm|6 in>", @/run/diameter
      "wall": "single-wall steel", @/run/wall
      "zone": "room", @/run/zone
      "clearance": "<500 mm|20 in>" @/run/clearance
    },
    {
      "part": "elbow",
      "angle": "90 deg", @/run/angle
      "build": "gored", @/run/build
      "cleanout": true @/run/cleanout
    },
    {
      "part": "straight",
      "across": "<0.5 m|20 in>", @/run/across
      "slope": "<20 mm/m|1/4 in/ft>", @/run/slope
      "clearance": "<500 mm|20 in>"
    },
    {
      "part": "tee",
      "flow": "side", @/run/flow
      "cleanout": true,
      "wall": "insulated 25 mm"
    },
    {"part": "straight", "up": "<3 m|10 ft>"},
    {"part": "straight", "up": "<2.5 m|8 ft>", "zone": "outdoors"},
    {
      "part": "cap",
      "build": "plain"
    }
  ]
}
)json";

/// One side of every "<metric|us>".
std::string in_units(std::string_view line, UnitSystem units) {
    std::string out;
    while (!line.empty()) {
        const std::size_t open = line.find('<');
        out += line.substr(0, open);
        if (open == std::string_view::npos) {
            break;
        }
        const std::size_t middle = line.find('|', open);
        const std::size_t close = line.find('>', middle);
        out += units == UnitSystem::metric ? line.substr(open + 1, middle - open - 1)
                                           : line.substr(middle + 1, close - middle - 1);
        line.remove_prefix(close + 1);
    }
    return out;
}

} // namespace

std::string starting_file(UnitSystem units) {
    return with_meanings(in_units(skeleton, units));
}

} // namespace fluewright
