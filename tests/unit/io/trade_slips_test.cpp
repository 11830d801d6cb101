#include "catch.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "io/input/trade_words.hpp"

#include <algorithm>
#include <array>
#include <string>

using namespace fluewright;

namespace {

std::string installation(std::string_view heater, std::string_view part, std::string_view site) {
    return R"({"site": {"weather": [{"name": "frost", "outdoor_temperature": "-5 degC"}])"
           + std::string{site} + R"(}, "appliance": {"type": "stove")" + std::string{heater}
           + R"(}, "run": [{"part": "straight", "up": "5 m", "diameter": "150 mm")"
           + std::string{part} + "}]}";
}

Diagnostics faults_of(const std::string& text) {
    const auto read = read_installation(text);
    return read ? Diagnostics{} : read.error();
}

std::string help_of(const std::string& text) {
    const auto faults = faults_of(text);
    REQUIRE(faults.size() == 1);
    return faults.front().fault.help;
}

} // namespace

TEST_CASE("words of the trade are answered with the key or word that is meant", "[reader]") {
    const auto part = [](std::string_view more) { return help_of(installation("", more, "")); };
    CHECK(part(R"(, "length": "2 m")") == "write `up` (upright) or `across` (horizontal)");
    CHECK(part(R"(, "horizontal": "2 m")") == "write `across`");
    CHECK(part(R"(, "outside_diameter": "6 in")")
          == "write `diameter`, the inside diameter; the thickness is that of the `wall`");
    const auto of_part = [](std::string_view typed) {
        return help_of(R"({"appliance": {"type": "stove"}, "run": [{"part": ")" + std::string{typed}
                       + R"("}]})");
    };
    CHECK(of_part("pipe") == "did you mean `straight`?");
    CHECK(of_part("rain cap") == "did you mean `cap`?");
    CHECK(of_part("barometric damper") == "did you mean `draft regulator`?");
    CHECK(of_part("Bend") == "did you mean `elbow`?");
}

TEST_CASE("a key that the glossary knows by another name is answered with it", "[reader]") {
    CHECK(help_of(R"({"appliance": {"type": "stove", "flue_collar": {"diameter": "6 in"}},
        "run": [{"part": "straight", "up": "8 ft"}]})")
          == "write `outlet`");
    CHECK(help_of(installation("", R"(, "lateral": "2 m")", "")) == "write `across`");
}

TEST_CASE("a word of the trade has a row of its own only where the glossary has none", "[reader]") {
    for (const json::TradeWord& row : json::trade_words()) {
        CAPTURE(row.key, row.typed);
        const std::array choices{row.word};
        CHECK_FALSE(json::glossary_word(row.typed, choices).has_value());
    }
}

TEST_CASE("a word of the glossary means one thing", "[catalog]") {
    for (const catalog::Word& row : catalog::words()) {
        const std::string names = std::string{row.id} + '|' + std::string{row.aliases};
        for (std::size_t begin = 0; begin < names.size();) {
            const std::size_t end = std::min(names.find('|', begin), names.size());
            const std::string name = names.substr(begin, end - begin);
            begin = end + 1;
            CAPTURE(name, row.id);
            if (!name.empty()) {
                CHECK(catalog::find_word(name) == &row);
            }
        }
    }
}

TEST_CASE("a bare number is answered with a likely value in the units of the file", "[reader]") {
    const auto heater = [](std::string_view more) { return help_of(installation(more, "", "")); };
    CHECK(heater(R"(, "fuel": {"name": "oak", "moisture": 0.18})")
          == "write \"moisture\": \"18 %\"");
    CHECK(heater(R"(, "outlet": {"diameter": 150})") == "write \"diameter\": \"150 mm\"");
    CHECK(heater(R"(, "outlet": {"diameter": "150"})") == "write \"150 mm\"");
    CHECK(heater(R"(, "outlet": {"height": 0.8})") == "write \"height\": \"0.8 m\"");
    // A file in inches is answered in inches.
    CHECK(help_of(R"({"site": {"altitude": "900 ft"}, "appliance": {"type": "stove",
        "firebox": {"width": "18 in"}, "outlet": {"diameter": 6}},
        "run": [{"part": "straight", "up": "8 ft"}]})")
          == "write \"diameter\": \"6 in\"");
}

TEST_CASE("a value that belongs under another key is told so", "[reader]") {
    CHECK(help_of(installation(R"(, "burn_rate": "40000 Btu/h")", "", ""))
          == "write \"heat_input\": \"40000 Btu/h\" for heat in the fuel, or `heat_output` for "
             "useful heat");
    CHECK(help_of(installation("", R"(, "thickness": "24 ga")", "")) == "write \"gauge\": 24");
    CHECK(help_of(installation("", R"(, "thickness": "24 gauge")", "")) == "write \"gauge\": 24");
    // Liner by its short name is a wall of the catalog.
    CHECK(faults_of(installation("", R"(, "wall": "flex")", "")).empty());
}

TEST_CASE("a value out of range is answered with the unit that was likely meant", "[reader]") {
    CHECK(help_of(
              R"({"appliance": {"type": "stove"}, "run": [{"part": "straight", "up": "3800 m"}]})")
          == "did you mean \"3800 mm\"?");
}

TEST_CASE("keys and words of earlier versions go on being read", "[reader]") {
    const auto old_file = read_installation(
        installation(R"(, "floor": "burnable")", "", R"(, "roof": {"mouth_above_roof": "1 m"})"));
    const auto new_file = read_installation(
        installation(R"(, "floor": "combustible")", "", R"(, "roof": {"top_above_roof": "1 m"})"));
    REQUIRE(old_file);
    REQUIRE(new_file);
    CHECK(old_file->site.roof.top_above_roof_m == new_file->site.roof.top_above_roof_m);
    CHECK(old_file->site.roof.top_above_roof_m == Given{1.0});
    CHECK(old_file->appliance.floor == new_file->appliance.floor);

    struct Pair {
        std::string_view before;
        std::string_view now;
    };

    const auto pair = GENERATE(values<Pair>({{"free burn", "air control open"},
                                             {"door open, high fire", "reloading on a high fire"},
                                             {"door open, embers", "reloading on embers"},
                                             {"standing", "idle"}}));
    const auto seen = [](std::string_view state, std::string_view at) {
        return read_installation(
            R"({"appliance": {"type": "stove"}, "run": [{"part": "straight", "up": "5 m"}],
                "observed": [{"draft": "3 Pa", "state": ")"
            + std::string{state} + R"(", "at": ")" + std::string{at} + R"("}]})");
    };
    const auto before = seen(pair.before, "mouth");
    const auto now = seen(pair.now, "chimney top");
    REQUIRE(before);
    REQUIRE(now);
    CHECK(before->observed.front().state == now->observed.front().state);
    CHECK(before->observed.front().at == now->observed.front().at);
    CHECK(before->observed.front().state.has_value());
}

TEST_CASE("a bare number gets the unit that makes a usual value of it", "[reader]") {
    const auto answered = [](std::string_view us_or_metric,
                             std::string_view key,
                             std::string_view heater,
                             std::string_view part,
                             std::string_view site) {
        const std::string run = us_or_metric == "us" ? R"("up": "8 ft", "diameter": "6 in")"
                                                     : R"("up": "2.4 m", "diameter": "150 mm")";
        const std::string rate =
            us_or_metric == "us" ? R"("burn_rate": "6 lb/h")" : R"("burn_rate": "2.5 kg/h")";
        const std::string help =
            help_of(R"({"site": {)" + std::string{site} + R"(}, "appliance": {"type": "stove", )"
                    + rate + std::string{heater} + R"(}, "run": [{"part": "straight", )" + run
                    + R"(, "zone": "outdoors"}, {"part": "straight")"
                    + (part.empty() ? R"(, "up": "1 m")" : std::string{part}) + "}]}");
        const std::string prefix = "write \"" + std::string{key} + "\": ";
        return help.starts_with(prefix) ? help.substr(prefix.size()) : help;
    };
    CHECK(answered("us", "altitude", "", "", R"("altitude": 3800)") == "\"3800 ft\"");
    CHECK(answered("metric", "altitude", "", "", R"("altitude": 3800)") == "\"3800 m\"");
    const auto outdoors = [](std::string_view value) {
        return R"("weather": [{"name": "day", "outdoor_temperature": )" + std::string{value} + "}]";
    };
    CHECK(answered("metric", "outdoor_temperature", "", "", outdoors("10"))
          == "\"10 degC\" or \"10 degF\"");
    CHECK(answered("us", "outdoor_temperature", "", "", outdoors("20"))
          == "\"20 degF\" or \"20 degC\"");
    CHECK(answered("us", "outdoor_temperature", "", "", outdoors("-5"))
          == "\"-5 degF\" or \"-5 degC\"");
    CHECK(answered("us", "outdoor_temperature", "", "", outdoors("\"-5\""))
          == "write \"-5 degF\" or \"-5 degC\"");
    CHECK(answered("us", "temperature", "", "", R"("room": {"temperature": 20})") == "\"20 degC\"");
    CHECK(answered("us", "temperature", "", "", R"("room": {"temperature": 70})") == "\"70 degF\"");
    CHECK(answered("metric", "draft_needed", R"(, "draft_needed": 0.05)", "", "")
          == "\"0.05 inH2O\"");
    CHECK(answered("metric", "draft_needed", R"(, "draft_needed": 12)", "", "") == "\"12 Pa\"");
    CHECK(answered("us", "up", "", R"(, "up": 14)", "") == "\"14 ft\"");
    CHECK(answered("us", "up", "", R"(, "up": 4)", "") == "\"4 ft\"");
    CHECK(answered("us", "up", "", R"(, "up": 36)", "") == "\"36 in\"");
    CHECK(answered("metric", "up", "", R"(, "up": 1200)", "") == "\"1200 mm\"");
    CHECK(answered("us", "across", "", R"(, "across": 0.6)", "") == "\"0.6 ft\"");
    CHECK(answered("metric", "across", "", R"(, "across": 0.6)", "") == "\"0.6 m\"");
    CHECK(answered("metric", "diameter", R"(, "outlet": {"diameter": 6})", "", "") == "\"6 in\"");
    CHECK(answered("us", "wind", "", "", R"("weather": [{"name": "day", "wind": 15}])")
          == "\"15 mph\"");
    CHECK(answered("us", "thickness", "", R"(, "up": "2 ft", "thickness": 24)", "")
          == "write \"gauge\": 24 for sheet of that gauge, or \"24 mm\"");
    CHECK(answered("metric", "gas_temperature", R"(, "gas_temperature": 300)", "", "")
          == "\"300 degC\" or \"300 degF\"");
}

TEST_CASE("keys that strangers write are answered with those of the file", "[reader]") {
    const auto heater = [](std::string_view more) { return help_of(installation(more, "", "")); };
    CHECK(heater(R"(, "BTU": 35000)")
          == "write `heat_output` for useful heat, or `heat_input` for heat in the fuel");
    CHECK(heater(R"(, "draft": "12 Pa")") == "write `draft_needed`");
    const auto site = [](std::string_view more) { return help_of(installation("", "", more)); };
    CHECK(site(R"(, "outdoor_temperature": "-5 degC")")
          == "write \"weather\": [{\"name\": \"frost\", \"outdoor_temperature\": \"-10 degC\"}]");
    CHECK(site(R"(, "fan": true)")
          == "under `site`, write \"house\": {\"fans\": [{\"flow\": \"150 m3/h\"}]}");
    CHECK(help_of(R"({"site": {"weather": [{"name": "a", "temperature": "1 degC"}]},
        "appliance": {"type": "stove"}, "run": [{"part": "straight", "up": "5 m"}]})")
          == "write `outdoor_temperature`");
    const auto part = [](std::string_view more) { return help_of(installation("", more, "")); };
    CHECK(part(R"(, "wall_thickness": "24 ga")") == "write `thickness`, or `gauge` for sheet");
    CHECK(part(R"(, "gauge": "24 ga")") == "write \"gauge\": 24");
    const auto of_part = [](std::string_view typed) {
        return help_of(R"({"appliance": {"type": "stove"}, "run": [{"part": ")" + std::string{typed}
                       + R"("}]})");
    };
    CHECK(of_part("raincap") == "did you mean `cap`?");
    CHECK(of_part("base tee") == "did you mean `tee`?");
    CHECK(of_part("key damper") == "did you mean `damper`?");
    CHECK(of_part("flex") == R"(write "part": "straight", "wall": "flexible liner")");
    CHECK(faults_of(R"({"appliance": {"type": "wood burner"}, "run": [{"part": "straight"}]})")
              .front()
              .fault.help
          == "did you mean `stove`?");
    CHECK(faults_of(R"({"appliance": {"type": "stove"},
        "run": [{"part": "straight", "up": 4 ft}]})")
              .front()
              .fault.help
          == "put a value with its unit in quotes: \"4 ft\"");
    CHECK(faults_of(installation("", R"(, "wall": "twin wall")", "")).empty());
}
