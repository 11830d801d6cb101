#include "../changed_json.hpp"
#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <fstream>
#include <nlohmann/json.hpp>

using namespace fluewright;
using nlohmann::json;

namespace {

json dangers() {
    std::ifstream file{PROJECT_SOURCE_DIR "/tests/unit/advice/danger_cases.json"};
    return json::parse(file);
}

Assessment assessed(const json& file, const std::string& body) {
    const ReadResult read = read_installation(file.dump());
    INFO(file.dump());
    if (!read) {
        FAIL(diagnostics_text(read.error()));
    }
    AssessOptions options;
    options.size_search = false;
    options.spread = false;
    options.rules = body;
    const auto made = assess(*read, options);
    REQUIRE(made.has_value());
    return *made;
}

/// How an installation is told for what it is: not met, or open with the figure that is asked.
enum class Answered { silent, open, not_met };

Answered told(const Assessment& a, const json& matters) {
    Answered best = Answered::silent;
    for (const CheckResult& result : a.checks) {
        const bool of_it = std::any_of(matters.begin(), matters.end(), [&](const json& matter) {
            return result.check->matter->id == std::string{matter};
        });
        if (!of_it || result.check->local) {
            continue;
        }
        if (result.outcome == CheckOutcome::not_met) {
            return Answered::not_met;
        }
        const bool asks = result.outcome == CheckOutcome::undetermined && !result.asked.empty();
        best = asks ? Answered::open : best;
    }
    return best;
}

} // namespace

TEST_CASE("no body is silent about a dangerous installation", "[danger]") {
    const json table = dangers();
    CHECK(table["installations"].size() >= 30);
    for (const json& danger : table["installations"]) {
        for (const std::string body : {"us", "uk", "ca", "au", "de"}) {
            const json file =
                with_changes(table["bases"][std::string{danger["base"]}], danger["changes"]);
            const Assessment a = assessed(file, body);
            INFO(std::string{danger["what"]} << ", by " << body);
            const Answered now = told(a, danger["matters"]);
            CHECK(now != Answered::silent);
            const json certain = danger.value("not_met_in", json::array());
            const bool must_fail =
                std::find(certain.begin(), certain.end(), json(body)) != certain.end();
            CHECK((!must_fail || now == Answered::not_met));
            // What burns a house down ends with status 1 and is the first line of the answer.
            if (must_fail && danger.value("fire", false)) {
                CHECK_FALSE(a.works());
                CHECK(a.verdict.of(Harm::fire).outcome == HarmOutcome::falls_short);
                CHECK(a.sentence.find("fire and carbon monoxide") != std::string::npos);
            }
        }
    }
}

TEST_CASE("of distances that several ask, the greatest is told first", "[danger]") {
    const json table = dangers();
    json file = table["bases"]["straight"];
    file["run"][0]["clearance"] = "2 in";
    for (const auto& [body, asked_m] : {std::pair{"us", 0.4572}, std::pair{"ca", 0.45}}) {
        const Assessment a = assessed(file, body);
        INFO(body);
        const auto found =
            std::find_if(a.findings.begin(), a.findings.end(), [](const Finding& finding) {
                return finding.matter->id == "clearance-too-small";
            });
        REQUIRE(found != a.findings.end());
        CHECK(found->limit.value_or(0.0) == Approx(asked_m));
        CHECK(found->sources.size() > 1);
    }
}

TEST_CASE("an elbow that hardly turns is questioned, one of 15 degrees is not", "[danger]") {
    const json table = dangers();
    const auto questioned = [&](const std::string& angle, const std::string& across) {
        json file = table["bases"]["straight"];
        const json elbow = {{"part", "elbow"}, {"angle", angle}};
        const json sloped = {{"part", "straight"}, {"across", across}, {"rise", "500 mm"}};
        json& run = file["run"];
        for (const json& part : {elbow, sloped, elbow}) {
            run.insert(run.begin() + 1, part);
        }
        const ReadResult read = read_installation(file.dump());
        REQUIRE(read);
        const auto made = assess(*read, {.size_search = false});
        REQUIRE(made);
        return std::any_of(
            made->findings.begin(), made->findings.end(), [](const Finding& finding) {
                return finding.matter->id == "unusual-input"
                       && finding.message.find("turns by") != std::string::npos;
            });
    };
    CHECK(questioned("6 deg", "53 mm"));
    CHECK_FALSE(questioned("15 deg", "134 mm"));
}

TEST_CASE("a top farther above the roof than the run is outdoors is questioned", "[danger]") {
    const auto questioned = [](const std::string& above) {
        json file = dangers()["bases"]["straight"];
        file["site"]["roof"]["top_above_roof"] = above;
        file["run"][2]["up"] = "1 m"; // all that is outdoors
        const Assessment a = assessed(file, "none");
        return std::any_of(a.findings.begin(), a.findings.end(), [](const Finding& finding) {
            return finding.matter->id == "unusual-input" && finding.place == "the roof";
        });
    };
    CHECK(questioned("1.2 m"));
    CHECK_FALSE(questioned("1.05 m"));
    CHECK_FALSE(questioned("0.9 m"));
}

TEST_CASE("clearances that have no room beside a combustible wall are questioned", "[danger]") {
    // 6 in pipe and a chimney of 25 mm of insulation: radii 3 in and about 4 in.
    const auto questioned =
        [](const std::string& across, const std::string& keeps, const json& system) {
            json file = dangers()["bases"]["stove"];
            file["run"][0]["clearance"] = keeps;
            file["run"][2]["across"] = across;
            file["run"][2]["passes"] = "wall";
            if (!system.is_null()) {
                file["run"][2]["pass_through"] = system;
            }
            file["run"][4]["clearance"] = "2 in";
            const Assessment a = assessed(file, "none");
            return std::any_of(a.findings.begin(), a.findings.end(), [](const Finding& finding) {
                return finding.matter->id == "unusual-input"
                       && finding.message.find("combustible wall") != std::string::npos;
            });
        };
    // 18 + 3 + 2 + 4 in are 27 in, and the wall has a thickness, too.
    CHECK(questioned("24 in", "18 in", "brick"));
    CHECK_FALSE(questioned("30 in", "18 in", "brick"));
    CHECK_FALSE(questioned("24 in", "14 in", "brick"));
    // A wall that does not burn keeps no clearance; of one that is not told nothing is certain.
    CHECK_FALSE(questioned("24 in", "18 in", "noncombustible wall"));
    CHECK_FALSE(questioned("24 in", "18 in", nullptr));
}
