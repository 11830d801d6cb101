#include "catch.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <nlohmann/json.hpp>

using namespace fluewright;

namespace {

constexpr std::string_view faulty = R"({
  "appliance": {"type": "stove",
    "fuel": {"name": "oka", "moisture": "18 %"}},
  "run": [
    {"part": "straight", "up": 1.2},
    {"part": "cap"},
    {"part": "elbow"}
  ]
}
)";

} // namespace

TEST_CASE("diagnostics read as a person expects", "[diagnostic]") {
    const auto result = read_installation(faulty, "shed.json");
    REQUIRE_FALSE(result.has_value());
    auto diagnostics = result.error();
    REQUIRE(diagnostics.size() == 3);
    diagnostics[0].fault.allowed = "oak, pine"; // the catalog's own list grows
    CHECK(diagnostics_text(diagnostics) ==
          R"(shed.json:3:22: error: `oka` is not a known fuel
  at      /appliance/fuel/name
  found   "oka"
  allowed oak, pine
  help    did you mean `oak`?

shed.json:5:32: error: `up` is a bare number and lacks its unit
  at      /run/0/up
  found   1.2
  allowed m, cm, mm, um, in, ft, yd
  help    write "up": "1.2 m"

shed.json:6:5: error: a cap stands in the middle of the run
  at      /run/1
  help    it is the last part; move it to the end, or take it away

3 errors; nothing was computed
)");
}

TEST_CASE("diagnostics as JSON keep all fields", "[diagnostic]") {
    const auto result = read_installation(faulty, "shed \xFF.json");
    REQUIRE_FALSE(result.has_value());
    const auto whole =
        nlohmann::json::parse(diagnostics_json(result.error(), "check", {})).at("result");
    REQUIRE(whole["errors"].size() == 3);
    const auto& second = whole["errors"][1];
    CHECK(second["line"] == 5);
    CHECK(second["column"] == 32);
    CHECK(second["pointer"] == "/run/0/up");
    CHECK(second["found"] == "1.2");
    CHECK(whole["errors"][2]["found"].is_null());
}

TEST_CASE("no more than twenty are shown", "[diagnostic]") {
    const Diagnostics many(27, {"a.json", 1, 1, {"", "something is wrong", "", "", ""}});
    const auto text = diagnostics_text(many);
    CHECK(text.find("and 7 more\n27 errors; nothing was computed\n") != std::string::npos);
    CHECK(diagnostics_text({many[0]}).find("\n1 error; nothing was computed\n")
          != std::string::npos);
}

TEST_CASE("later faults find their place by pointer", "[diagnostic]") {
    const Faults faults{{"/run/2/wall", "no wall", "", "", ""},
                        {"/appliance/fuel/moisture", "too wet", "", "", ""}};
    const auto located = locate(faults, faulty, "shed.json");
    REQUIRE(located.size() == 2);
    CHECK(located[0].fault.message == "too wet");
    CHECK(located[0].line == 3);
    CHECK(located[0].column == 41);
    CHECK(located[0].fault.found == "\"18 %\"");
    CHECK(located[1].line == 7);
    CHECK(located[1].column == 5);
    CHECK(located[1].fault.found.empty());
}

TEST_CASE("text from a file cannot steer the terminal", "[diagnostic]") {
    const auto result = read_installation("{\"a\\u001b[2J\": 1, \"b\": \"\xC2\x9B\", \"\x7F\": 2}");
    REQUIRE_FALSE(result.has_value());
    const auto text = diagnostics_text(result.error());
    CHECK(text.find('\x1B') == std::string::npos);
    CHECK(text.find('\x7F') == std::string::npos);
    CHECK(text.find("`a\\u001b[2J` is not a key of an installation") != std::string::npos);
}
