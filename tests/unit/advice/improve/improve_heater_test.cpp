// A heater, its pipe and its chimney top that stand in the wrong place are moved.
#include "catch.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "improved.hpp"
#include "unit/plain_stove.hpp"

#include <algorithm>
#include <cmath>

using namespace fluewright;

namespace {

const Plan* plan_with(const Improvement& made, RemedyKind kind) {
    const auto found = std::find_if(made.plans.begin(), made.plans.end(), [kind](const Plan& plan) {
        return plan.steps.size() == 1 && plan.steps.front().kind == kind;
    });
    return found == made.plans.end() ? nullptr : &*found;
}

bool is_found(const Installation& in, std::string_view id) {
    const auto assessed = assess(in, {});
    REQUIRE(assessed);
    return std::any_of(assessed->findings.begin(),
                       assessed->findings.end(),
                       [id](const Finding& finding) { return finding.matter->id == id; });
}

double rise_m(const Installation& in) {
    const auto resolved = resolve(in);
    REQUIRE(resolved);
    return resolved->total_rise_m();
}

Installation near_wall(const char* run) {
    return stove_with(run,
                      "",
                      R"("listed": true, "clearances": {"back": "200 mm"},
                          "listed_clearances": {"back": "400 mm"},)");
}

} // namespace

TEST_CASE("a heater too near the wall is moved off it, and its upright pipe takes an offset",
          "[improve]") {
    const Installation in = near_wall(R"({"part": "straight", "up": "1.4 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "900 mm"},
        {"part": "straight", "up": "4.5 m", "wall": "insulated 25 mm", "zone": "outdoors",
            "clearance": "50 mm", "listed_clearance": "50 mm"}, {"part": "cap", "build": "plain"})");
    REQUIRE(is_found(in, "heater-clearance-too-small"));
    const Improvement made = improved(in);
    CAPTURE(made.sentence);
    const Plan* plan = plan_with(made, RemedyKind::move_heater);
    REQUIRE(plan != nullptr);
    CHECK(plan->cures);
    CHECK(std::abs(*plan->changed.appliance.clearances.back_m - 0.4) < 1e-9); // no further
    CHECK_FALSE(is_found(plan->changed, "heater-clearance-too-small"));
    CHECK(std::abs(rise_m(plan->changed) - rise_m(in)) < 1e-9);
    const auto elbows =
        std::count_if(plan->changed.run.begin(), plan->changed.run.end(), [](const Part& part) {
            return part.part == PartKind::elbow;
        });
    CHECK(elbows == 2);
}

TEST_CASE("a horizontal run grows by what its heater is moved", "[improve]") {
    const Installation in = near_wall(R"({"part": "straight", "up": "0.9 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "900 mm"},
        {"part": "elbow", "angle": "90 deg", "build": "gored"},
        {"part": "straight", "across": "0.5 m", "slope": "30 mm/m"},
        {"part": "elbow", "angle": "90 deg", "build": "gored", "cleanout": true},
        {"part": "straight", "up": "5.5 m", "wall": "insulated 25 mm", "zone": "outdoors",
            "clearance": "50 mm", "listed_clearance": "50 mm"}, {"part": "cap", "build": "plain"})");
    const auto moved = apply({.kind = RemedyKind::move_heater, .amount = 0.2}, in);
    REQUIRE(moved);
    CHECK(std::abs(*moved->run[2].across_m - 0.7) < 1e-9);
    CHECK(std::abs(rise_m(*moved) - rise_m(in)) < 1e-9);
}

TEST_CASE("no heater is moved where its pipe has no room to follow", "[improve]") {
    const Installation in = near_wall(R"({"part": "straight", "up": "0.7 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "900 mm"},
        {"part": "straight", "up": "4.5 m", "wall": "insulated 25 mm", "zone": "outdoors"},
        {"part": "cap", "build": "plain"})");
    CHECK_FALSE(apply({.kind = RemedyKind::move_heater, .amount = 0.2}, in));
}

TEST_CASE("a heater that comes nearer keeps no distance that was measured before", "[improve]") {
    Installation in = near_wall(R"({"part": "straight", "up": "0.9 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "900 mm"},
        {"part": "elbow", "angle": "90 deg", "build": "gored"},
        {"part": "straight", "across": "0.8 m", "slope": "30 mm/m", "clearance": "900 mm"},
        {"part": "straight", "across": "0.4 m", "slope": "30 mm/m", "passes": "wall",
            "wall": "insulated 25 mm", "clearance": "60 mm"},
        {"part": "tee", "flow": "side", "angle": "90 deg", "cleanout": true, "zone": "outdoors"},
        {"part": "straight", "up": "5.5 m"}, {"part": "cap", "build": "plain"})");
    const auto closer = apply({.kind = RemedyKind::shorten_level, .amount = 0.5}, in);
    REQUIRE(closer);
    CHECK_FALSE(closer->appliance.clearances.back_m);
    CHECK_FALSE(closer->run[0].clearance_m);
    CHECK_FALSE(closer->run[2].clearance_m);
    CHECK(std::abs(*closer->run[2].across_m - 0.4) < 1e-9);
    CHECK(std::abs(*closer->run[3].across_m - 0.4) < 1e-9); // the wall is as thick as it was
    CHECK(closer->run[3].clearance_m);
}

TEST_CASE("a shield stands behind a heater without a plate, and black pipe for galvanized",
          "[improve]") {
    const std::string chimney = R"({"part": "straight", "up": "4.5 m", "wall": "insulated 25 mm",
        "zone": "outdoors"}, {"part": "cap", "build": "plain"})";
    const Installation bare = stove_with(
        R"({"part": "straight", "up": "0.7 m", "diameter": "150 mm", "wall": "single-wall steel",
            "zone": "room"}, )"
            + chimney,
        R"("rules": "us",)",
        R"("listed": false, "style": "radiant", "clearances": {"back": "350 mm"},)");
    const auto shielded = apply({.kind = RemedyKind::shield_heater}, bare);
    REQUIRE(shielded);
    CHECK(is_found(bare, "heater-clearance-too-small"));
    CHECK_FALSE(is_found(*shielded, "heater-clearance-too-small"));
    const Installation zinc = stove_with(
        R"({"part": "straight", "up": "0.7 m", "diameter": "150 mm",
            "wall": "single-wall galvanized", "zone": "room"}, )"
        + chimney);
    const auto black = apply({.kind = RemedyKind::black_pipe}, zinc);
    REQUIRE(black);
    CHECK(black->run.front().wall == "single-wall steel");
}

TEST_CASE("a top raised over the ridge no longer stands in its eddies", "[improve]") {
    const Installation in = stove_with(
        R"({"part": "straight", "up": "0.7 m", "diameter": "150 mm", "wall": "single-wall steel",
            "zone": "room"},
        {"part": "straight", "up": "4 m", "wall": "insulated 25 mm", "zone": "outdoors"},
        {"part": "cap", "build": "plain"})",
        R"("top_position": "adverse", "roof": {"top_above_roof": "0.4 m", "pitch": "45 deg",
            "distance_to_ridge": "1 m"},)");
    const auto below = apply({.kind = RemedyKind::raise_top, .amount = 1.0}, in);
    REQUIRE(below); // 1.4 m over the roof, 0.4 m over the ridge
    CHECK(below->site.top_position == ChimneyTopPosition::adverse);
    const auto over = apply({.kind = RemedyKind::raise_top, .amount = 1.5}, in);
    REQUIRE(over);
    CHECK(over->site.top_position == ChimneyTopPosition::clear);
}
