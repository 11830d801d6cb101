// Many installations out of one file, and their way through a batch.
#include "../catch.hpp"
#include "session.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

using Catch::Matchers::Contains;
using nlohmann::json;
using session::run;
using session::sound_file;

namespace {

std::vector<json> answers_in(const std::string& text) {
    std::vector<json> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) {
        lines.push_back(json::parse(line));
    }
    return lines;
}

} // namespace

TEST_CASE("every variation is answered by a batch under its id", "[vary]") {
    const auto made =
        run({"vary", "-", "--over", "height=6..9m:4", "--over", "outdoor=-5, 5degC"}, sound_file());
    REQUIRE(made.status == 0);
    CHECK(made.err.empty());
    const auto files = answers_in(made.out);
    REQUIRE(files.size() == 8);
    const auto answers = answers_in(
        run({"batch", "-", "--format", "ndjson", "--fields", "id,outcome,height_m"}, made.out).out);
    REQUIRE(answers.size() == 8);
    for (std::size_t i = 0; i < files.size(); ++i) {
        CHECK(answers[i]["id"] == files[i]["id"]);
        const std::string height = std::to_string(6 + i / 2);
        CHECK(answers[i]["id"]
              == "layout height=" + height + "m outdoor=" + (i % 2 == 0 ? "-5degC" : "5degC"));
        CHECK(answers[i]["outcome"] != "fault");
        CHECK(answers[i]["height_m"].get<double>()
              == Approx(6.0 + static_cast<double>(i / 2)).epsilon(1e-6));
    }
}

TEST_CASE("values between two others are written as one would type them", "[vary]") {
    // 4 m less a share of 3.8 m, and 0 degF to 10 degF in fifths: no binary fractions, nor kelvins.
    const auto made =
        run({"vary", "-", "--over", "height=6.1..6.9m:9", "--over", "outdoor=0..10degF:6"},
            sound_file());
    REQUIRE(made.status == 0);
    for (const auto& file : answers_in(made.out)) {
        const std::string id = file["id"];
        CAPTURE(id);
        for (std::size_t at = 0; at < id.size();) {
            const std::size_t end = std::min(id.find_first_not_of("0123456789.", at), id.size());
            CHECK(end - at < 6);
            at = end + 1;
        }
    }
}

TEST_CASE("samples are the same for the same seed", "[vary]") {
    const auto samples = [](const char* seed) {
        return run({"vary",
                    "-",
                    "--over",
                    "height=6..9m",
                    "--over",
                    "moisture=12..25%",
                    "--samples",
                    "20",
                    "--seed",
                    seed},
                   sound_file());
    };
    CHECK(answers_in(samples("1").out).size() == 20);
    CHECK(samples("1").out == samples("1").out);
    CHECK(samples("1").out != samples("2").out);
}

TEST_CASE("what vary cannot do is told", "[vary]") {
    const auto refused = [](std::vector<std::string> more) {
        std::vector<std::string> words{"vary", "-"};
        words.insert(words.end(), more.begin(), more.end());
        const auto outcome = run(words, sound_file());
        CHECK(outcome.status == 2);
        CHECK(outcome.out.empty());
        return outcome.err;
    };
    CHECK_THAT(refused({}), Contains("--over"));
    CHECK_THAT(refused({"--over", "hight=3..5m"}), Contains("did you mean `height`?"));
    CHECK_THAT(refused({"--over", "height=3..5m", "--over", "height=6m"}), Contains("twice"));
    CHECK_THAT(refused({"--over", "height=3..5 kg"}), Contains("kg"));
    CHECK_THAT(refused({"--over", "height=3..5m", "--samples", "0"}), Contains("--samples"));
    CHECK_THAT(refused({"--over",
                        "height=3..5m:1000",
                        "--over",
                        "moisture=10..20%:1000",
                        "--over",
                        "outdoor=0..9degC:1000"}),
               Contains("--samples"));
}

TEST_CASE("variations that cannot be built are counted, the others written", "[vary]") {
    const auto made = run({"vary", "-", "--over", "height=0.1, 6m"}, sound_file());
    CHECK(made.status == 1);
    CHECK(answers_in(made.out).size() == 1);
    CHECK_THAT(made.err, Contains("1 of 2"));
}

TEST_CASE("sizes, pairs and likelihoods come from the command line", "[vary]") {
    const auto sizes = run({"vary", "-", "--over", "diameter=trade 5..8 in"}, sound_file());
    REQUIRE(sizes.status == 0);
    CHECK(answers_in(sizes.out).size() == 4);
    const auto pairs =
        run({"vary", "-", "--over", "height=6,7 m & outdoor=-5,5 degC"}, sound_file());
    CHECK(answers_in(pairs.out).size() == 2);
    const auto drawn = run({"vary",
                            "-",
                            "--over",
                            "moisture=18 % sd 3 %",
                            "--over",
                            "height=6..7..9 m",
                            "--samples",
                            "5"},
                           sound_file());
    CHECK(answers_in(drawn.out).size() == 5);
    const auto grid = run({"vary", "-", "--over", "height=6..7..9 m"}, sound_file());
    CHECK(grid.status == 2);
    CHECK(grid.err.find("use --samples N") != std::string::npos);
    const auto odd =
        run({"vary", "-", "--over", "height=6,7,8 m & outdoor=-5,5 degC"}, sound_file());
    CHECK(odd.status == 2);
    CHECK(odd.err.find("go together") != std::string::npos);
}

TEST_CASE("words go through a batch and come back as words", "[vary]") {
    const auto made =
        run({"vary", "-", "--over", "fuel=oak, pine", "--over", "height=6,7 m"}, sound_file());
    REQUIRE(made.status == 0);
    const auto answers = answers_in(run({"batch",
                                         "-",
                                         "--format",
                                         "ndjson",
                                         "--fields",
                                         "id,outcome",
                                         "--values",
                                         "fuel, cap,moisture"},
                                        made.out)
                                        .out);
    REQUIRE(answers.size() == 4);
    CHECK(answers[0]["id"] == "layout fuel=oak height=6m");
    CHECK(answers[0]["fuel"] == "oak");
    CHECK(answers[3]["fuel"] == "pine");
    CHECK((answers[0]["cap"].is_string() || answers[0]["cap"].is_null()));
    const auto wrong = run({"vary", "-", "--over", "fuel=oka,pine"}, sound_file());
    CHECK(wrong.status == 2);
    CHECK_THAT(wrong.err, Contains("did you mean `oak`?"));
    CHECK_THAT(run({"batch", "-", "--format", "csv", "--values", "color"}, made.out).err,
               Contains("names no number or word"));
}

TEST_CASE("a Sobol sequence is required for with samples, and a spread that is cut says so",
          "[vary]") {
    const auto sobol = [](const char* samples) {
        return run({"vary",
                    "-",
                    "--over",
                    "height=6..9m",
                    "--over",
                    "moisture=10 % sd 8 %",
                    "--sequence",
                    "sobol",
                    "--samples",
                    samples},
                   sound_file());
    };
    const auto few = answers_in(sobol("10").out);
    const auto many = answers_in(sobol("20").out);
    REQUIRE(few.size() == 10);
    CHECK(few[9]["run"] == many[9]["run"]);
    CHECK_THAT(sobol("10").err, Contains("moisture") && Contains("left out"));
    CHECK(run({"vary", "-", "--over", "height=6,7 m", "--sequence", "sobol"}, sound_file()).status
          == 2);
}

TEST_CASE("a method that does not hold for a vent under pressure says so in its row", "[batch]") {
    const std::string file = R"({"appliance": {"type": "stove", "fuel": "wood pellets",
        "outlet": {"diameter": "2 in", "height": "12 in"}, "burn_rate": "3 lb/h", "efficiency": "80 %",
        "draft_needed": "-60 Pa", "gas_flow": "5 g/s", "gas_temperature": "150 degC"},
        "site": {"weather": [{"name": "frost", "outdoor_temperature": "-10 degC"}]},
        "run": [{"part": "straight", "across": "14 in", "diameter": "2 in", "wall": "pellet vent",
        "zone": "room"}, {"part": "tee", "zone": "outdoors"}, {"part": "straight", "up": "1 ft"},
        {"part": "cap", "build": "plain"}]})";
    std::string line = file;
    line.erase(std::remove(line.begin(), line.end(), '\n'), line.end());
    const auto rows = answers_in(run({"batch",
                                      "-",
                                      "--format",
                                      "ndjson",
                                      "--method",
                                      "en13384",
                                      "--fields",
                                      "outcome,error,method_met,method_why"},
                                     line + '\n')
                                     .out);
    REQUIRE(rows.size() == 1);
    CHECK(rows[0]["error"] == "");
    CHECK(rows[0]["method_met"].is_null());
    CHECK_THAT(rows[0]["method_why"].get<std::string>(),
               Contains("does not hold") && Contains("positive pressure"));
}

TEST_CASE("the table of a batch tells of the method, and its status counts it", "[batch]") {
    const std::string file = R"({"id": "calm", "site": {"weather": [{"name": "mild",
        "outdoor_temperature": "10 degC"}]}, "appliance": {"type": "stove", "fuel": "beech",
        "outlet": {"diameter": "150 mm", "height": "0.7 m"}, "burn_rate": "2.5 kg/h",
        "draft_needed": "12 Pa"}, "run": [{"part": "straight", "up": "1.2 m",
        "diameter": "150 mm", "wall": "single-wall steel", "zone": "room"}, {"part": "straight",
        "up": "8 m", "wall": "insulated 25 mm", "zone": "outdoors"}]})";
    const auto batch = [&](const std::string& text, std::vector<std::string> more) {
        std::string line = text;
        line.erase(std::remove(line.begin(), line.end(), '\n'), line.end());
        std::vector<std::string> typed{"batch", "-", "--rules", "none", "--require", "draft"};
        typed.insert(typed.end(), more.begin(), more.end());
        return run(typed, line + '\n');
    };
    const std::vector<std::string> european{"--method", "en13384"};
    CHECK(batch(file, {}).status == 0);
    CHECK(batch(file, {}).out.find("handbook") == std::string::npos);
    const auto met = batch(file, {"--method", "handbook"});
    CAPTURE(met.out);
    CHECK(met.status == 0);
    CHECK_THAT(met.out, Contains("  handbook: met; least draft to spare +"));
    // The same run with its top in an adverse zone: in calm air the physics passes all the same.
    const std::string adverse =
        session::file_with(file, "\"site\": {", "\"site\": {\"top_position\": \"adverse\", ");
    CHECK(batch(adverse, {}).status == 0);
    const auto not_met = batch(adverse, european);
    CAPTURE(not_met.out, not_met.err);
    CHECK(not_met.status == 1);
    CHECK_THAT(not_met.out,
               Contains("  en13384: not met: PZ >= PZe at low fire") && Contains("spare -"));
    CHECK_THAT(not_met.err, Contains("1 pass") && Contains("1 not met by the method"));
}
