// Fittings as they are bought: by both sizes, with what they stand on, and with what stands against
// them.
#include "catch.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "unit/plain_stove.hpp"

#include <algorithm>
#include <cmath>

using namespace fluewright;

namespace {

PartsList bought_for(const Installation& in) {
    const Result<Case, Faults> made = resolve(in);
    REQUIRE(made.has_value());
    return parts_list(in, *made, solve(*made, Detail::stations));
}

const PartsLine* fitting_of(const PartsList& list, std::string_view word) {
    for (const PartsLine& line : list.lines) {
        if (line.what.find(word) != std::string::npos) {
            return &line;
        }
    }
    return nullptr;
}

const std::string short_pipe = R"({"part": "straight", "up": "0.6 m", "diameter": "150 mm",
    "wall": "single-wall steel", "zone": "room", "clearance": "900 mm")";

} // namespace

TEST_CASE("a part that changes the size is listed by both its sizes, heater first", "[parts]") {
    const PartsList wider = bought_for(stove_with(short_pipe + R"(}, {"part": "increaser",
        "diameter": "200 mm"}, {"part": "straight", "up": "5 m", "wall": "insulated 25 mm",
        "zone": "outdoors"}, {"part": "cap", "build": "plain"})"));
    REQUIRE(fitting_of(wider, "increaser") != nullptr);
    CHECK(fitting_of(wider, "increaser")->size == "150 mm to 200 mm");
    CHECK(fitting_of(wider, "cap")->size == "200 mm");
    // The first part of the run stands on the collar.
    const PartsList first = bought_for(stove_with(R"({"part": "reducer", "diameter": "130 mm",
        "wall": "single-wall steel", "zone": "room"}, {"part": "straight", "up": "5 m", "zone": "outdoors"})"));
    REQUIRE(fitting_of(first, "reducer") != nullptr);
    CHECK(fitting_of(first, "reducer")->size == "150 mm to 130 mm");
}

TEST_CASE("a draft regulator is listed with its tee, and the cuts leave room for that", "[parts]") {
    const std::string above = R"(, {"part": "straight", "up": "0.8 m"}, {"part": "straight",
        "up": "5 m", "wall": "insulated 25 mm", "zone": "outdoors"})";
    const PartsList list =
        bought_for(stove_with(short_pipe + R"(}, {"part": "draft regulator"})" + above));
    const PartsLine* const tee = fitting_of(list, "tee for the regulator");
    REQUIRE(tee != nullptr);
    CHECK(tee->size == "150 mm");
    CHECK(tee->count == 1.0);
    CHECK(tee->weight_kg > 0.0);
    CHECK(tee->in_run);
    CHECK(tee->why.find("assumed") != std::string::npos);
    CHECK(std::any_of(list.assumed.begin(), list.assumed.end(), [](const std::string& words) {
        return words.find("regulator stands on a tee") != std::string::npos;
    }));
    // From the middle of a tee to its face: half of 150 mm and a collar of 50 mm.
    CHECK(list.stretches[0].between_m == Approx(0.6 - 0.075 - 0.05));
    CHECK(list.stretches[1].between_m == Approx(0.8 - 0.075 - 0.05 - 0.1)); // and the adapter

    // On an elbow it stands with the whole of its tee.
    const PartsList bent = bought_for(stove_with(
        short_pipe + R"(}, {"part": "elbow", "angle": "90 deg"}, {"part": "draft regulator"},
        {"part": "straight", "across": "1 m", "rise": "0 m"}, {"part": "elbow", "angle": "90 deg"})"
        + above));
    const double elbow_m = 0.75 * 0.15 + 0.05;
    CHECK(bent.stretches[1].between_m == Approx(1.0 - 2.0 * elbow_m - 0.15 - 0.1));
}

TEST_CASE("a draft regulator in the free end of a tee takes no other", "[parts]") {
    const auto with_tee = [](const std::string& more) {
        return bought_for(stove_with(short_pipe + R"(}, {"part": "elbow", "angle": "90 deg"},
            {"part": "straight", "across": "1 m", "rise": "20 mm"}, {"part": "tee", "flow": "side")"
                                     + more + R"(}, {"part": "draft regulator"},
            {"part": "straight", "up": "5 m", "zone": "outdoors"})"));
    };
    const PartsList free = with_tee("");
    CHECK(fitting_of(free, "for the regulator") == nullptr);
    CHECK(fitting_of(free, "cleanout plug") == nullptr);
    CHECK(free.stretches[2].between_m == Approx(5.0 - 0.075 - 0.05));
    // Swept through that end, the tee has none left.
    CHECK(fitting_of(with_tee(R"(, "cleanout": true)"), "for the regulator") != nullptr);
}

TEST_CASE("an elbow that leans a chimney too far says so on its line", "[parts]") {
    const auto with = [](const std::string& angle, const std::string& way) {
        return bought_for(
            stove_with(short_pipe + R"(}, {"part": "straight", "up": "1 m",
            "wall": "insulated 25 mm", "zone": "room"}, {"part": "elbow", "angle": ")"
                           + angle + R"("}, {"part": "straight", )" + way + R"(},
            {"part": "elbow", "angle": ")"
                           + angle + R"("}, {"part": "straight", "up": "4 m", "zone": "outdoors"})",
                       R"("rules": "us", )"));
    };
    const auto cautioned = [](const PartsList& list) {
        return std::count_if(list.lines.begin(), list.lines.end(), [](const PartsLine& line) {
            return line.what.find("elbow") != std::string::npos
                   && line.why.find("Chimney offset beyond its listing") != std::string::npos
                   && line.why.find("30 deg") != std::string::npos && !line.source.empty();
        });
    };
    CHECK(cautioned(with("45 deg", R"("across": "0.7 m", "rise": "0.7 m")"))
          == 2); // both, although the check names one place
    CHECK(cautioned(with("30 deg", R"("across": "0.5 m", "rise": "0.866 m")")) == 0);
}

TEST_CASE("what replaces a pipe has the ends of its own kind", "[parts]") {
    const std::string written = R"("heater_end": "crimped", "chimney_end": "plain", "screws": 3,
        "gauge": 24, "lap": "50 mm", "slip_joint": true, "listed_clearance": "450 mm",
        "rated_surface_temperature": "300 degC", "joint": "ordinary")";
    const Installation bare = stove_with(short_pipe + ", " + written + R"(}, {"part": "straight",
        "up": "4 m", "zone": "outdoors", "clearance": "900 mm", )"
                                         + written + R"(},
        {"part": "cap", "build": "plain"})");
    const auto made = apply(
        Remedy{.kind = RemedyKind::insulate_outside, .amount = 0.0, .word = "insulated 50 mm"},
        bare);
    REQUIRE(made);
    const Part& part = made->run[1];
    CHECK(part.wall == "insulated 50 mm");
    CHECK_FALSE(part.heater_end);
    CHECK_FALSE(part.chimney_end);
    CHECK_FALSE(part.gauge);
    CHECK_FALSE(part.screws);
    CHECK_FALSE(part.lap_m);
    CHECK_FALSE(part.slip_joint);
    CHECK_FALSE(part.listed_clearance_m);
    CHECK_FALSE(part.rated_surface_temperature_k);
    CHECK(part.clearance_m == bare.run[1].clearance_m); // where the wood stands is of the house
    CHECK(made->run[0].heater_end == PipeEnd::crimped); // nobody touches the pipe in the room
    const PartsList list = bought_for(*made);
    const PartsLine* const adapter = fitting_of(list, "adapter");
    REQUIRE(adapter != nullptr);
    CHECK(adapter->what.find("adapter from pipe to insulated 50 mm") == 0);
    CHECK(adapter->where == "between straight 1 and straight 2");
    CHECK(fitting_of(bought_for(bare), "adapter") == nullptr);
}
