// The size search of `check`.
#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/advice/trial/trial.hpp"
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
            return row.lines_masonry() && row.score && row.ruled_out_by.empty();
        });
    CHECK(lined > 0);
    // The pipe is of the size tried, the chimney of the flue as the file has it: 4 A/P of a square
    // is its side.
    for (const SizeRow& row : table->rows) {
        if (!row.lines_masonry()) {
            CAPTURE(row.connector);
            CHECK(row.chimney == "270 mm x 270 mm");
            CHECK(row.chimney_m == Approx(0.27));
        }
    }
    REQUIRE(table->suggested);
    CHECK(table->rows[*table->suggested].connector == "150 mm");
    // `check` says the same, and does not call it all right.
    const Result<Assessment, Faults> assessed = assess(in, {});
    REQUIRE(assessed);
    CHECK(assessed->size.reason == table->sentence);
    CHECK(assessed->size.suggested == "150 mm");
    REQUIRE_FALSE(assessed->size.trials.empty());
    CHECK(assessed->size.trials.front().chimney == "270 mm x 270 mm");
}

TEST_CASE("how far the door may be opened is one figure, also where it is all of it", "[size]") {
    const Installation in = stove_with(pipe_in_room + chimney_of("8 m"));
    const Result<Assessment, Faults> assessed = assess(in, {});
    const auto table = tabulate_sizes(in, {});
    REQUIRE(assessed);
    REQUIRE(table);
    const SizeRow* present = nullptr;
    for (const SizeRow& row : table->rows) {
        present = row.present ? &row : present;
    }
    REQUIRE(present != nullptr);
    const double share = least_opening(*present->score);
    CHECK(share > 1.0);
    for (const SizeTrial& trial : assessed->size.trials) {
        if (trial.id == present->connector) {
            CHECK(trial.least_opening_share == share);
        }
    }
}

TEST_CASE("masonry is tried at every height, as wide as it is and with each liner", "[size]") {
    const Installation in = stove_with(R"({"part": "straight", "up": "6 m", "width": "200 mm",
        "depth": "200 mm", "shape": "rectangular", "wall": "clay-lined masonry",
        "zone": "outdoors", "clearance": "50 mm"})");
    const auto table = tabulate_sizes(in, {.heights_m = {2.0, 6.0, 8.0}});
    REQUIRE(table);
    CAPTURE(table->sentence);
    const auto at = [&](double height_m, std::string_view size) -> const SizeRow& {
        const auto row =
            std::find_if(table->rows.begin(), table->rows.end(), [&](const SizeRow& each) {
                return each.height_m == height_m && each.connector == size;
            });
        REQUIRE(row != table->rows.end());
        return *row;
    };
    CHECK(at(6.0, "as it is now").present);
    CHECK_FALSE(at(8.0, "as wide as now").present);
    for (const std::string_view liner : {"150 mm liner", "180 mm liner"}) {
        CAPTURE(liner);
        CHECK(at(2.0, liner).score->least_spare < at(6.0, liner).score->least_spare);
        CHECK(at(6.0, liner).score->least_spare < at(8.0, liner).score->least_spare);
    }
    // A row is the file with the height and the liner written in.
    Installation higher = in;
    higher.run[0].up_m = 8.0;
    const auto then = apply(
        Remedy{.kind = RemedyKind::line_flue, .amount = 0.15, .word = "flexible liner insulated"},
        higher);
    REQUIRE(then);
    CHECK(at(8.0, "150 mm liner").score->least_spare == try_out(*then)->score.least_spare);
}

TEST_CASE("a size that shops seldom stock says so, and names the next that they do", "[size]") {
    // The 6 in connector pipe that everybody has, and 7 in that has to be ordered.
    const Installation in = stove_with(R"({"part": "straight", "up": "4 ft", "diameter": "6 in",
            "wall": "single-wall steel", "zone": "room", "clearance": "36 in"},
        {"part": "straight", "up": "14 ft", "wall": "insulated 25 mm", "zone": "outdoors",
         "clearance": "4 in", "listed_clearance": "2 in"}, {"part": "cap", "build": "plain"})");
    const auto table = tabulate_sizes(in, {.heights_m = {}, .sizes = TradeSizes::inch});
    REQUIRE(table);
    for (const SizeRow& row : table->rows) {
        CAPTURE(row.connector);
        if (row.connector == "6 in" || row.connector == "8 in") {
            CHECK(row.seldom_sold.empty());
        }
        if (row.connector == "7 in") {
            CHECK(row.seldom_sold == "single-wall and insulated pipe");
        }
    }
    Installation seven = in;
    seven.appliance.outlet.diameter_m = 0.1778;
    const auto other = tabulate_sizes(seven, {.heights_m = {}, .sizes = TradeSizes::inch});
    REQUIRE(other);
    CAPTURE(other->sentence);
    CHECK(other->sentence.find("Take 7 in") == 0);
    CHECK(other->sentence.find("Shops seldom stock it as single-wall and insulated pipe: it has to "
                               "be ordered; 8 in passes, too.")
          != std::string::npos);
}

TEST_CASE("a chimney that stands between the heights asked for is kept where it passes", "[size]") {
    const Installation in = sound(); // 5.2 m over the outlet
    const auto table = tabulate_sizes(in, {.heights_m = {5.0, 7.0}});
    REQUIRE(table);
    CAPTURE(table->sentence);
    REQUIRE(table->suggested);
    CHECK(table->rows[*table->suggested].present);
    CHECK(table->rows[*table->suggested].height_m == Approx(5.2));
    CHECK(table->sentence.find("Keep the present pipe") == 0);

    Installation low = in;
    low.run[1].up_m = 0.2;
    low.run[2].up_m = 0.2;
    const auto raised = tabulate_sizes(low, {.heights_m = {5.0, 7.0}});
    REQUIRE(raised);
    CAPTURE(raised->sentence);
    REQUIRE(raised->suggested);
    CHECK(raised->rows[*raised->suggested].height_m == Approx(5.0));
    CHECK(raised->sentence.find("nearest to the present one that passes") != std::string::npos);
}
