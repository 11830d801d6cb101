#include "catch.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <string>

using namespace fluewright;

namespace {

/// A file of a stove with a 6 in collar and these parts.
Installation written(const std::string& parts, const std::string& fuel = "oak") {
    const std::string type =
        fuel == "natural gas" ? R"(draft-hood", "heat_input": "12 kW)" : "stove";
    const auto read =
        read_installation(R"({"appliance": {"type": ")" + type + R"(", "fuel": ")" + fuel
                          + R"(", "outlet": {"diameter": "6 in"}}, "run": [)" + parts + "]}");
    REQUIRE(read.has_value());
    return *read;
}

Run run_of(const std::string& parts, const std::string& fuel = "oak") {
    const auto resolved = resolve(written(parts, fuel));
    if (!resolved) {
        FAIL(resolved.error().front().message);
    }
    return resolved->run;
}

/// The one fault of a run that cannot be built.
Fault fault_of(const std::string& parts) {
    const auto resolved = resolve(written(parts));
    REQUIRE_FALSE(resolved.has_value());
    REQUIRE(resolved.error().size() == 1);
    return resolved.error().front();
}

/// One letter a part: c for connector, h for chimney.
std::string stretches(const Run& run) {
    std::string letters;
    for (const RunPart& part : run.parts) {
        letters += part.in_chimney() ? 'h' : 'c';
    }
    return letters;
}

const std::string single_up =
    R"({"part": "straight", "up": "1 m", "wall": "single-wall steel", "zone": "room"})";
const std::string elbow = R"({"part": "elbow", "angle": "90 deg"})";
const std::string across = R"({"part": "straight", "across": "0.6 m", "rise": "12 mm"})";
const std::string chimney_out =
    R"({"part": "straight", "up": "4 m", "wall": "insulated 25 mm", "zone": "outdoors"})";
const std::string cap = R"({"part": "cap", "build": "plain"})";

} // namespace

TEST_CASE("what a pipe is decides whether it is connector or chimney, not where it stands") {
    CHECK(stretches(run_of(single_up + "," + chimney_out + "," + cap)) == "chh");
    // Single-wall pipe stays connector in the attic, in a closet's chase and outdoors.
    for (const char* zone : {"attic", "chase", "outdoors"}) {
        const std::string there =
            R"({"part": "straight", "up": "2 m", "zone": ")" + std::string{zone} + R"("})";
        CHECK(stretches(run_of(single_up + "," + there + "," + chimney_out + "," + cap)) == "cchh");
    }
    // A bare stack has no chimney at all, and its cap goes with it.
    const Run bare =
        run_of(single_up + R"(, {"part": "straight", "up": "3 m", "zone": "outdoors"},)" + cap);
    CHECK(stretches(bare) == "ccc");
    CHECK(bare.chimney_start() == bare.parts.size());
    // Chimney is chimney in the room too, lying or standing.
    CHECK(stretches(run_of(single_up
                           + R"(, {"part": "straight", "up": "1 m", "wall": "insulated 25 mm"},)"
                           + chimney_out))
          == "chh");
    CHECK(
        stretches(run_of(
            single_up + "," + elbow
            + R"(, {"part": "straight", "across": "0.6 m", "rise": "12 mm", "wall": "insulated 25 mm"},)"
              R"({"part": "tee"},)"
            + chimney_out))
        == "cchhh");
    // Double-wall pipe is connector of a stove and, as a vent, the chimney of a gas appliance.
    const std::string vent =
        R"({"part": "straight", "up": "4 m", "wall": "type b vent", "zone": "outdoors"})";
    CHECK(stretches(run_of(vent)) == "c");
    CHECK(stretches(run_of(vent, "natural gas")) == "h");
}

TEST_CASE("the base tee belongs to the chimney, an elbow below it does not") {
    const std::string tee = R"({"part": "tee", "cleanout": true})";
    const Run run = run_of(single_up + "," + elbow + "," + across + "," + tee + "," + chimney_out);
    CHECK(stretches(run) == "ccchh");
    CHECK(run.turns(Stretch::connector).count == 1);
    CHECK(run.turns(Stretch::chimney).count == 1);
    CHECK(
        stretches(run_of(single_up + "," + elbow + "," + across + "," + elbow + "," + chimney_out))
        == "cccch");
    // A tee that is passed straight is a part of the pipe.
    CHECK(stretches(run_of(single_up + R"(, {"part": "tee", "flow": "straight"}, )" + chimney_out))
          == "cch");
}

TEST_CASE("the file may say where the chimney begins") {
    const std::string said =
        R"({"part": "straight", "up": "3 m", "wall": "single-wall steel heavy", "zone": "outdoors",
            "belongs_to": "chimney"})";
    const Run run = run_of(single_up + "," + said + "," + cap);
    CHECK(stretches(run) == "chh");
    CHECK(run.parts[1].stretch.given);
    CHECK_FALSE(run.parts[0].stretch.given);
}

TEST_CASE("a straight lies level below 30 degrees and is upright from 70") {
    CHECK(lie_of(0.0, 0.0) == Lie::none);
    CHECK(lie_of(1.0, 0.02) == Lie::level);
    CHECK(lie_of(1.0, 0.499) == Lie::level);
    CHECK(lie_of(1.0, 0.5) == Lie::sloped);
    CHECK(lie_of(1.0, 0.7071) == Lie::sloped);
    CHECK(lie_of(1.0, 0.94) == Lie::upright);
    CHECK(lie_of(1.0, -1.0) == Lie::upright);
}

TEST_CASE("6 in and 152 mm are one size, 6 in and 150 mm are two") {
    const auto area = [](double d_m) { return d_m * d_m; };
    CHECK(is_same_size(area(0.1524), area(0.152)));
    CHECK_FALSE(is_same_size(area(0.1524), area(0.150)));
    CHECK_FALSE(is_smaller_size(area(0.152), area(0.1524)));
    CHECK(is_smaller_size(area(0.150), area(0.1524)));
    CHECK_FALSE(is_smaller_size(area(0.1524), area(0.150)));
}

TEST_CASE("a bend has to lead from one straight into the next") {
    const Fault level = fault_of(single_up + R"(, {"part": "elbow", "angle": "45 deg"}, )" + across
                                 + "," + elbow + "," + chimney_out);
    CHECK(level.pointer == "/run/1");
    CHECK(level.message.find("straight 1 goes up") != std::string::npos);
    CHECK(level.message.find("straight 3 goes across") != std::string::npos);
    CHECK(level.message.find("elbow 2 turns 45") != std::string::npos);

    const Fault none = fault_of(single_up + "," + across + "," + elbow + "," + chimney_out);
    CHECK(none.pointer == "/run/1");
    CHECK(none.message.find("no bend between") != std::string::npos);

    // Two bends of 45 degrees, alone or with a sloping pipe between, do what one of 90 does.
    const std::string half = R"({"part": "elbow", "angle": "45 deg"})";
    CHECK(
        run_of(single_up + "," + half + "," + half + "," + across + "," + elbow + "," + chimney_out)
            .parts.size()
        == 6);
    const std::string slope = R"({"part": "straight", "across": "0.5 m", "rise": "0.5 m"})";
    CHECK(run_of(single_up + "," + half + "," + slope + "," + half + "," + chimney_out).parts.size()
          == 5);
    // Level pipe that rises a quarter inch in the foot is not written into its elbow.
    CHECK(run_of(single_up + "," + elbow + "," + across + "," + elbow + "," + chimney_out)
              .parts.size()
          == 5);
    // Two level pipes may meet at any angle; the same way on needs no bend.
    CHECK(run_of(single_up + "," + elbow + "," + across + "," + half + "," + across + "," + across
                 + "," + elbow + "," + chimney_out)
              .parts.size()
          == 8);
}

TEST_CASE("what is not said of a bend follows from the straights beside it") {
    const std::string bend = R"({"part": "elbow"})";
    const std::string slope = R"({"part": "straight", "across": "0.5 m", "rise": "0.5 m"})";
    const Run offset =
        run_of(single_up + "," + bend + "," + slope + "," + bend + "," + chimney_out);
    CHECK(offset.parts[1].turn_rad == Approx(0.785398));
    CHECK_FALSE(offset.parts[1].turn_given);
    const Run square =
        run_of(single_up + "," + bend + "," + across + "," + bend + "," + chimney_out);
    CHECK(square.parts[1].turn_rad == Approx(1.570796));
    const Run passed = run_of(single_up + R"(, {"part": "tee"}, )" + chimney_out);
    CHECK(passed.parts[1].flow.value == TeeFlow::straight);
    CHECK(passed.parts[1].turn_rad == 0.0);
}

TEST_CASE("a run whose top would not be outdoors is a fault that names the missing zone") {
    const Fault bare = fault_of(R"({"part": "straight", "up": "4 m"})");
    CHECK(bare.pointer == "/run/0/zone");
    CHECK(bare.message.find("chimney top would end in the room") != std::string::npos);
    CHECK(bare.help.find(R"("zone": "outdoors")") != std::string::npos);
    const Fault attic =
        fault_of(single_up + R"(, {"part": "straight", "up": "4 m", "zone": "attic"}, )" + cap);
    CHECK(attic.pointer == "/run/2/zone");
    CHECK(attic.message.find("attic") != std::string::npos);
}

TEST_CASE("parts know their heights, their ends and what they go through") {
    const Run run =
        run_of(single_up
               + R"(, {"part": "straight", "up": "2 m", "zone": "attic", "heater_end": "socket"}, )"
               + chimney_out);
    CHECK(run.parts[1].foot_height_m == Approx(1.0));
    CHECK(run.parts[1].top_height_m == Approx(3.0));
    CHECK(run.rise_m() == Approx(7.0));
    CHECK(run.parts[1].goes_through(Passage::attic) == true);
    CHECK_FALSE(run.parts[0].goes_through(Passage::wall).has_value());
    CHECK(run.parts[0].heater_end.value == PipeEnd::crimped);
    CHECK_FALSE(run.parts[0].heater_end.given);
    CHECK(run.parts[1].heater_end.value == PipeEnd::socket);
    CHECK(run.parts[2].heater_end.value == PipeEnd::locking);
    CHECK(run.label_at(-1) == "the outlet");
    CHECK(run.label_at(0) == "straight 1");
    CHECK(run.label_at(3) == "the chimney top");
}
