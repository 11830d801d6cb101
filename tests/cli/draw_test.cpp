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
