#include "../catch.hpp"
#include "session.hpp"

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>

using Catch::Matchers::Contains;
using nlohmann::json;
using session::run;

namespace {

std::string example(const std::string& name) {
    return std::string{PROJECT_SOURCE_DIR} + "/examples/" + name + ".json";
}

std::string text_of(const std::string& file) {
    std::ifstream in(file);
    return {std::istreambuf_iterator<char>(in), {}};
}

} // namespace

TEST_CASE("what to do at once stands before all else", "[diagnose]") {
    const auto outcome = run({"diagnose", example("dye-house")});
    CHECK(outcome.status == 1);
    CHECK(outcome.err.empty());
    CHECK(outcome.out.rfind("DO THIS FIRST", 0) == 0);
    CHECK_THAT(outcome.out, Contains("Next check worth making"));
    CHECK_THAT(outcome.out, !Contains("safe"));
}

TEST_CASE("a file without observations gets its checks all the same", "[diagnose]") {
    const auto outcome = run({"diagnose", "-"}, session::sound_file());
    CHECK(outcome.status == 0);
    CHECK_THAT(outcome.out, Contains("Nothing was observed yet"));
    CHECK_THAT(outcome.out, Contains("Next check worth making"));
}

TEST_CASE("the diagnosis as JSON", "[diagnose]") {
    const auto outcome = run({"diagnose", example("tannery"), "--json"});
    CHECK(outcome.status == 1);
    const json answer = json::parse(outcome.out).at("result");
    CHECK(!answer.at("urgent").empty());
    double sum = 0.0;
    for (const json& explanation : answer.at("explanations")) {
        sum += explanation.at("probability").get<double>();
        for (const json& bearing : explanation.at("bearings")) {
            CHECK(bearing.at("seen").get<std::size_t>() < answer.at("seen").size());
        }
    }
    CHECK(sum == Approx(1.0).margin(0.06));
    const json& cause = answer.at("explanations").at(0).at("causes").at(0);
    CHECK(cause.at("size").contains("median"));
    CHECK(!answer.at("checks").empty());
    for (const json& check : answer.at("checks")) {
        CHECK(check.at("entry").is_object());
    }
}

TEST_CASE("every proposed entry can be put into the file", "[diagnose]") {
    const json answer =
        json::parse(run({"diagnose", example("net-loft"), "--json"}).out).at("result");
    const std::string file = text_of(example("net-loft"));
    const std::string key = "\"observed\": [";
    const std::size_t at = file.find(key) + key.size();
    for (const json& check : answer.at("checks")) {
        const std::string more =
            file.substr(0, at) + check.at("entry").dump() + "," + file.substr(at);
        const auto outcome = run({"diagnose", "-", "--json"}, more);
        CAPTURE(check.at("entry").dump());
        CHECK(outcome.status <= 1);
        CHECK(outcome.err.empty());
    }
}

TEST_CASE("a dialogue takes answers, slips and don't know", "[diagnose]") {
    const auto outcome =
        run({"diagnose", "--ask", example("net-loft")}, "perhaps\ndon't know\n?\nstop\n");
    CHECK(outcome.status == 1);
    CHECK_THAT(outcome.out, Contains("That was not understood"));
    CHECK_THAT(outcome.out, Contains("The whole answer so far"));
    // Nothing was answered, so there is nothing to keep.
    CHECK_THAT(outcome.out, !Contains("To keep the answers"));
}

TEST_CASE("a dialogue ends with its input", "[diagnose]") {
    const auto outcome = run({"diagnose", "--ask", example("net-loft")}, "");
    CHECK(outcome.status == 1);
    CHECK_THAT(outcome.out, Contains("The whole answer so far"));
}

TEST_CASE("answers given can be kept in the file", "[diagnose]") {
    const auto outcome = run({"diagnose", "--ask", example("tannery")}, "yes\nstop\n");
    CHECK_THAT(outcome.out, Contains("To keep the answers"));
    CHECK_THAT(outcome.out, Contains("\"observed\": ["));
}

// Written as a sweep asks on the telephone: is anybody in danger, what does it do, since when.
TEST_CASE("a dialogue that knows nothing asks for the alarm first", "[diagnose]") {
    const session::Folder folder;
    const std::string file = folder.file("nothing_seen.json");
    json written = json::parse(R"({"appliance": {"type": "stove", "fuel": "oak",
        "outlet": {"diameter": "6 in"}, "burn_rate": "6 lb/h"},
        "run": [{"part": "straight", "up": "16 ft", "diameter": "6 in",
                 "wall": "insulated 25 mm", "zone": "outdoors"}]})");
    std::ofstream(file) << written.dump();
    const auto outcome = run({"diagnose", "--ask", file}, "yes\nroars\nover weeks\nstop\n");
    const std::size_t alarm = outcome.out.find("Has a carbon monoxide alarm sounded");
    const std::size_t out = outcome.out.find("get everybody out");
    const std::size_t what = outcome.out.find("What does it do?");
    const std::size_t since = outcome.out.find("Since when?");
    CHECK(alarm < out);
    CHECK(out < what);
    CHECK(what < since);
    CHECK(since != std::string::npos);
    CHECK_THAT(outcome.out, Contains("\"co_alarm\": true"));
    CHECK_THAT(outcome.out, Contains("\"roaring\": true"));
    CHECK_THAT(outcome.out, Contains("\"worse\": \"over weeks\""));
    const auto stopped = run({"diagnose", "--ask", file}, "maybe so\nstop\n");
    CHECK_THAT(stopped.out, Contains("is no answer to this"));
    CHECK_THAT(stopped.out, Contains("The whole answer so far"));

    written["observed"] = json::array({json{{"chimney_fire", true}}});
    std::ofstream(file) << written.dump();
    const auto refused = run({"diagnose", file}, "");
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, Contains("light no fire before a sweep has examined the flue"));
    CHECK_THAT(run({"explain", "chimney fire"}, "").out, Contains("Light no fire"));
}

TEST_CASE("a dialogue refuses what it cannot go with", "[diagnose]") {
    for (const auto& arguments :
         {std::vector<std::string>{"diagnose", "--ask", "-"},
          std::vector<std::string>{"diagnose", "--ask", "--json", example("tannery")},
          std::vector<std::string>{"diagnose", "--ask", "-o", "x", example("tannery")}}) {
        const auto outcome = run(arguments, "");
        CHECK(outcome.status == 2);
        CHECK(!outcome.err.empty());
        CHECK(outcome.out.empty());
    }
}

TEST_CASE("a cause can be explained by its id", "[diagnose]") {
    const auto outcome = run({"explain", "clogged-screen"});
    CHECK(outcome.status == 0);
    CHECK_THAT(outcome.out, Contains("a clogged screen"));
    CHECK_THAT(outcome.out, Contains("How to be sure"));
}

TEST_CASE("no check is proposed that lets expect the same of every cause", "[diagnose]") {
    for (const std::string name :
         {"ferry-office", "net-loft", "tannery", "dye-house", "weigh-house", "village-hall"}) {
        CAPTURE(name);
        const json answer = json::parse(run({"diagnose", example(name), "--json"}).out);
        const json& checks = answer.at("result").at("checks");
        CHECK_FALSE(checks.empty());
        for (const json& check : checks) {
            CAPTURE(check.dump());
            const json& expected = check.at("expected");
            CHECK(std::any_of(expected.begin(), expected.end(), [&](const json& one) {
                return one.at("answer") != expected.front().at("answer");
            }));
        }
    }
}
