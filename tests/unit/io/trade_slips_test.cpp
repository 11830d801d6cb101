#include "catch.hpp"
#include "fluewright/io/input/json_reader.hpp"

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
    CHECK(old_file->site.roof.mouth_above_roof_m == new_file->site.roof.mouth_above_roof_m);
    CHECK(old_file->site.roof.mouth_above_roof_m == Given{1.0});
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
