// The size search of `check`.
#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "sound.hpp"
#include "unit/plain_stove.hpp"

#include <algorithm>

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

TEST_CASE("a deposit makes no pipe another size, and other sizes are new and clean") {
    const std::string deposit = R"(, "deposit_thickness": "25 mm", "deposit": "flaky creosote")";
    const Installation in = stove_with(pipe_in_room + chimney_of("2.7 m", deposit));
    const Installation clean = stove_with(pipe_in_room + chimney_of("2.7 m"));
    const auto table = tabulate_sizes(in, {});
    const auto clean_table = tabulate_sizes(clean, {});
    REQUIRE(table);
    REQUIRE(clean_table);
    CAPTURE(table->sentence);
    REQUIRE(table->rows.size() == clean_table->rows.size());
    for (std::size_t i = 0; i < table->rows.size(); ++i) {
        const SizeRow& row = table->rows[i];
        CHECK(row.present == (row.connector == "150 mm"));
        if (row.present) {
            CHECK(row.ruled_out_by.find("smaller than the outlet") == std::string::npos);
            CHECK_FALSE(row.against_rule);
        } else if (row.score) {
            CHECK(row.score->least_spare == clean_table->rows[i].score->least_spare);
        }
    }
    CHECK(table->sentence.find("Keep the present pipe, 150 mm, and sweep it") == 0);
    const Result<Assessment, Faults> assessed = assess(in, {});
    REQUIRE(assessed);
    CHECK(assessed->size.outcome == SizeAdvice::Outcome::present_is_right);
}

TEST_CASE("pipe that leads into masonry far too wide is told of the liner") {
    const Installation in = stove_with(R"({"part": "straight", "up": "0.8 m", "diameter": "150 mm",
            "wall": "single-wall steel", "zone": "room", "clearance": "900 mm"},
        {"part": "straight", "up": "8 m", "width": "270 mm", "depth": "270 mm",
            "shape": "rectangular", "wall": "clay-lined masonry", "zone": "outdoors",
            "clearance": "50 mm"},
        {"part": "cap", "build": "plain"})");
    const auto table = tabulate_sizes(in, {});
    REQUIRE(table);
    CAPTURE(table->sentence);
    CHECK(table->masonry_too_wide);
    CHECK(table->sentence.find("meets the size rules") == std::string::npos);
    // 0.27^2 over a circle of 150 mm
    CHECK(table->sentence.find("4.1 times the outlet's area") != std::string::npos);
    CHECK(table->sentence.find("Line it with a 150 mm liner") != std::string::npos);
    const auto lined =
        std::count_if(table->rows.begin(), table->rows.end(), [](const SizeRow& row) {
            return row.lines_masonry && row.score && row.ruled_out_by.empty();
        });
    CHECK(lined > 0);
}

TEST_CASE("heights that masonry is not tried at are said so") {
    const Installation in = stove_with(R"({"part": "straight", "up": "6 m", "width": "200 mm",
        "depth": "200 mm", "shape": "rectangular", "wall": "clay-lined masonry",
        "zone": "outdoors", "clearance": "50 mm"})");
    const auto table = tabulate_sizes(in, {.heights_m = {4.0, 6.0, 8.0}});
    REQUIRE(table);
    CHECK(table->sentence.find("Masonry is tried at the height it has") != std::string::npos);
}
