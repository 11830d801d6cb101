// The list of a job against that of a fitter.
#include "catch.hpp"
#include "fitter_jobs.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <string>

using namespace fluewright;
using namespace fluewright::fitter;

namespace {

PartsList listed(const FitterJob& job, const PartsWishes& wishes = {}) {
    const std::string text =
        R"({"units": ")" + std::string{job.name.starts_with("us") ? "us" : "metric"}
        + R"(", "site": {"weather": [{"name": "frost", "outdoor_temperature": "-10 degC"}])"
        + std::string{job.site} + "}, \"appliance\": {" + std::string{job.heater} + "}, \"run\": ["
        + std::string{job.run} + R"(, {"part": "cap", "build": "plain"}]})";
    const auto read = read_installation(text, "job.json");
    INFO(job.name << (read ? "" : read.error().front().fault.message));
    REQUIRE(read.has_value());
    const auto made = resolve(*read);
    INFO((made ? std::string{} : made.error().front().message));
    REQUIRE(made.has_value());
    return parts_list(*read, *made, solve(*made, Detail::stations), wishes);
}

const PartsLine* line_with(const PartsList& list, std::string_view words) {
    const auto found = std::find_if(list.lines.begin(), list.lines.end(), [&](const auto& line) {
        return line.what.find(words) != std::string::npos;
    });
    return found == list.lines.end() ? nullptr : &*found;
}

double count_with(const PartsList& list, std::string_view words) {
    double count = 0.0;
    for (const PartsLine& line : list.lines) {
        count += line.what.find(words) != std::string::npos ? line.count : 0.0;
    }
    return count;
}

} // namespace

TEST_CASE("the list of a job is the one a fitter would write") {
    for (const FitterJob* job : jobs) {
        const PartsList list = listed(*job);
        for (const auto& [words, count] : job->counts) {
            INFO(job->name << ": " << words);
            CHECK(count_with(list, words) == Approx(count));
        }
        for (std::size_t i = 0; i < list.lines.size(); ++i) {
            for (std::size_t k = 0; k < i; ++k) {
                INFO(job->name << ": " << list.lines[i].what << " stands twice");
                const bool same = list.lines[i].what == list.lines[k].what
                                  && list.lines[i].where == list.lines[k].where
                                  && list.lines[i].size == list.lines[k].size
                                  && list.lines[i].at_hand == list.lines[k].at_hand;
                CHECK_FALSE(same);
            }
        }
    }
}

TEST_CASE("what bears a vent from the heater stands at the ceiling, not on the heater") {
    const PartsList list = listed(hood);
    CHECK(line_with(list, "ceiling support")->where == "under straight 3");
    CHECK(line_with(listed(beside_wall), "wall support")->where == "under tee 5");
}

TEST_CASE("a thermometer stands 18 in along the pipe, not on a straight that is shorter") {
    FitterJob job = beside_wall;
    job.run =
        R"({"part": "straight", "up": "10 in", "diameter": "6 in", "wall": "single-wall steel", "zone": "room"},
        {"part": "elbow", "angle": "90 deg"},
        {"part": "straight", "across": "20 in", "rise": "1/2 in"},
        {"part": "tee", "cleanout": true, "wall": "insulated 25 mm", "zone": "outdoors"},
        {"part": "straight", "up": "18 ft"})";
    PartsWishes wishes;
    wishes.thermometer = true;
    CHECK(line_with(listed(job, wishes), "thermometer")->where.starts_with("straight 3, 18 in"));
    CHECK(line_with(listed(up_through_roof, wishes), "thermometer")
              ->where.starts_with("straight 1, 460 mm"));
}

TEST_CASE("a level chimney top stands farther out, not higher") {
    FitterJob job = beside_wall;
    job.run =
        R"({"part": "straight", "up": "40 in", "diameter": "6 in", "wall": "insulated 25 mm", "zone": "room"},
        {"part": "elbow", "angle": "90 deg"},
        {"part": "straight", "across": "25 in", "passes": "wall", "zone": "outdoors"})";
    const PartsList list = listed(job);
    REQUIRE(list.stretches.back().off_m > 0.0);
    CHECK(list.stretches.back().note == "the chimney top is farther out than drawn");
    CHECK(list.stretches.back().lifts_m() == Approx(0.0).margin(1e-9));
}

TEST_CASE("a template with nothing put in prices nothing") {
    PartsWishes wishes;
    PiecePrice none;
    none.wall = "single-wall steel";
    none.length_m = 0.9144;
    wishes.prices.prices = {none};
    const PartsList list = listed(beside_wall, wishes);
    CHECK_FALSE(list.price.has_value());
    CHECK(list.unpriced == 0);
}

TEST_CASE("from the box alone nothing of pipe is bought, and what is short is told") {
    StockPiece pipe;
    pipe.wall = "single-wall steel";
    pipe.diameter_m = 0.1524;
    pipe.length_m = 24.0 * 0.0254;
    pipe.count = 1.0;
    StockPiece elbow;
    elbow.part = StockKind::elbow;
    elbow.wall = "single-wall steel";
    elbow.diameter_m = 0.1524;
    elbow.angle_rad = 1.5707963;
    elbow.count = 1.0;
    PartsWishes wishes;
    wishes.at_hand = {pipe, elbow};
    wishes.from_box = true;
    const PartsList few = listed(brick, wishes);
    CHECK(few.bought_m == 0.0);
    CHECK(few.exact);
    // 29 9/16 + 13 9/16 in are wanted; 24 in whole, with a lap of 2 in, lay 22 in, and a cut would
    // waste another lap.
    double short_m = 0.0;
    for (const PipeStretch& stretch : few.stretches) {
        short_m -= stretch.kind == WallKind::masonry ? 0.0 : stretch.off_m;
    }
    CHECK(short_m == Approx((29.5625 + 13.5625 - 22.0) * 0.0254).margin(0.003));
    REQUIRE(line_with(few, "more pipe") != nullptr);
    CHECK(count_with(few, "more pipe") == Approx(short_m).margin(1e-9));
    wishes.at_hand.front().count = 3.0;
    const PartsList enough = listed(brick, wishes);
    CHECK(line_with(enough, "more pipe") == nullptr);
    CHECK(count_with(enough, "length of") == 3.0);
}

TEST_CASE("a run of forty straights is planned in parts, from the shop and from the box") {
    std::string run = R"({"part": "straight", "up": "1 m", "diameter": "150 mm",
        "wall": "single-wall steel", "zone": "room"})";
    for (int i = 0; i < 39; ++i) {
        run += R"(, {"part": "elbow", "angle": "45 deg"}, )";
        run += i % 2 == 0 ? R"({"part": "straight", "across": "0.5 m", "rise": "0.5 m"})"
                          : R"({"part": "straight", "up": "0.6 m"})";
    }
    run +=
        R"(, {"part": "elbow", "angle": "45 deg", "zone": "outdoors"}, {"part": "straight", "up": "1 m"})";
    FitterJob job = thick;
    job.run = run;
    const PartsList bought = listed(job);
    CHECK_FALSE(bought.exact);
    std::size_t straights = 0;
    for (const PipeStretch& stretch : bought.stretches) {
        CHECK_FALSE(stretch.pieces.empty());
        ++straights;
    }
    CHECK(straights > 32);
    StockPiece pipe;
    pipe.wall = "single-wall steel";
    pipe.diameter_m = 0.15;
    pipe.length_m = 1.0;
    pipe.count = 3.0;
    PartsWishes wishes;
    wishes.at_hand = {pipe};
    wishes.from_box = true;
    CHECK(count_with(listed(job, wishes), "length of") == 3.0);
}
