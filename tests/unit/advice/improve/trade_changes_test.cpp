// Changes as a fitter makes them: common practice, no source.
#include "catch.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "improved.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

using namespace fluewright;
using Json = nlohmann::json;

namespace {

const Json room_pipe{{"part", "straight"},
                     {"up", "1.2 m"},
                     {"diameter", "150 mm"},
                     {"wall", "single-wall steel"},
                     {"zone", "room"}};

Json beech_stove_with(const std::vector<Json>& run) {
    const Json fuel{{"name", "beech"}, {"moisture", "17 %"}};
    const Json outlet{{"diameter", "150 mm"}, {"height", "0.8 m"}};
    const Json burn_rate{{"low", "1 kg/h"}, {"high", "3 kg/h"}};
    Json file;
    file["site"]["weather"] =
        Json::array({Json{{"name", "cool"}, {"outdoor_temperature", "5 degC"}}});
    file["appliance"] =
        Json{{"type", "stove"}, {"fuel", fuel}, {"outlet", outlet}, {"burn_rate", burn_rate}};
    file["run"] = run;
    return file;
}

Installation file_read(const Json& file) {
    const ReadResult read = read_installation(file.dump());
    REQUIRE(read);
    return *read;
}

std::vector<Remedy> offered(const Installation& in, RemedyKind kind) {
    const auto present = resolve(in);
    REQUIRE(present);
    std::vector<Remedy> all = possible_remedies(in, *present);
    std::erase_if(all, [&](const Remedy& remedy) { return remedy.kind != kind; });
    return all;
}

Json turn_of(const char* angle) {
    return Json{{"part", "elbow"}, {"angle", angle}};
}

Json out_of_the_wall(const char* rise) {
    return Json{{"part", "straight"}, {"across", "0.6 m"}, {"rise", rise}, {"passes", "wall"}};
}

Json up_in(const char* zone) {
    return Json{{"part", "straight"}, {"up", "4.5 m"}, {"zone", zone}};
}

const Json top_cap{{"part", "cap"}};

/// The part under the chimney once the pipe that leaves the room is insulated.
Part foot_of_chimney(const std::vector<Json>& run) {
    const Installation in = file_read(beech_stove_with(run));
    const std::vector<Remedy> remedies = offered(in, RemedyKind::insulate_outside);
    REQUIRE_FALSE(remedies.empty());
    const auto built = apply(remedies.front(), in);
    REQUIRE(built);
    return built->run[3];
}

} // namespace

TEST_CASE("a chimney that takes the place of pipe outdoors stands on a tee with a cleanout") {
    const Part tee = foot_of_chimney({room_pipe,
                                      turn_of("90 deg"),
                                      out_of_the_wall("13 mm"),
                                      turn_of("90 deg"),
                                      up_in("outdoors"),
                                      top_cap});
    CHECK(tee.part == PartKind::tee);
    CHECK(tee.flow == TeeFlow::side);
    CHECK(tee.cleanout == Flag{true});
    CHECK(tee.wall == "insulated 25 mm");

    const Part in_attic = foot_of_chimney({room_pipe,
                                           turn_of("90 deg"),
                                           out_of_the_wall("13 mm"),
                                           turn_of("90 deg"),
                                           up_in("attic"),
                                           up_in("outdoors"),
                                           top_cap});
    CHECK(in_attic.part == PartKind::elbow);
}

TEST_CASE("pipe that lies upside down is turned round") {
    Json down = room_pipe;
    down["chimney_end"] = "crimped";
    down["heater_end"] = "plain";
    const Installation in = file_read(beech_stove_with({down, up_in("outdoors"), top_cap}));
    const std::vector<Remedy> remedies = offered(in, RemedyKind::turn_round);
    REQUIRE(remedies.size() == 1);
    CHECK(remedies.front().effort == Approx(1.0));
    const auto built = apply(remedies.front(), in);
    REQUIRE(built);
    CHECK(built->run.front().heater_end == PipeEnd::crimped);
    CHECK(built->run.front().chimney_end == PipeEnd::plain);

    const Installation upright =
        file_read(beech_stove_with({room_pipe, up_in("outdoors"), top_cap}));
    CHECK(offered(upright, RemedyKind::turn_round).empty());
}

TEST_CASE("no blade and no regulator goes into a run that is all chimney") {
    Json chimney = room_pipe;
    chimney["wall"] = "insulated 25 mm";
    const Installation all = file_read(beech_stove_with({chimney, up_in("outdoors"), top_cap}));
    CHECK(offered(all, RemedyKind::fit_damper).empty());
    CHECK(offered(all, RemedyKind::fit_regulator).empty());

    Json outdoors = up_in("outdoors");
    outdoors["wall"] = "insulated 25 mm";
    const Installation piped = file_read(beech_stove_with({room_pipe, outdoors, top_cap}));
    CHECK_FALSE(offered(piped, RemedyKind::fit_damper).empty());
}
