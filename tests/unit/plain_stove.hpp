#pragma once

#include "../catch.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <string>
#include <utility>

/// A stove of 150 mm that wants 12 Pa, and runs for it, as a person would type them.
namespace fluewright {

/// `site` and `appliance` are further keys, each with a comma after it.
inline Installation stove_with(const std::string& run,
                               const std::string& site = "",
                               const std::string& appliance = "") {
    const std::string needed =
        appliance.find("draft_needed") == std::string::npos ? R"("draft_needed": "12 Pa",)" : "";
    const std::string door = appliance.find("\"door\"") == std::string::npos
                                 ? R"("door": {"width": "350 mm", "height": "280 mm"},)"
                                 : "";
    auto read = read_installation(
        R"({"site": {)" + site + R"("weather": [{"name": "frost", "outdoor_temperature": "-5 degC"},
              {"name": "mild", "outdoor_temperature": "12 degC"}]},
             "appliance": {"type": "stove", "fuel": {"name": "beech", "moisture": "18 %"},)"
        + appliance + needed + door + R"("outlet": {"diameter": "150 mm", "height": "0.7 m"},
             "burn_rate": {"low": "1 kg/h", "high": "2.5 kg/h"}},
             "run": [)"
        + run + "]}");
    if (!read) {
        FAIL(diagnostics_text(read.error()));
    }
    return std::move(read).value();
}

inline const std::string pipe_in_room =
    R"({"part": "straight", "up": "1.2 m", "diameter": "150 mm", "wall": "single-wall steel",
        "zone": "room", "clearance": "900 mm"})";

/// Factory-built chimney outdoors, so high, with further keys.
inline std::string chimney_of(const std::string& up, const std::string& more = "") {
    return R"(, {"part": "straight", "up": ")" + up
           + R"(", "wall": "insulated 25 mm", "zone": "outdoors", "clearance": "100 mm",
               "listed_clearance": "50 mm")"
           + more + R"(}, {"part": "cap", "build": "plain"})";
}

} // namespace fluewright
