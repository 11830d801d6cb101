// What is written reads as the same installation, whoever set the values.
#include "catch.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace fluewright;

namespace {

std::string text_of(const std::filesystem::path& path) {
    std::ifstream file(path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

Installation read(std::string_view text) {
    auto result = read_installation(text);
    INFO(text);
    if (!result) {
        FAIL(diagnostics_text(result.error()));
    }
    return std::move(result).value();
}

/// How many quantities were typed in which units, and the order of keys, are facts of the file and
/// not of the installation.
Installation without_counts(Installation installation) {
    installation.us_quantities = installation.metric_quantities = 0;
    std::sort(installation.tolerances.begin(),
              installation.tolerances.end(),
              [](const Tolerance& a, const Tolerance& b) { return a.pointer < b.pointer; });
    return installation;
}

void check_round_trip(const Installation& installation) {
    const std::string text = write_installation(installation);
    const Installation again = read(text);
    CHECK(without_counts(again) == without_counts(installation));
    // Written again it is the same text: the form is settled.
    CHECK(write_installation(again) == text);
}

} // namespace

TEST_CASE("every example survives being written and read", "[writer]") {
    std::size_t count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(PROJECT_SOURCE_DIR "/examples")) {
        if (entry.path().extension() == ".json") {
            INFO(entry.path());
            check_round_trip(read(text_of(entry.path())));
            ++count;
        }
    }
    CHECK(count >= 12);
}

TEST_CASE("every number of the field tables survives", "[writer]") {
    for (const auto& entry : std::filesystem::directory_iterator(PROJECT_SOURCE_DIR "/examples")) {
        if (entry.path().extension() != ".json") {
            continue;
        }
        Installation installation = read(text_of(entry.path()));
        for (const std::string& pointer : value_pointers(installation)) {
            Installation changed = installation;
            const Slot slot = find_value(changed, pointer);
            // An odd value within the range, and not one a shorter text would stand for.
            *slot.value = slot.field->lowest
                          + (slot.field->highest - slot.field->lowest) * 0.3141592653589793;
            const std::string text = write_installation(changed);
            const auto again = read_installation(text);
            if (again) { // else the change contradicts another key, and that is another test
                INFO(pointer << '\n' << text);
                CHECK(without_counts(*again) == without_counts(changed));
            }
        }
    }
}

TEST_CASE("tolerances, names of the user's own and low fire alone survive", "[writer]") {
    const Installation installation = read(R"({
      "title": "Loft, \"north\" side",
      "site": {"room": {"temperature": "19 degC ± 2 K", "pressure": "-2 Pa ± 1 Pa"}},
      "appliance": {"type": "stove", "fuel": {"name": "peat/turf", "moisture": "22 % ± 3 %"},
        "burn_rate": {"low": "1 kg/h ± 0.1 kg/h"}, "efficiency": "70 % ± 5 %",
        "air_ratio": {"low": 2.5, "high": 1.9}},
      "fuels": {"peat/turf": {"group": "wood", "carbon": "55 % ± 1 %", "hydrogen": "6 %", "oxygen": "36 %",
        "ash": "3 %"}},
      "run": [{"part": "straight", "up": "4.2 m ± 0.1 m", "diameter": "150 mm"},
              {"part": "tee", "cleanout": false}, {"part": "obstruction", "blocked": "30 % ± 5 %"}],
      "observed": [{"smoke": "door", "at": 1}]
    })");
    REQUIRE(installation.tolerances.size() == 8);
    check_round_trip(installation);
}

TEST_CASE("a file in US units stays in them", "[writer]") {
    const std::string text =
        write_installation(read(text_of(PROJECT_SOURCE_DIR "/examples/sugar-house.json")));
    CHECK(text.find(R"("up": "13 ft")") != std::string::npos);
    CHECK(text.find(R"("diameter": "6 in")") != std::string::npos);
    CHECK(text.find(R"("outdoor_temperature": "45 degF")") != std::string::npos);
    CHECK(text.find(" mm") == std::string::npos);
    const Installation again = read(text);
    CHECK(again.us_quantities > again.metric_quantities);
}

TEST_CASE("a part stands on one line and no line is long", "[writer]") {
    const std::string text =
        write_installation(read(text_of(PROJECT_SOURCE_DIR "/examples/bindery.json")));
    CHECK(text.find("\n    {\"part\": \"cap\", \"build\": \"plain\"}\n") != std::string::npos);
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        INFO(line);
        CHECK(line.size() <= 120);
    }
}
