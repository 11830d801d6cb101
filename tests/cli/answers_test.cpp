// What every answer says of fire and of the house, whatever it was asked.
#include "../catch.hpp"
#include "session.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using session::file_with;
using session::run;

namespace {

/// A stove whose bare pipe has no clearance in the file: nobody can decide fire.
std::string open_file() {
    return R"({"site": {"weather": [{"name": "cold", "outdoor_temperature": "-5 degC"}]},
        "appliance": {"type": "stove", "fuel": "beech",
            "outlet": {"diameter": "150 mm", "height": "0.8 m"}, "burn_rate": "2.5 kg/h"},
        "run": [{"part": "straight", "up": "1.5 m", "diameter": "150 mm",
                 "wall": "single-wall steel", "zone": "room", "passes": "nothing"},
            {"part": "straight", "up": "4 m", "wall": "insulated 25 mm", "zone": "outdoors"},
            {"part": "cap"}]})";
}

} // namespace

TEST_CASE("what counts and is not decided is no pass for any command", "[check]") {
    const std::string decided = file_with(
        open_file(), R"("passes": "nothing")", R"("passes": "nothing", "clearance": "460 mm")");
    const session::Folder folder;
    const std::string open = folder.write("open.json", open_file());
    const std::string shut = folder.write("decided.json", decided);
    for (const std::vector<std::string>& command :
         {std::vector<std::string>{"check", "FILE"},
          {"report", "FILE"},
          {"batch", "FILE"},
          {"size", "FILE"},
          {"compare", "FILE", "FILE"},
          {"improve", "FILE"},
          {"sweep", "FILE", "--over", "height=4..6m:2"}}) {
        const auto status = [&](const std::string& file, const std::string& required) {
            std::vector<std::string> words = command;
            std::replace(words.begin(), words.end(), std::string{"FILE"}, file);
            if (!required.empty()) {
                words.insert(words.end(), {"--require", required});
            }
            return run(words).status;
        };
        CAPTURE(command.front());
        CHECK(status(open, "fire") == 1);
        CHECK(status(open, "fire,draft") == 1);
        CHECK(status(open, "") == 1); // fire counts where nothing is chosen
        CHECK(status(open, "draft") == 0);
        CHECK(status(shut, "fire") == 0);
        CHECK(status(shut, "") == 0);
    }
    CHECK_THAT(run({"check", open, "--require", "draft"}).out,
               StartsWith("This run passes: nothing that counts is short.")
                   && Contains("Not decided, and not counted: fire and carbon monoxide."));
}

TEST_CASE("every answer that one acts upon says what leaves fire open", "[check]") {
    const std::string said =
        "1 check is undetermined, as the file does not say; first: `clearance` "
        "of part 1; required: single-wall pipe at least 400 mm";
    for (const std::vector<std::string>& command : {std::vector<std::string>{"check", "-"},
                                                    {"size", "-"},
                                                    {"diagnose", "-"},
                                                    {"warmup", "-"},
                                                    {"parts", "-"},
                                                    {"improve", "-"},
                                                    {"sweep", "-", "--over", "height=4..6m:2"}}) {
        CAPTURE(command.front());
        CHECK_THAT(session::in_one_line(run(command, open_file()).out), Contains(said));
        const std::string decided = file_with(
            open_file(), R"("passes": "nothing")", R"("passes": "nothing", "clearance": "460 mm")");
        CHECK_THAT(run(command, decided).out, !Contains("Not decided"));
    }
}

TEST_CASE("an idle downdraft is answered by what the file says of the house", "[check]") {
    const auto told = [](const std::string& house) {
        const std::string file =
            R"({"site": {)" + house + R"("weather": [{"outdoor_temperature": "-12 degC"}]},
            "appliance": {"type": "stove", "fuel": "beech", "burn_rate": "2.5 kg/h",
                          "outlet": {"diameter": "150 mm", "height": "0.8 m"}},
            "run": [{"part": "straight", "up": "1.2 m", "diameter": "150 mm",
                     "wall": "single-wall steel", "zone": "room"},
                {"part": "elbow", "angle": "90 deg"},
                {"part": "straight", "across": "0.9 m", "slope": "20 mm/m"},
                {"part": "tee", "wall": "insulated 25 mm", "zone": "outdoors"},
                {"part": "straight", "up": "4.5 m"}, {"part": "cap"}]})";
        const std::string text = session::in_one_line(run({"check", "-", "--details"}, file).out);
        const std::size_t at = text.find("is the only cause: ");
        REQUIRE(at != std::string::npos);
        return text.substr(at + 19, text.find(',', at) - at - 19);
    };
    CHECK(told("") == "let air in");
    CHECK(told(R"("house": {"fans": [{"name": "hood", "flow": "5 L/s"}]}, )")
          == "stop fans and let air in");
    CHECK(told(R"("room": {"pressure": "-3 Pa"}, )")
          == "let air in and stop any fan that takes it out");
}

TEST_CASE("what presses smoke out of the joints is named with its cure", "[check]") {
    const std::string shut =
        file_with(open_file(),
                  R"({"part": "straight", "up": "4 m")",
                  R"({"part": "damper", "blade_angle": "90 deg", "free_area": "1 %"},
                                          {"part": "straight", "up": "4 m")");
    const std::string shut_answer = run({"check", "-"}, shut).out;
    CHECK_THAT(shut_answer, Contains("First: Begin with damper 2, where"));
    CHECK_THAT(shut_answer, Contains("(damper 2:"));
    // Wind that is not all of it is still where one begins: there is nothing to clear above.
    const std::string windy =
        file_with(file_with(open_file(),
                            R"("outdoor_temperature": "-5 degC")",
                            R"("outdoor_temperature": "7 degC", "wind": "16 m/s")"),
                  R"("site": {)",
                  R"("site": {"top_position": "adverse", )");
    CHECK_THAT(run({"check", "-"}, windy).out, Contains("First: The wind pushes down"));
}
