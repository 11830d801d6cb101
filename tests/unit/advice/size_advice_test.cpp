// The size search of `check`.
#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "sound.hpp"

using namespace fluewright;

TEST_CASE("the size search names the smallest pipe that carries every state") {
    Installation in = sound();
    in.run[0].diameter_m = 0.1;
    const Result<Assessment, Faults> assessed = assess(in, {});
    REQUIRE(assessed.has_value());
    const SizeAdvice& size = assessed->size;
    CHECK(size.outcome == SizeAdvice::Outcome::another);
    CHECK(size.suggested == "150 mm");
    for (const SizeTrial& trial : size.trials) {
        CAPTURE(trial.id);
        if (trial.diameter_m < 0.147) {
            CHECK_FALSE(trial.ruled_out_by.empty());
        }
        CHECK((trial.works || !trial.ruled_out_by.empty()));
    }
    const Result<Assessment, Faults> right = assess(sound(), {});
    REQUIRE(right.has_value());
    CHECK(right->size.outcome == SizeAdvice::Outcome::present_is_right);
    CHECK(right->works());

    Installation hopeless = sound();
    hopeless.run[1].up_m = 0.2;
    hopeless.run[2].up_m = 0.2;
    const Result<Assessment, Faults> none = assess(hopeless, {});
    REQUIRE(none.has_value());
    CHECK(none->size.outcome == SizeAdvice::Outcome::none);
    CHECK_FALSE(none->works());
    CHECK_FALSE(none->size.reason.empty());
}

TEST_CASE("masonry keeps its size and says so") {
    Installation in = sound();
    for (Part& part : in.run) {
        if (part.wall) {
            part.wall = "clay-lined masonry";
        }
    }
    const Result<Assessment, Faults> assessed = assess(in, {});
    REQUIRE(assessed.has_value());
    CHECK(assessed->size.outcome == SizeAdvice::Outcome::nothing_to_size);
}
