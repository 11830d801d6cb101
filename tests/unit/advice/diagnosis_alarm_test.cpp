// What is named first after an alarm, and beside what a reading is told.
#include "catch.hpp"
#include "diagnosis/diagnosed.hpp"
#include "examples.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>

using namespace fluewright;

namespace {

Observation draft_read(double pa) {
    Observation seen;
    seen.state = StateKind::high_fire;
    seen.at = "outlet";
    seen.draft_pa = pa;
    return seen;
}

} // namespace

TEST_CASE("after an alarm alone one looks for a blocked flue and a depressurized room first",
          "[diagnosis]") {
    // An inspector: is the flue blocked or leaking, is the room depressurized, was the flue cold?
    const std::vector<std::string_view> named{"blockage",
                                              "deposits",
                                              "clogged-screen",
                                              "leaky-joints",
                                              "shut-damper",
                                              "fan",
                                              "house-suction",
                                              "starved-house",
                                              "clogged-passages"};
    Observation alarm;
    alarm.co_alarm = true;
    for (const char* name : {"bindery", "net-loft", "tile-kiln"}) {
        CAPTURE(name);
        Installation in = example(name);
        in.observed = {alarm};
        const Diagnosis made = diagnosis_of(in);
        CHECK(made.explanations.front().causes.front().cause->id == "blockage");
        for (std::size_t i = 0; i < 3; ++i) {
            const auto& causes = made.explanations[i].causes;
            REQUIRE(!causes.empty());
            CHECK(std::find(named.begin(), named.end(), causes.front().cause->id) != named.end());
        }
    }
    // A tall hot flue that smokes when the door is opened wide: its strong draft is not the reason.
    Installation tall = example("bindery");
    tall.run[3].up_m = 9.0;
    tall.appliance.door.height_m = 0.6;
    tall.appliance.door.width_m = 0.6;
    tall.observed = {alarm};
    CHECK(share_of(diagnosis_of(tall), "strong-draft") < 0.02);
    Observation roaring;
    roaring.roaring = true;
    tall.observed = {roaring};
    CHECK(share_of(diagnosis_of(tall), "strong-draft") > 0.2);
}

TEST_CASE("a reading stands beside that of the file as written", "[diagnosis]") {
    // Of a blocked flue `check` tells the draft of the open one.
    Installation in = example("bindery");
    in.observed = {draft_read(6.0)};
    const Diagnosis made = diagnosis_of(in);
    REQUIRE(made.seen.size() == 1);
    CHECK(made.seen.front().expected != made.seen.front().as_written);
    const auto resolved = resolve(in);
    REQUIRE(resolved);
    const Solution solution = solve(*resolved, Detail::totals);
    const auto high =
        std::find_if(solution.states.begin(), solution.states.end(), [&](const StateResult& state) {
            return state.kind == StateKind::high_fire && state.weather == 0;
        });
    REQUIRE(high != solution.states.end());
    CHECK(made.seen.front().as_written
          == format_quantity(high->draft_pa, Kind::pressure, UnitSystem::metric, 2));
}
