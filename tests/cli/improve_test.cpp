// The commands that help to choose, as a user calls them.
#include "../catch.hpp"
#include "session.hpp"

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

using session::run;
namespace fs = std::filesystem;

namespace {

const std::string toll_house = PROJECT_SOURCE_DIR "/examples/toll-house.json";

/// A folder that goes with the test.
struct Scratch {
    fs::path folder = fs::temp_directory_path() / "fluewright_improve_test";

    Scratch() { fs::create_directories(folder); }

    ~Scratch() {
        std::error_code error;
        fs::remove_all(folder, error);
    }

    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    [[nodiscard]] std::string file(const std::string& name, const std::string& text = "") const {
        const fs::path path = folder / name;
        if (!text.empty()) {
            std::ofstream(path) << text;
        }
        return path.string();
    }
};

} // namespace

TEST_CASE("the changed file works as promised", "[improve]") {
    const Scratch scratch;
    const std::string better = scratch.file("better.json");
    const auto made = run({"improve", toll_house, "--write-plan", "1", better});
    CHECK(made.status == 0);
    CHECK(made.out.find("Line the masonry flue") == 0);
    CHECK(run({"check", toll_house, "--no-size-search"}).status == 1);
    CHECK(run({"check", better, "--no-size-search"}).status == 0);
    CHECK(made.err.find("change number 1 is written to `" + better + "`") != std::string::npos);
    // What was not changed stands as it was typed.
    std::ifstream in(better);
    std::stringstream text;
    text << in.rdbuf();
    for (const std::string_view typed :
         {R"("130 mm")", R"("15 mm")", R"("260 mm")", R"("4.0 m")"}) {
        CAPTURE(text.str(), typed);
        CHECK(text.str().find(typed) != std::string::npos);
    }
}

TEST_CASE("the numbers of the options are checked", "[improve]") {
    const Scratch scratch;
    CHECK(run({"improve", toll_house, "--most", "0"}).status == 2);
    CHECK(run({"improve", toll_house, "--most", "four"}).err.find("`four` does not do for --most")
          != std::string::npos);
    const auto lacking = run({"improve", toll_house, "--write-plan", "1"});
    CHECK(lacking.status == 2);
    CHECK(lacking.err.find("--write-plan needs") != std::string::npos);
    const auto none = run({"improve", toll_house, "--write-plan", "900", scratch.file("x.json")});
    CHECK(none.status == 2);
    CHECK(none.err.find("no change number 900") != std::string::npos);
    const auto itself = run({"improve", toll_house, "--write-plan", "1", toll_house});
    CHECK(itself.status == 2);
}

TEST_CASE("prices come from a file of the user's", "[improve]") {
    const Scratch scratch;
    const std::string prices =
        scratch.file("prices.json",
                     R"({"currency": "EUR", "prices": {"line-flue": {"fixed": 300, "per_meter": 90},
            "brisk-low-fire": 1, "raise-top": {"fixed": 150, "per_foot": 40}}})");
    const auto made = run({"improve", toll_house, "--prices", prices, "--json"});
    CHECK(made.status == 0);
    const auto answer = nlohmann::json::parse(made.out).at("result");
    CHECK(answer.at("cost_unit") == "EUR");
    CHECK(answer.at("plans").at(0).at("steps").at(0).at("remedy") == "line-flue");
    CHECK_FALSE(answer.at("unpriced").empty());

    const std::string wrong =
        scratch.file("wrong.json", R"({"currency": "EUR", "prices": {"line-fleu": 300}})");
    const auto refused = run({"improve", toll_house, "--prices", wrong});
    CHECK(refused.status == 2);
    CHECK(refused.err.find("did you mean `line-flue`?") != std::string::npos);
    CHECK(run({"improve", toll_house, "--prices", scratch.file("none.json")}).status == 3);
}

TEST_CASE("faults of the file are told as check tells them", "[improve]") {
    const auto made = run({"improve", "-"}, "{}");
    CHECK(made.status == 2);
    CHECK(made.err.find("lacks the key `appliance`") != std::string::npos);
}

TEST_CASE("a sweep asks for what it lacks", "[sweep]") {
    const auto none = run({"sweep", toll_house});
    CHECK(none.status == 2);
    CHECK(none.err.find("needs --over name=range") != std::string::npos);
    const auto bare = run({"sweep", toll_house, "--over"});
    CHECK(bare.status == 2);
    CHECK(bare.err.find("write --over NAME=RANGE") != std::string::npos);
    const auto wrong = run({"sweep", toll_house, "--over", "moistrue=10..30%"});
    CHECK(wrong.status == 2);
    CHECK(wrong.err.find("did you mean `moisture`?") != std::string::npos);
    const auto three = run({"sweep",
                            toll_house,
                            "--over",
                            "height=3..8m",
                            "--over",
                            "moisture=10..30%",
                            "--over",
                            "outdoor=0..9degC"});
    CHECK(three.status == 2);
    CHECK(run({"sweep", toll_house, "--over", "height=3..8m", "--over", "height=3..9m"}).status
          == 2);
    const auto many =
        run({"sweep", toll_house, "--over", "height=3..8m:500", "--over", "moisture=10..30%:500"});
    CHECK(many.status == 2);
    CHECK(many.err.find("at most") != std::string::npos);
}

TEST_CASE("a sweep draws into a file of its own", "[sweep]") {
    const Scratch scratch;
    const std::string chart = scratch.file("chart.svg");
    const auto made = run({"sweep",
                           toll_house,
                           "--over",
                           "moisture=12..40%:3",
                           "--over=height=4..9m:3",
                           "--format",
                           "svg",
                           "-o",
                           chart});
    CHECK(made.status == 1);
    CHECK(made.out.empty());
    CHECK(fs::file_size(chart) > 1000);
}

TEST_CASE("a comparison takes two files at least", "[compare]") {
    CHECK(run({"compare", toll_house}).status == 2);
    CHECK(run({"compare", toll_house}).err.find("from 2 to") != std::string::npos);
    const std::string bindery = PROJECT_SOURCE_DIR "/examples/bindery.json";
    const auto made = run({"compare", toll_house, bindery});
    CHECK(made.status == 0);
    CHECK(made.out.find("Take bindery: it alone") == 0);
    CHECK(run({"compare", toll_house, toll_house}).status == 1);
    const auto broken = run({"compare", toll_house, "-"}, "{}");
    CHECK(broken.status == 2);
    CHECK(broken.err.find("lacks the key `appliance`") != std::string::npos);
}
