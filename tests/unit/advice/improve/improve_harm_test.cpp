// What harms most is undone first, and a plan says what it brings.
#include "catch.hpp"
#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "improved.hpp"
#include "unit/plain_stove.hpp"

#include <algorithm>
#include <cmath>

using namespace fluewright;
using Outcome = Improvement::Outcome;

namespace {

bool has_step(const Plan& plan, RemedyKind kind) {
    return std::any_of(plan.steps.begin(), plan.steps.end(), [kind](const Remedy& step) {
        return step.kind == kind;
    });
}

bool any_has(const Improvement& made, RemedyKind kind) {
    return std::any_of(made.plans.begin(), made.plans.end(), [kind](const Plan& plan) {
        return has_step(plan, kind);
    });
}

/// A cleanout that does not shut leaks into a run that draws well without it.
Installation leaky() {
    return stove_with(R"({"part": "straight", "up": "0.6 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "900 mm"},
        {"part": "elbow", "angle": "90 deg", "build": "gored"},
        {"part": "straight", "across": "0.8 m", "rise": "16 mm"},
        {"part": "tee", "flow": "side", "angle": "90 deg", "cleanout": true,
            "wall": "insulated 25 mm", "zone": "outdoors", "leakage_area": "64 cm2"},
        {"part": "straight", "up": "4.5 m"}, {"part": "cap", "build": "plain"})");
}

/// A wide clay-lined chimney outdoors: 4.1 times the collar's area.
Installation wide_masonry() {
    return stove_with(R"({"part": "straight", "up": "0.8 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "900 mm"},
        {"part": "elbow", "angle": "90 deg", "build": "gored"},
        {"part": "straight", "across": "0.5 m", "rise": "10 mm"},
        {"part": "elbow", "angle": "90 deg", "build": "gored", "cleanout": true},
        {"part": "straight", "up": "8 m", "width": "270 mm", "depth": "270 mm",
            "shape": "rectangular", "wall": "clay-lined masonry", "zone": "outdoors",
            "clearance": "50 mm"},
        {"part": "cap", "build": "plain"})");
}

Installation low_over_roof() {
    return stove_with(pipe_in_room + chimney_of("1.2 m"),
                      R"("rules": "us", "roof": {"top_above_roof": "0.5 m",
                          "distance_to_ridge": "0.8 m", "pitch": "20 deg",
                          "near": [{"what": "building", "distance": "2 m",
                                    "below_top": "0.4 m"}]},)",
                      R"("draft_needed": "14 Pa",)");
}

} // namespace

TEST_CASE("a leak is closed before a top is raised, though the draft is strong then", "[improve]") {
    const Improvement made = improved(leaky());
    CAPTURE(made.sentence);
    REQUIRE_FALSE(made.plans.empty());
    CHECK(best(made) == "seal-joints");
    CHECK(made.plans.front().too_strong);
    CHECK(made.sentence.find("where the appliance allows") != std::string::npos);
    // What holds the draft is a second step.
    const bool held = std::any_of(made.plans.begin(), made.plans.end(), [](const Plan& plan) {
        return plan.cures && !plan.too_strong && has_step(plan, RemedyKind::seal_joints)
               && (has_step(plan, RemedyKind::fit_damper)
                   || has_step(plan, RemedyKind::fit_regulator));
    });
    CHECK(held);
    const PriceList prices{.currency = "EUR",
                           .prices = {{"seal-joints", {20.0, 0.0}},
                                      {"raise-top", {400.0, 200.0}},
                                      {"air-inlet", {40.0, 0.0}}}};
    const Improvement priced = improved(leaky(), {.prices = prices});
    CHECK(best(priced) == "seal-joints");
}

TEST_CASE("a measured deposit is swept, and nothing else takes it away", "[improve]") {
    Installation in = stove_with(pipe_in_room + chimney_of("4.5 m"));
    in.observed.emplace_back().deposit_m = 0.25 * constants::inch_m;
    const Improvement made = improved(in);
    CAPTURE(made.sentence);
    CHECK(best(made) == "sweep");
    for (const Plan& plan : made.plans) {
        CHECK(plan.cures == has_step(plan, RemedyKind::sweep));
    }
}

TEST_CASE("an alarm that is told beside a deposit is not swept away with it", "[improve]") {
    Installation in = stove_with(pipe_in_room + chimney_of("4.5 m"));
    Observation& seen = in.observed.emplace_back();
    seen.deposit_m = 0.25 * constants::inch_m;
    seen.co_alarm = true;
    for (const Plan& plan : improved(in).plans) {
        CHECK_FALSE(plan.cures);
    }
}

TEST_CASE("a room measured far below outdoors wants air, and no other cap", "[improve]") {
    Installation in = stove_with(pipe_in_room + chimney_of("4.5 m"));
    in.observed.emplace_back().room_pressure_pa = -9.0;
    for (const Plan& plan : improved(in).plans) {
        CHECK((!plan.cures || has_step(plan, RemedyKind::air_inlet)
               || has_step(plan, RemedyKind::stop_fans)));
    }
}

TEST_CASE("a damper left shut is opened, and none is fitted for want of draft", "[improve]") {
    const Improvement made =
        improved(stove_with(pipe_in_room + R"(, {"part": "damper", "blade_angle": "85 deg",
                                        "free_area": "10 %"})"
                            + chimney_of("1.5 m")));
    CAPTURE(made.sentence);
    CHECK(best(made) == "open-damper");
    CHECK_FALSE(any_has(made, RemedyKind::fit_damper));
}

TEST_CASE("a damper left shut in a strong flue is opened first, then held", "[improve]") {
    const Improvement made = improved(stove_with(
        pipe_in_room + R"(, {"part": "damper", "blade_angle": "70 deg", "free_area": "15 %"},
                {"part": "straight", "up": "6 m", "wall": "clay-lined masonry",
                 "zone": "outdoors", "clearance": "300 mm", "width": "200 mm",
                 "depth": "200 mm", "shape": "rectangular"},
                {"part": "cap", "build": "plain", "zone": "outdoors", "screen": "6 mm",
                 "blocked": "30 %"})",
        R"("room": {"temperature": "20 degC", "pressure": "-8 Pa"}, "rules": "uk",)"));
    CAPTURE(made.sentence);
    CHECK(best(made) == "open-damper");
    for (const Plan& plan : made.plans) {
        for (const Remedy& step : plan.steps) {
            CHECK((step.kind != RemedyKind::fit_damper
                   || step.what.find("Keep the damper open") == 0));
        }
    }
}

TEST_CASE("wet masonry four times too wide is lined before a damper is fitted", "[improve]") {
    const Improvement made = improved(wide_masonry());
    CAPTURE(made.sentence);
    CHECK(made.goal == Goal::clear_upkeep);
    REQUIRE_FALSE(made.plans.empty());
    CHECK(has_step(made.plans.front(), RemedyKind::line_flue));
    const auto asked = read_required("fire,draft,upkeep");
    REQUIRE(asked);
    const Improvement all = improved(wide_masonry(), {.required = *asked});
    CAPTURE(all.sentence, all.reason);
    CHECK(any_has(all, RemedyKind::line_flue));
}

TEST_CASE("masonry that is wet in every condition is lined, whoever asks for upkeep", "[improve]") {
    // Wet to the top on a high fire too, and passing: the sweep lines it to the outlet's size.
    const Installation in =
        stove_with(R"({"part": "straight", "up": "0.8 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "600 mm"},
        {"part": "elbow", "angle": "90 deg", "build": "smooth"},
        {"part": "straight", "across": "0.4 m", "rise": "0.01 m", "clearance": "600 mm"},
        {"part": "tee", "cleanout": true},
        {"part": "straight", "up": "8 m", "width": "270 mm", "depth": "270 mm",
            "wall": "unlined masonry", "zone": "outdoors"})",
                   R"("room": {"temperature": "20 degC", "pressure": "-1 Pa"},)");
    for (const std::string_view list : {"", "fire,draft,upkeep"}) {
        ImproveOptions options;
        if (!list.empty()) {
            options.required = *read_required(list);
        }
        const Improvement made = improved(in, options);
        CAPTURE(list, made.sentence, made.reason);
        REQUIRE_FALSE(made.plans.empty());
        CHECK(has_step(made.plans.front(), RemedyKind::line_flue));
        CHECK_FALSE(made.plans.front().too_strong);
        // The creosote was there under the water: it is no new finding and has not got worse.
        for (const auto* list_of_plan : {&made.plans.front().raised, &made.plans.front().worse}) {
            CHECK(
                std::none_of(list_of_plan->begin(), list_of_plan->end(), [](const Matter* matter) {
                    return matter->id == "wall-below-creosote-threshold";
                }));
        }
    }
}

TEST_CASE("a door that smoked, as somebody has seen, is brought to open half way", "[improve]") {
    const auto in = [](const std::string& seen) {
        auto read = stove_with(
            pipe_in_room + chimney_of("2.4 m"),
            R"("room": {"temperature": "20 degC", "pressure": "-2 Pa"},)",
            R"("draft_needed": "4 Pa", "door": {"width": "600 mm", "height": "450 mm"},)");
        if (!seen.empty()) {
            read.observed.emplace_back().smoke = SmokePlace::door;
        }
        return read;
    };
    const Improvement unseen = improved(in(""));
    const StateVerdict& door = unseen.score.verdicts[unseen.score.limiting];
    CAPTURE(unseen.sentence);
    REQUIRE(unseen.present.works());
    const HarmVerdict& reloading = unseen.present.verdict.of(Harm::reloading);
    CAPTURE(*reloading.figure, door.spare);
    REQUIRE(reloading.outcome == HarmOutcome::falls_short);
    const Improvement seen = improved(in("smoke"));
    CAPTURE(seen.sentence);
    CHECK_FALSE(seen.present.works());
    REQUIRE_FALSE(seen.plans.empty());
    CHECK(seen.plans.front().cures);
    CHECK_FALSE(seen.plans.front().short_of_wanted);
}

TEST_CASE("a bare stack outdoors is insulated", "[improve]") {
    const Improvement made = improved(stove_with(
        pipe_in_room + R"(, {"part": "straight", "up": "5 m", "wall": "single-wall steel",
                "zone": "outdoors", "clearance": "900 mm"}, {"part": "cap", "build": "plain"})"));
    CAPTURE(made.sentence);
    CHECK(any_has(made, RemedyKind::insulate_outside));
}

TEST_CASE("a top that is raised stands as much higher over the roof and what is near",
          "[improve]") {
    const Installation in = low_over_roof();
    const Remedy raise{.kind = RemedyKind::raise_top, .amount = 1.0};
    const auto raised = apply(raise, in);
    REQUIRE(raised);
    CHECK(std::abs(*raised->site.roof.top_above_roof_m - 1.5) < 1e-9);
    CHECK(std::abs(*raised->site.roof.near.front().below_top_m - 1.4) < 1e-9);
    // So do other heights of a sweep and of sizes.
    const auto key = read_varied("height=4..5m:2", in);
    REQUIRE(key);
    const auto varied = with_value(in, key->key, 4.0);
    REQUIRE(varied);
    CHECK(std::abs(*varied->site.roof.top_above_roof_m - 2.1) < 1e-6);
}

TEST_CASE("an alteration that may void a listing says so, and is no cure before the door opens",
          "[improve]") {
    const Installation in =
        stove_with(pipe_in_room + chimney_of("1.4 m"),
                   "",
                   R"("draft_needed": "6 Pa", "door": {"width": "700 mm", "height": "600 mm"},)");
    const Improvement made = improved(in, {.most = 20});
    CAPTURE(made.sentence);
    for (const Plan& plan : made.plans) {
        double least = 1.0;
        for (const StateResult& state : plan.score.states) {
            if (state.kind == StateKind::door_open_embers) {
                least = std::min(least, state.door.opening_share);
            }
        }
        CHECK(plan.short_of_wanted == (least < 0.5));
        CHECK(plan.cautioned == has_step(plan, RemedyKind::lower_door_opening));
    }
    if (made.plans.front().short_of_wanted) {
        CHECK(made.sentence.find("not all of it") != std::string::npos);
    }
    Installation listed = in;
    listed.appliance.listed = true;
    CHECK_FALSE(any_has(improved(listed, {.most = 20}), RemedyKind::lower_door_opening));
}

TEST_CASE("a budget that is too small names the cheapest that cures", "[improve]") {
    const Installation in = example("village-hall");
    const Improvement free = improved(in);
    REQUIRE(free.plans.front().cures);
    const Improvement made = improved(in, {.budget = 1.0});
    CAPTURE(made.sentence);
    CHECK(made.outcome == Outcome::hopeless);
    CHECK(made.sentence.find("Nothing within the budget of effort 1") == 0);
    CHECK(made.sentence.find("effort " + format_number(made.over_budget->cost, 4))
          != std::string::npos);
    CHECK(made.over_budget->cost <= free.plans.front().cost);
}

TEST_CASE("no more plans are shown than asked for", "[improve]") {
    for (const std::string name : {"village-hall", "toll-house", "boat-shed"}) {
        for (const std::size_t most : {1U, 2U, 5U}) {
            CHECK(improved(example(name), {.most = most}).plans.size() <= most);
        }
    }
    CHECK(improved(example("village-hall"), {.most = 2, .without = {RemedyKind::remove_level}})
              .plans.size()
          <= 2);
}

TEST_CASE("every step of a plan that cures is needed, or leaves more to spare", "[improve]") {
    for (const Installation& in : {leaky(),
                                   low_over_roof(),
                                   example("weigh-house"),
                                   example("village-hall"),
                                   example("ferry-office")}) {
        const Improvement made = improved(in);
        for (const Plan& plan : made.plans) {
            for (std::size_t left_out = 0;
                 plan.cures && plan.steps.size() > 1 && left_out < plan.steps.size();
                 ++left_out) {
                Installation less = in;
                for (std::size_t i = 0; i < plan.steps.size(); ++i) {
                    if (i != left_out) {
                        const auto next = apply(plan.steps[i], less);
                        less = next ? *next : less;
                    }
                }
                const auto assessed = assess(less, {.size_search = false, .spread = false});
                REQUIRE(assessed);
                const bool held = plan.steps[left_out].kind == RemedyKind::fit_damper
                                  || plan.steps[left_out].kind == RemedyKind::fit_regulator;
                CAPTURE(made.sentence, plan.steps[left_out].what);
                const bool gains = score_of(*assessed).least_spare < plan.score.least_spare - 0.02;
                CHECK((held || gains || made.goal == Goal::clear_upkeep || !assessed->works()));
            }
        }
    }
}

TEST_CASE("no top is raised in bare pipe outdoors", "[improve]") {
    const auto raised = [](const std::string& chimney) {
        const Installation in = stove_with(pipe_in_room + chimney);
        const Result<Case, Faults> present = resolve(in);
        REQUIRE(present.has_value());
        std::vector<Installation> all;
        for (const Remedy& remedy : possible_remedies(in, *present)) {
            if (remedy.kind == RemedyKind::raise_top) {
                CAPTURE(remedy.what);
                const std::optional<Installation> after = apply(remedy, in);
                REQUIRE(after.has_value());
                const bool bare = !wall_of_raised_top(*present).empty();
                CHECK((remedy.what.find("in place of bare pipe") != std::string::npos) == bare);
                all.push_back(*after);
            }
        }
        CHECK_FALSE(all.empty());
        return all;
    };
    const std::string bare =
        R"(, {"part": "straight", "up": "2 m", "wall": "single-wall steel", "zone": "outdoors"},
           {"part": "cap", "build": "plain"})";
    for (const Installation& after : raised(bare)) {
        const Result<Case, Faults> resolved = resolve(after);
        REQUIRE(resolved.has_value());
        CHECK(std::none_of(
            resolved->run.parts.begin(), resolved->run.parts.end(), [](const RunPart& part) {
                return part.has_length() && part.zone.value == Zone::outdoors
                       && part.wall_kind == WallKind::single;
            }));
    }
    // A chimney of its own wall is raised in that wall, and nothing else is touched.
    for (const Installation& after : raised(chimney_of("2 m"))) {
        CHECK(after.run[1].wall == stove_with(pipe_in_room + chimney_of("2 m")).run[1].wall);
    }
}
