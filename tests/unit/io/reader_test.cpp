#include "catch.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/fields/fields.hpp"

#include <algorithm>
#include <fmt/format.h>

using namespace fluewright;

namespace {

/// The smallest file that reads, with room for more keys in each of its objects.
std::string
file_with(std::string_view appliance, std::string_view run, std::string_view rest = "") {
    return fmt::format(
        "{{\"appliance\": {{\"type\": \"stove\"{}}},\n\"run\": [{}]{}}}", appliance, run, rest);
}

constexpr std::string_view one_pipe = R"({"part": "straight", "up": "4 m", "diameter": "150 mm"})";

/// The one fault of a text in which `@` marks where it has to be reported.
Fault only_fault(std::string text) {
    const auto mark = text.find('@');
    REQUIRE(mark != std::string::npos);
    text.erase(mark, 1);
    const auto before = text.substr(0, mark);
    const auto line_start = before.rfind('\n') + 1; // npos + 1 is 0
    const auto result = read_installation(text);
    REQUIRE_FALSE(result.has_value());
    INFO(text << '\n' << diagnostics_text(result.error()));
    REQUIRE(result.error().size() == 1);
    CHECK(result.error().front().line == 1 + std::count(before.begin(), before.end(), '\n'));
    CHECK(result.error().front().column == static_cast<int>(mark - line_start) + 1);
    return result.error().front().fault;
}

} // namespace

TEST_CASE("a plain installation reads into SI", "[reader]") {
    constexpr std::string_view text = R"(// the bindery
{
  "title": "Bindery, iron heater on the east wall",
  "site": {
    "altitude": "310 m",
    "weather": [{"name": "frost", "outdoor_temperature": "-12 degC", "wind": "2 m/s"},
                {"name": "mild", "outdoor_temperature": "12 degC"}],
    "room": {"temperature": "19 degC", "pressure": "-1 Pa"}
  },
  "appliance": {
    "type": "stove", "fuel": {"name": "beech", "moisture": "18 %"},
    "outlet": {"diameter": "180 mm", "height": "0.75 m"},
    "burn_rate": {"low": "1.1 kg/h", "high": "3.8 kg/h"},
    "efficiency": "68 %", "draft_needed": "12 Pa ± 1 Pa", "air_ratio": 2.2,
    "door": {"width": "420 mm", "height": "300 mm"}
  },
  "run": [
    {"part": "straight", "up": "1.2 m", "diameter": "6 in", "wall": "single-wall steel",
     "zone": "room"},
    {"part": "elbow", "angle": "90 deg", "build": "gored"},
    {"part": "straight", "across": "0.8 m", "rise": "17 mm"},
    {"part": "tee", "cleanout": true},
    {"part": "straight", "up": "4.5 m", "wall": "insulated 25 mm", "zone": "outdoors"},
    {"part": "cap", "screen": "12 mm"} /* the end */
  ],
  "observed": [{"smoke": "joints", "state": "high fire"},
               {"draft": "3 Pa", "at": "outlet"},
               {"surface_temperature": "190 degC", "at": 1}]
}
)";
    const auto result = read_installation(text);
    REQUIRE(result.has_value());
    const auto& read = *result;
    CHECK(read.title == "Bindery, iron heater on the east wall");
    CHECK(read.site.altitude_m == 310.0);
    REQUIRE(read.site.weather.size() == 2);
    CHECK(*read.site.weather[0].outdoor_temperature_k == Approx(261.15));
    CHECK(read.site.room.pressure_pa == -1.0);
    CHECK(read.appliance.fuel.name == "beech");
    CHECK(*read.appliance.burn_rate_kg_s.low == Approx(1.1 / 3600.0));
    CHECK(*read.appliance.burn_rate_kg_s.high == Approx(3.8 / 3600.0));
    CHECK_FALSE(read.appliance.efficiency.low);
    CHECK(*read.appliance.efficiency.high == Approx(0.68));
    CHECK(read.appliance.air_ratio.high == 2.2);
    REQUIRE(read.run.size() == 6);
    CHECK(*read.run[0].diameter_m == Approx(0.1524));
    CHECK(read.run[3].cleanout == true);
    CHECK(*read.run[5].mesh_m == Approx(0.012));
    CHECK(read.observed[2].at == "1");
    CHECK(read.us_quantities == 1);
    CHECK(read.metric_quantities > 10);
    REQUIRE(read.tolerances.size() == 1);
    CHECK(read.tolerances[0].pointer == "/appliance/draft_needed/high");
    CHECK(read.tolerances[0].half_width == Approx(1.0));
}

TEST_CASE("a fuel may be named without braces", "[reader]") {
    const auto result = read_installation(file_with(R"(, "fuel": "oak")", one_pipe));
    REQUIRE(result.has_value());
    CHECK(result->appliance.fuel.name == "oak");
}

TEST_CASE("a byte order mark is skipped and takes no column", "[reader]") {
    CHECK(read_installation("\xEF\xBB\xBF" + file_with("", one_pipe)).has_value());
    only_fault("\xEF\xBB\xBF" + file_with("", one_pipe, R"(, @"titel": "x")"));
}

TEST_CASE("unknown keys are faults with the nearest key of their object", "[reader]") {
    auto fault = only_fault(file_with(R"(, @"efficency": "70 %")", one_pipe));
    CHECK(fault.pointer == "/appliance/efficency");
    CHECK(fault.message == "`efficency` is not a key of `appliance`");
    CHECK(fault.found == "\"efficency\"");
    CHECK(fault.help == "did you mean `efficiency`?");
    CHECK(fault.allowed.find("type, insert, name, burn_rate") == 0);

    fault = only_fault(file_with("", R"({"part": "straight", @"up_m": "1 m", "up": "2 m"})"));
    CHECK(fault.help == "write `up`; a unit goes into the value");

    fault = only_fault(file_with(R"(, "burn_rate": {@"hi": "3 kg/h"})", one_pipe));
    CHECK(fault.pointer == "/appliance/burn_rate/hi");
    CHECK(fault.allowed == "low, high");

    fault = only_fault(file_with(R"(, @"xyzzy": 1)", one_pipe));
    CHECK(fault.help.empty());
}

TEST_CASE("a key of another kind of part says where it belongs", "[reader]") {
    const auto fault =
        only_fault(file_with("", R"({"part": "straight", "up": "2 m", @"angle": "90 deg"})"));
    CHECK(fault.message == "`angle` is not a key of the part `straight`");
    CHECK(fault.help == "it belongs to elbow or tee");
}

TEST_CASE("a key that stands one object too high says where it belongs", "[reader]") {
    auto fault = only_fault(file_with("", one_pipe, R"(, @"rules": "uk")"));
    CHECK(fault.help == "it is a key of `site`");
    fault = only_fault(file_with(R"(, @"shelter": "house")", one_pipe));
    CHECK(fault.help == "it is a key of `site`");
    // What is but a letter off is named first.
    fault = only_fault(file_with(R"(, @"clearance": "1 m")", one_pipe));
    CHECK(fault.help == "did you mean `clearances`? As written it is a key of `run`");
    // Parts and stock both have a wall: none is named.
    fault = only_fault(file_with(R"(, @"wall": "black pipe")", one_pipe));
    CHECK(fault.help.find("it is a key") == std::string::npos);
}

TEST_CASE("unknown words are faults with the nearest word and the list", "[reader]") {
    auto fault = only_fault(file_with("", R"({"part": @"strait", "up": "2 m"})"));
    CHECK(fault.pointer == "/run/0/part");
    CHECK(fault.message == "`strait` is not a known part");
    CHECK(fault.found == "\"strait\"");
    CHECK(fault.help == "did you mean `straight`?");
    CHECK(fault.allowed.find("straight, elbow, tee") == 0);

    fault = only_fault(file_with(R"(, "fuel": {"name": @"birhc"})", one_pipe));
    CHECK(fault.pointer == "/appliance/fuel/name");
    CHECK(fault.message == "`birhc` is not a known fuel");
    CHECK(fault.found == "\"birhc\"");
    CHECK(fault.help == "did you mean `birch`?");

    fault = only_fault(
        file_with("", R"({"part": "straight", "up": "2 m", "wall": @"single-wal steel"})"));
    CHECK(fault.help == "did you mean `single-wall steel`?");
}

TEST_CASE("an unknown fuel named without braces is found where it stands", "[reader]") {
    const auto fault = only_fault(file_with(R"(, "fuel": @"birhc")", one_pipe));
    CHECK(fault.pointer == "/appliance/fuel");
    CHECK(fault.found == "\"birhc\"");
}

TEST_CASE("a name of the file's own is known", "[reader]") {
    CHECK(read_installation(file_with(R"(, "fuel": "peat sods")",
                                      one_pipe,
                                      R"(, "fuels": {"peat sods": {"group": "coal"}})"))
              .has_value());
}

TEST_CASE("a bare number shows how to write it", "[reader]") {
    auto fault = only_fault(file_with("", R"({"part": "straight", "up": @1.2})"));
    CHECK(fault.pointer == "/run/0/up");
    CHECK(fault.message == "`up` is a bare number and lacks its unit");
    CHECK(fault.found == "1.2");
    CHECK(fault.help.find(R"(write "up": "1.2 m")") == 0);

    fault = only_fault(file_with(R"(, "outlet": {"diameter": @150})", one_pipe));
    CHECK(fault.help.find(R"(write "diameter": "150 mm")") == 0);
}

TEST_CASE("a wrong unit shows the right ones", "[reader]") {
    const auto fault = only_fault(file_with(R"(, "draft_needed": @"12 kg")", one_pipe));
    CHECK(fault.pointer == "/appliance/draft_needed");
    CHECK(fault.found == "\"12 kg\"");
    CHECK(fault.allowed == accepted_units(Kind::pressure));
    CHECK_FALSE(fault.help.empty());
}

TEST_CASE("values out of range show the range in the units typed", "[reader]") {
    auto fault = only_fault(file_with(R"(, "outlet": {"diameter": @"150 in"})", one_pipe));
    CHECK(fault.pointer == "/appliance/outlet/diameter");
    CHECK(fault.found == "\"150 in\"");
    CHECK(fault.message.find("`diameter` is outside 2 in to ") == 0);
    CHECK(fault.help == "did you mean \"150 mm\"?");

    fault = only_fault(file_with(R"(, "outlet": {"diameter": @"1200 mm"})", one_pipe));
    CHECK(fault.message == "`diameter` is outside 50 mm to 1 m");

    fault = only_fault(file_with(R"(, "fuel": {"name": "oak", "moisture": @"71 %"})", one_pipe));
    CHECK(fault.pointer == "/appliance/fuel/moisture");
    CHECK(fault.message == "`moisture` is outside 0 % to 70 % wet");

    for (const auto* length : {"-1 m", "0 m", "101 m"}) {
        fault = only_fault(
            file_with("", fmt::format(R"({{"part": "straight", "up": @"{}"}})", length)));
        CHECK(fault.pointer == "/run/0/up");
        CHECK(fault.message.find("`up` is not above 0 ") == 0);
    }
    fault = only_fault(file_with(R"(, "air_ratio": @0.5)", one_pipe));
    CHECK(fault.message == "`air_ratio` is outside 1 to 200");
    CHECK(
        read_installation(file_with(R"(, "outlet": {"diameter": "50 mm"})", one_pipe)).has_value());
    CHECK(read_installation(file_with(R"(, "outlet": {"diameter": "1 m"})", one_pipe)).has_value());
}

TEST_CASE("values of the wrong JSON type are faults", "[reader]") {
    auto fault = only_fault(file_with("", one_pipe, ", \"title\": @3"));
    CHECK(fault.message == "`title` must be a text, not a number");
    CHECK(fault.found == "3");
    fault = only_fault(file_with("", R"({"part": "tee", "cleanout": @"yes"})"));
    CHECK(fault.message == "`cleanout` must be true or false, not a text");
    CHECK(fault.help == "write \"cleanout\": true");
    fault = only_fault(file_with(R"(, "outlet": @"180 mm")", one_pipe));
    CHECK(fault.message == "`outlet` must be an object in braces, not a text");
    fault = only_fault(file_with(R"(, "draft_needed": @null)", one_pipe));
    CHECK(fault.help == "leave the key out where the value is not known");
    fault = only_fault(R"({"appliance": {"type": "stove"}, "run": @{}})");
    CHECK(fault.message == "`run` must be a list in square brackets, not an object");
    fault = only_fault("@[]");
    CHECK(fault.message == "an installation is an object in braces");
}

TEST_CASE("missing keys name their object and show a line", "[reader]") {
    auto fault = only_fault(R"(@{"run": [{"part": "straight", "up": "1 m"}]})");
    CHECK(fault.message == "an installation lacks the key `appliance`");
    fault = only_fault(R"(@{"appliance": {"type": "stove"}})");
    CHECK(fault.message == "an installation lacks the key `run`");
    CHECK(fault.help == R"(add "run": [{"part": "straight", "up": "1.2 m"}])");
    fault = only_fault(fmt::format("{{\"appliance\": @{{}}, \"run\": [{}]}}", one_pipe));
    CHECK(fault.pointer == "/appliance");
    CHECK(fault.message == "`appliance` lacks the key `type`");
    CHECK(fault.help == "add \"type\": \"stove\"");
    fault = only_fault(file_with("", R"(@{"up": "1 m"})"));
    CHECK(fault.pointer == "/run/0");
    CHECK(fault.message == "an entry of `run` lacks the key `part`");
    fault = only_fault(R"({"appliance": {"type": "stove"}, "run": @[]})");
    CHECK(fault.message == "the run has no parts");
}

TEST_CASE("many faults come at once in the order of the text", "[reader]") {
    const auto result = read_installation(
        file_with(R"(, "efficiency": "1,5 %", "nmae": 1)", R"({"part": "straight", "up": 3},
 {"part": "cap"}, {"part": "elbow", "build": "sharp"})"));
    REQUIRE_FALSE(result.has_value());
    std::vector<std::string> pointers;
    for (const auto& diagnostic : result.error()) {
        pointers.push_back(diagnostic.fault.pointer);
    }
    CHECK(pointers
          == std::vector<std::string>{
              "/appliance/efficiency", "/appliance/nmae", "/run/0/up", "/run/1", "/run/2/build"});
    CHECK(result.error().back().line == 3);
}

TEST_CASE("runs that cannot be built are faults", "[reader]") {
    struct Row {
        std::string run;
        std::string pointer;
        std::string message;
    };

    const std::string up{one_pipe};
    const auto row = GENERATE_COPY(values<Row>({
        {R"(@{"part": "cap"}, )" + up, "/run/0", "a cap stands in the middle of the run"},
        {R"(@{"part": "cap", "build": "open"}, )" + up,
         "/run/0",
         "an open end stands in the middle of the run"},
        {R"(@{"part": "elbow"})", "/run/0", "an elbow with no pipe"},
        {R"(@{"part": "straight"})", "/run/0", "a straight needs one of `up`, `down` and `across`"},
        {R"(@{"part": "straight", "up": "1 m", "down": "1 m"})",
         "/run/0",
         "a straight goes only one way: `up`, `down` or `across`"},
        {R"(@{"part": "straight", "up": "1 m", "rise": "1 m"})",
         "/run/0",
         "`rise` and `slope` go with `across` only"},
        {R"(@{"part": "straight", "across": "1 m", "rise": "1 cm", "slope": "1 %"})",
         "/run/0",
         "`rise` and `slope` say the same thing twice"},
        {R"(@{"part": "straight", "up": "1 m", "diameter": "6 in", "width": "6 in"})",
         "/run/0",
         "the section is given in two ways"},
        {R"(@{"part": "straight", "up": "1 m", "width": "6 in"})",
         "/run/0",
         "a rectangular section lacks its `depth`"},
        {up + R"(, @{"part": "reducer"})", "/run/1", "the reducer lacks the size of its far end"},
        {up + R"(, @{"part": "obstruction"})",
         "/run/1",
         "the obstruction does not say how much it blocks"},
        {up + R"(, @{"part": "fitting"})", "/run/1", "the part does not say which fitting it is"},
    }));
    CAPTURE(row.run);
    const auto fault = only_fault(file_with("", row.run));
    CHECK(fault.pointer == row.pointer);
    CHECK(fault.message == row.message);
    CHECK_FALSE(fault.help.empty());
}

TEST_CASE("things of the file's own are checked for sense", "[reader]") {
    auto fault =
        only_fault(file_with("",
                             one_pipe,
                             ",\n\"fuels\": {\"a/b\": @{\"group\": \"wood\", \"carbon\": \"80 %\", "
                             "\"oxygen\": \"40 %\"}}"));
    CHECK(fault.pointer == "/fuels/a~1b");
    CHECK(fault.message == "the parts of the fuel add up to 120.0 %");
    fault = only_fault(file_with("", one_pipe, ",\n\"walls\": {\"w\": @{}}"));
    CHECK(fault.message == "the wall has neither layers nor a thermal resistance");
    fault = only_fault(file_with("", one_pipe, ",\n\"observed\": [{\"at\": @7}]"));
    CHECK(fault.message == "`7` is not a place on the run");
    CHECK(fault.allowed == "outlet, chimney top, or a part from 1 to 1");
    fault =
        only_fault(file_with(R"(, "burn_rate": @{"low": "3 kg/h", "high": "2 kg/h"})", one_pipe));
    CHECK(fault.message == "the burn rate at low fire is above that at high fire");
}
