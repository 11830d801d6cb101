#include "../catch.hpp"
#include "fluewright/io/drawing/draw.hpp"
#include "session.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>

using session::run;

namespace {

bool is_svg(const std::string& text) {
    return text.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\"")
           && text.ends_with("</svg>\n");
}

std::string example_of(const std::string& name) {
    return std::string{PROJECT_SOURCE_DIR "/examples/"} + name + ".json";
}

} // namespace

TEST_CASE("draw writes a picture of every subject, and each is another") {
    std::vector<std::string> seen;
    for (const std::string_view show : fluewright::show_words) {
        const auto outcome = run({"draw", example_of("toll-house"), "--show", std::string{show}});
        INFO(show);
        CHECK(outcome.status == 0);
        CHECK(outcome.err.empty());
        CHECK(is_svg(outcome.out));
        CHECK(std::find(seen.begin(), seen.end(), outcome.out) == seen.end());
        seen.push_back(outcome.out);
    }
    CHECK(run({"draw", example_of("toll-house")}).out == seen.front());
    const auto profile = run({"draw", example_of("toll-house"), "--profile"});
    CHECK(profile.status == 0);
    CHECK(is_svg(profile.out));
}

TEST_CASE("draw shows the condition that is asked for, in the units asked for") {
    const auto low = run({"draw", example_of("bindery"), "--condition", "low fire, frost"});
    CHECK(low.status == 0);
    CHECK(low.out.find("Gas temperature: low fire, frost") != std::string::npos);
    const auto none = run({"draw", example_of("bindery"), "--condition", "low fire, summer"});
    CHECK(none.status == 2);
    CHECK(none.out.empty());
    CHECK(none.err.find("`low fire, summer` is no condition") != std::string::npos);
    CHECK(none.err.find("low fire, frost") != std::string::npos);
    const auto us = run({"draw", example_of("bindery"), "--units", "us"});
    CHECK(us.out.find(" degF") != std::string::npos);
    CHECK(us.out.find(" degC") == std::string::npos);
}

TEST_CASE("draw refuses what it cannot read or draw") {
    CHECK(run({"draw", "no-such-file.json"}).status == 3);
    CHECK(run({"draw", "-"}, "{\"run\": 1}").status == 2);
    CHECK(run({"draw", example_of("bindery"), "--show", "noise"}).status == 2);
    CHECK(run({"draw"}).status == 2);
}

TEST_CASE("draw marks the findings of check by their numbers") {
    const auto check = run({"check", example_of("weigh-house"), "--details"});
    const auto drawn = run({"draw", example_of("weigh-house")});
    // "1. DANGER: Floor not protected, the heater" and "1", "DANGER: Floor not protected, ..."
    for (const std::string title :
         {"DANGER: Floor not protected, the heater", "warning: Sheet too thin, straight 1"}) {
        INFO(title);
        CHECK(check.out.find(title) != std::string::npos);
        CHECK(drawn.out.find(title) != std::string::npos);
    }
}

TEST_CASE("--format svg draws the answer of size, warmup, diagnose and compare") {
    const std::vector<std::vector<std::string>> lines{
        {"size", example_of("toll-house")},
        {"warmup", example_of("toll-house")},
        {"diagnose", example_of("net-loft")},
        {"compare", example_of("bindery"), example_of("toll-house")},
        {"sweep", example_of("bindery"), "--over", "height=3..6m:4"}};
    for (std::vector<std::string> line : lines) {
        INFO(line.front());
        const auto text = run(line);
        line.insert(line.end(), {"--format", "svg"});
        const auto picture = run(line);
        CHECK(picture.status == text.status);
        CHECK(is_svg(picture.out));
        CHECK(picture.err.empty());
    }
    // What must not be missed stands in the picture, too.
    CHECK(
        run({"diagnose", example_of("dye-house"), "--format", "svg"}).out.find("alarm has sounded")
        != std::string::npos);
    CHECK(run({"warmup", example_of("toll-house"), "--format", "svg"}).out.find("Light no fire")
          != std::string::npos);
    CHECK(run({"diagnose", example_of("net-loft"), "--ask", "--format", "svg"}).status == 2);
}

TEST_CASE("report ends as check does") {
    for (const std::string name : {"bindery", "toll-house", "weigh-house"}) {
        INFO(name);
        const auto page = run({"report", example_of(name)});
        CHECK(page.status == run({"check", example_of(name)}).status);
        CHECK(page.out.starts_with("<!DOCTYPE html>"));
        CHECK(page.err.empty());
    }
    CHECK(run({"report", "-"}, "{}").status == 2);
    CHECK(run({"report", "no-such-file.json"}).status == 3);
    CHECK(run({"report", example_of("bindery"), "--require", "upkeep"}).status == 1);
}

TEST_CASE("without arguments it says what it is and three commands to try") {
    const auto outcome = run({});
    CHECK(outcome.status == 0);
    for (const std::string command : {"fluewright new", "fluewright check", "fluewright draw"}) {
        CHECK(outcome.out.find("\n  " + command) != std::string::npos);
    }
}
