// Each defect planted in a sound installation is cured by undoing it; sound ones are left alone and
// hopeless ones are called so.
#include "catch.hpp"
#include "fluewright/advice/parts/joints.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "improved.hpp"
#include "unit/plain_stove.hpp"

#include <algorithm>
#include <cmath>
#include <set>

using namespace fluewright;
using Outcome = Improvement::Outcome;

namespace {

Part part(PartKind kind) {
    Part made;
    made.part = kind;
    return made;
}

Part up(double rise_m) {
    Part made = part(PartKind::straight);
    made.up_m = rise_m;
    return made;
}

/// An inside chimney that is neither short of draft nor too strong.
Installation sound() {
    Installation in = example("bindery");
    in.appliance.draft_greatest_pa = 40.0;
    return in;
}

/// Of single changes that one is the cheapest that cures; several together may cost less.
void check_cured_by(const Installation& in, const std::string& id) {
    const Improvement made = improved(in, {.most = 50, .required = states_only});
    CAPTURE(made.present.sentence, made.sentence);
    CHECK_FALSE(made.present.works());
    REQUIRE_FALSE(made.plans.empty());
    const auto single = std::find_if(made.plans.begin(), made.plans.end(), [](const Plan& plan) {
        return plan.steps.size() == 1;
    });
    REQUIRE(single != made.plans.end());
    CHECK(effort_of(single->steps.front().kind).id == id);
    CHECK(single->cures);
    CHECK((made.plans.front().cost <= single->cost || single->too_strong));
    CHECK(made.plans.front().score.passes);
    CHECK(made.plans.front().rank == 1);
    // What is written out works as promised.
    const std::string text = write_installation(in_short(made.plans.front().changed));
    const auto again = read_installation(text);
    INFO(text);
    REQUIRE(again.has_value());
    const auto assessed = assess(*again, {.required = states_only});
    REQUIRE(assessed.has_value());
    CHECK(assessed->works());
}

} // namespace

TEST_CASE("a sound installation is left alone", "[improve]") {
    for (const Installation& in : {sound(), example("gatehouse"), example("greenhouse")}) {
        const Improvement made = improved(in, {.pairs = true});
        CHECK(made.outcome == Outcome::leave_alone);
        CHECK(made.plans.empty());
        CHECK(made.sentence.find("Leave it alone") == 0);
    }
}

TEST_CASE("stovepipe that stands for the chimney gives way to one", "[improve]") {
    const Improvement made = improved(example("sugar-house"), {});
    CHECK(made.goal == Goal::clear_findings);
    REQUIRE(!made.plans.empty());
    const Plan& best = made.plans.front();
    CHECK(best.steps.front().kind == RemedyKind::insulate_outside);
    CHECK(best.against.size() < made.against.size());
    const auto assessed = assess(in_short(best.changed), {.size_search = false});
    REQUIRE(assessed);
    CHECK(assessed->works());
    CHECK(matters_against(*assessed, false).size() == best.against.size());
}

TEST_CASE("changes that are not wanted are left out, and no plan costs more than the budget",
          "[improve]") {
    const Installation in = example("boat-shed");
    const auto has = [](const Improvement& made, RemedyKind kind) {
        return std::any_of(made.plans.begin(), made.plans.end(), [&](const Plan& plan) {
            return std::any_of(plan.steps.begin(), plan.steps.end(), [&](const Remedy& step) {
                return step.kind == kind;
            });
        });
    };
    REQUIRE(has(improved(in, {.most = 100}), RemedyKind::raise_top));
    CHECK(!has(improved(in, {.most = 100, .without = {RemedyKind::raise_top}}),
               RemedyKind::raise_top));
    for (const Plan& plan : improved(in, {.most = 100, .only = {RemedyKind::raise_top}}).plans) {
        CHECK(plan.steps.front().kind == RemedyKind::raise_top);
    }
    for (const Plan& plan : improved(in, {.pairs = true, .most = 100, .budget = 4.0}).plans) {
        CHECK(plan.cost <= 4.0);
    }
}

TEST_CASE("a height is raised by no more than it takes", "[improve]") {
    Installation in = sound();
    const auto resolved = resolve(in);
    REQUIRE(resolved);
    const Improvement made =
        improved(example("boat-shed"), {.most = 100, .only = {RemedyKind::raise_top}});
    REQUIRE(!made.plans.empty());
    const Plan& best = made.plans.front();
    if (best.cures) {
        Remedy lower = best.steps.front();
        lower.amount -= 0.3;
        const auto changed = apply(lower, example("boat-shed"));
        REQUIRE(changed);
        const auto assessed = assess(*changed, {.size_search = false});
        REQUIRE(assessed);
        CHECK(score_of(*assessed).least_spare
              < catalog::default_of(DefaultId::spare_wanted_share).value);
    }
}

TEST_CASE("a nest in the flue is swept out", "[improve]") {
    Installation in = sound();
    Part nest = part(PartKind::obstruction);
    nest.blocked = 0.92;
    in.run.insert(in.run.begin() + 2, nest);
    check_cured_by(in, "sweep");
}

TEST_CASE("deposits on the wall are swept off", "[improve]") {
    Installation in = sound();
    for (Part& p : in.run) {
        if (p.up_m) {
            p.deposit_m = 0.048;
            p.deposit = DepositKind::flaky_creosote;
        }
    }
    check_cured_by(in, "sweep");
}

TEST_CASE("a clogged screen is cleaned", "[improve]") {
    Installation in = sound();
    in.run.back().mesh_m = 0.012;
    in.run.back().blocked = 0.93;
    check_cured_by(in, "clean-screen");
}

TEST_CASE("a damper left shut is opened", "[improve]") {
    Installation in = sound();
    Part damper = part(PartKind::damper);
    damper.blade_angle_rad = 1.4;
    in.appliance.door = {0.48, 0.36, std::nullopt, {}, {}};
    in.run.insert(in.run.begin() + 1, damper);
    check_cured_by(in, "open-damper");
}

TEST_CASE("a run on reduced pipe gets its reducer taken out", "[improve]") {
    Installation in = sound();
    Part reducer = part(PartKind::reducer);
    reducer.diameter_m = 0.065;
    in.run.insert(in.run.begin() + 1, reducer);
    check_cured_by(in, "remove-reducer");
}

TEST_CASE("a cold outside stack is insulated", "[improve]") {
    Installation in = example("sugar-house");
    in.site.weather.front().outdoor_temperature_k = 243.15;
    in.appliance.burn_rate_kg_s = {0.82 / 3600.0, 2.5 / 3600.0};
    in.appliance.efficiency.high = 0.76;
    in.appliance.door = {0.2, 0.15, std::nullopt, {}, {}};
    in.appliance.draft_needed_pa = {7.5, 12.5};
    check_cured_by(in, "insulate-outside");
}

TEST_CASE("an oversized masonry flue is lined", "[improve]") {
    check_cured_by(example("toll-house"), "line-flue");
}

TEST_CASE("a long horizontal run with turns is straightened or done without", "[improve]") {
    Installation in = example("village-hall");
    in.appliance.door = {0.25, 0.2, std::nullopt, {}, {}};
    const Improvement made = improved(
        in,
        {.without = {RemedyKind::brisk_low_fire, RemedyKind::air_inlet}, .required = states_only});
    CAPTURE(made.sentence);
    REQUIRE_FALSE(made.plans.empty());
    CHECK(made.plans.front().cures);
    const std::set<std::string_view> shape{
        "remove-level", "shorten-level", "straighten-level", "two-45"};
    CHECK(shape.count(effort_of(made.plans.front().steps.front().kind).id) == 1);
}

TEST_CASE("wet wood is dried", "[improve]") {
    Installation in = sound();
    in.appliance.fuel.moisture = 0.55;
    in.appliance.draft_needed_pa = {9.0, 25.0};
    in.appliance.draft_greatest_pa = 34.0;
    check_cured_by(in, "dry-fuel");
}

TEST_CASE("a low top is raised", "[improve]") {
    Installation in = sound();
    in.run[0].up_m = 1.0;
    in.run[1].up_m = 0.4;
    in.run[2].up_m = 0.4;
    in.run[3].up_m = 0.4;
    check_cured_by(in, "raise-top");
}

TEST_CASE("a starved room gets air", "[improve]") {
    Installation in = sound();
    in.site.room.pressure_pa = -18.0;
    check_cured_by(in, "air-inlet");
}

TEST_CASE("joints that leak are closed", "[improve]") {
    Installation in = sound();
    in.run.front().joint_gap_m = 0.0011;
    in.appliance.draft_needed_pa = {10.0, 23.0};
    check_cured_by(in, "seal-joints");
}

TEST_CASE("a fan that takes the fire's air is left off", "[improve]") {
    Installation in = example("weaving-mill");
    in.site.house.fans.front().flow_m3_s = 0.16;
    in.site.house.openings.clear();
    in.appliance.draft_greatest_pa = 60.0;
    check_cured_by(in, "stop-fans");
}

TEST_CASE("a tight house gets an inlet of the size it needs", "[improve]") {
    Installation in = example("weaving-mill");
    in.site.house.fans.clear();
    in.site.house.openings.clear();
    in.site.house.air_changes_50_pa_1_s = 0.12 / 3600.0;
    in.appliance.draft_greatest_pa = 60.0;
    check_cured_by(in, "air-inlet");
}

TEST_CASE("what harms most is cleared first", "[improve]") {
    Installation in = example("weaving-mill");
    for (Fan& fan : in.site.house.fans) {
        *fan.flow_m3_s *= 2.0;
    }
    const Improvement made = improved(in);
    CHECK(made.goal == Goal::clear_findings);
    REQUIRE_FALSE(made.against.empty());
    CHECK(made.against.front()->id == "fan-reverses-flue");
    CHECK(made.outcome == Outcome::one_cures);
    CHECK(best(made) == "stop-fans");
    REQUIRE_FALSE(made.plans.empty());
    CHECK(made.plans.front().against.empty());
    // Who asks for the draft alone has nothing to do.
    const auto draft = read_required("draft");
    REQUIRE(draft.has_value());
    CHECK(improved(in, {.required = *draft}).goal == Goal::less_draft);
}

TEST_CASE("what no change to the run clears is named with what to do", "[improve]") {
    const Improvement made = improved(example("weigh-house"));
    CHECK(made.outcome == Outcome::hopeless);
    REQUIRE(made.stuck.size() == 1);
    CHECK(made.stuck.front()->id == "floor-unprotected");
    CHECK(made.sentence.find(
              "First, these remain with every change that was tried: Floor not protected. Lay")
          == 0);
    CHECK(made.reason.find("Shield does not count") != std::string::npos);
    for (const Plan& plan : made.plans) {
        CHECK_FALSE(plan.cures);
    }
}

TEST_CASE("a fit of joints carries on as one of its two ways", "[improve]") {
    Installation in = sound();
    in.run[0].joint = JointFit::loose;
    in.run[1].joint_gap_m = 0.0001;
    in.run[2].joint = JointFit::loose;
    const auto before = resolve(in);
    const auto after = resolve(in_short(in));
    REQUIRE(before.has_value());
    REQUIRE(after.has_value());
    for (std::size_t i = 0; i < before->sections.size(); ++i) {
        CHECK(before->sections[i].joint_leak_m2 == after->sections[i].joint_leak_m2);
    }
}

TEST_CASE("a rain cap that chokes is changed", "[improve]") {
    Installation in = sound();
    in.run.back().build = Build::rain;
    in.run.back().mesh_m = 0.006;
    in.run.back().free_area = 0.06;
    const Improvement made = improved(in);
    CHECK(made.outcome == Outcome::one_cures);
    CHECK(best(made) == "clean-screen");
}

TEST_CASE("an open front too high is lowered", "[improve]") {
    Installation in = example("gatehouse");
    *in.appliance.door.height_m *= 1.9;
    *in.appliance.door.width_m *= 1.6;
    check_cured_by(in, "lower-door-opening");
}

TEST_CASE("too much draft gets a damper and nothing that costs a state", "[improve]") {
    Installation in = sound();
    in.appliance.draft_greatest_pa = 27.0;
    const Improvement made = improved(in);
    CAPTURE(made.sentence);
    CHECK(made.goal == Goal::clear_upkeep); // creosote on the wall is there, too
    CHECK(made.outcome == Outcome::one_cures);
    CHECK(best(made) == "fit-damper");
    CHECK(made.plans.front().score.greatest_over <= 0.0);
}

TEST_CASE("a stub of two meters below the roof is hopeless and the reason is told", "[improve]") {
    Installation in = sound();
    in.run = {up(1.2), up(0.8), part(PartKind::cap)};
    in.run[0].diameter_m = 0.15;
    in.run[0].wall = "single-wall steel";
    in.run[1].zone = Zone::outdoors;
    in.appliance.draft_needed_pa = {12.0, 25.0};
    const Improvement made = improved(in);
    CAPTURE(made.sentence, made.reason);
    CHECK(made.outcome == Outcome::hopeless);
    CHECK(made.sentence.find("Nothing that was tried") == 0);
    CHECK(made.reason.find("2 m above the outlet") != std::string::npos);
    CHECK(made.reason.find("past the roof") != std::string::npos);
}

TEST_CASE("where two changes do not do, a third is tried beside them", "[improve]") {
    const Improvement made = improved(example("ferry-office"), {.required = states_only});
    CAPTURE(made.sentence);
    CHECK(made.outcome == Outcome::three_cure);
    REQUIRE(made.plans.front().steps.size() == 3);
    CHECK(made.plans.front().cures);
    const auto assessed = assess(in_short(made.plans.front().changed),
                                 {.size_search = false, .required = states_only});
    REQUIRE(assessed.has_value());
    CHECK(assessed->works());
}

TEST_CASE("a liner brings the part that leads into its size", "[improve]") {
    Installation in = sound();
    in.appliance.outlet.diameter_m = 0.15;
    Part pipe = up(1.2);
    pipe.diameter_m = 0.15;
    pipe.wall = "single-wall steel";
    pipe.zone = Zone::room;
    Part stack = up(5.0);
    stack.diameter_m = 0.25;
    stack.wall = "clay-lined masonry";
    stack.zone = Zone::outdoors;
    in.run = {pipe, stack};
    for (const double liner_m : {0.15, 0.18}) {
        const Remedy remedy{
            .kind = RemedyKind::line_flue, .amount = liner_m, .word = "flexible liner"};
        const auto lined = apply(remedy, in);
        REQUIRE(lined);
        const bool changes = liner_m > 0.15;
        REQUIRE(lined->run.size() == (changes ? 3U : 2U));
        CHECK((!changes || lined->run[1].part == PartKind::increaser));
        const auto resolved = resolve(*lined);
        REQUIRE(resolved);
        for (const Joint& joint : joints_of(*resolved).joints) {
            CHECK(joint.fit.bore == Bore::same);
        }
    }
}

TEST_CASE("a heater that is moved past one horizontal run of two is not said to stand under the "
          "chimney",
          "[improve]") {
    const std::string across = R"(, {"part": "elbow", "angle": "90 deg", "build": "gored"},
        {"part": "straight", "across": "1 m", "rise": "0.02 m", "clearance": "500 mm"},
        {"part": "elbow", "angle": "90 deg", "build": "gored"})";
    const std::string between = R"(, {"part": "straight", "up": "0.5 m", "clearance": "900 mm"})";
    const auto words_of = [](const Installation& in) {
        const auto resolved = resolve(in);
        REQUIRE(resolved);
        for (const Remedy& remedy : possible_remedies(in, *resolved)) {
            if (remedy.kind == RemedyKind::remove_level) {
                return remedy.what;
            }
        }
        return std::string{};
    };
    const std::string top = between + chimney_of("3 m");
    CHECK(words_of(stove_with(pipe_in_room + across + top)).find("Set the heater under") == 0);
    CHECK(words_of(stove_with(pipe_in_room + across + between + across + top))
              .find("Move the heater to where the first horizontal run ends")
          == 0);
}
