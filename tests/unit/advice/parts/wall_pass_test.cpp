#include "catch.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "written_parts.hpp"

#include <algorithm>
#include <numbers>

using namespace fluewright;

namespace {

constexpr double inch_m = constants::inch_m;

/// 6 in pipe up, a bend, level through a wall to a chimney outdoors.
Installation through_a_wall(Choice<PassThrough> way) {
    Installation in;
    in.units = FileUnits::us;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "oak";
    in.appliance.outlet.diameter_m = 6.0 * inch_m;
    Part up = straight_up(48.0 * inch_m, "single-wall steel", Zone::room);
    up.diameter_m = 6.0 * inch_m;
    Part bend = named(PartKind::elbow);
    bend.angle_rad = 0.5 * std::numbers::pi;
    Part across = named(PartKind::straight);
    across.across_m = 36.0 * inch_m;
    across.rise_m = inch_m;
    across.passes = Passage::wall;
    across.pass_through = way;
    Part tee = named(PartKind::tee);
    tee.wall = "insulated 25 mm";
    tee.zone = Zone::outdoors;
    in.run = {up,
              bend,
              across,
              tee,
              straight_up(4.2, "insulated 25 mm", Zone::outdoors),
              named(PartKind::cap)};
    return in;
}

PartsList listed(const Installation& in) {
    const Result<Case, Faults> made = resolve(in);
    REQUIRE(made.has_value());
    return parts_list(in, *made, solve(*made, Detail::stations), {{}, {}, false});
}

/// Lines whose name holds the words, as "count name, size: reason".
std::string lines_of(const PartsList& list, std::string_view words) {
    std::string text;
    for (const PartsLine& line : list.lines) {
        if (line.what.find(words) != std::string::npos) {
            text += std::to_string(static_cast<int>(line.count)) + ' ' + line.what + ", "
                    + line.size + ": " + line.why + '\n';
        }
    }
    return text;
}

struct WallJob {
    PassThrough way;
    std::vector<std::string_view> wanted; ///< "count name, size"
    std::string_view opening;             ///< clear of wood, as a fitter frames it
    std::vector<std::string_view> not_wanted;
};

/// What a fitter takes along for 6 in pipe, from the handbooks' figures: liner 5/8 in and 12 in of
/// brick; 1 in of insulation and 9 in of air; two channels of 1 in and 6 in of glass fiber; 1 in of
/// air, 1 in of insulation and 2 in of air; 18 in of wood cut away.
const std::vector<WallJob> wall_jobs{
    {PassThrough::brick,
     {"1 fireclay liner through the wall, 6 in", "1 brickwork round the liner"},
     "2 ft 7 1/4 in by 2 ft 7 1/4 in",
     {"thimble", "cover", "factory-built"}},
    {PassThrough::insulated_length,
     {"1 factory-built chimney length through the wall, 6 in", "2 cover plate"},
     "2 ft 2 in by 2 ft 2 in",
     {"thimble", "brick", "glass fiber"}},
    {PassThrough::ventilated_thimble,
     {"1 ventilated wall thimble, 6 in", "1 glass fiber", "2 cover plate"},
     "22 in by 22 in",
     {"brick", "factory-built"}},
    {PassThrough::larger_insulated_length,
     {"1 factory-built chimney length through the wall, 8 in", "2 cover plate"},
     "14 in by 14 in",
     {"thimble", "brick", "glass fiber"}},
    {PassThrough::wood_cut_back,
     {"2 noncombustible cover for the opening"},
     "3 ft 6 in by 3 ft 6 in",
     {"thimble", "brick", "factory-built"}},
    {PassThrough::noncombustible_wall,
     {"1 wall thimble, 6 in"},
     "",
     {"brick", "factory-built", "cover", "glass fiber"}},
};

} // namespace

TEST_CASE("each way through a wall has its own parts and its own opening", "[parts]") {
    for (const WallJob& job : wall_jobs) {
        CAPTURE(name(job.way));
        const PartsList list = listed(through_a_wall(job.way));
        const std::string all = lines_of(list, "");
        for (const std::string_view words : job.wanted) {
            CAPTURE(words);
            CHECK(all.find(words) != std::string::npos);
        }
        for (const std::string_view words : job.not_wanted) {
            CAPTURE(words);
            CHECK(lines_of(list, words).empty());
        }
        CHECK(lines_of(list, "trim collar").starts_with("1 "));
        CHECK((all.find("clear of combustibles") != std::string::npos) == !job.opening.empty());
        CHECK(all.find(job.opening) != std::string::npos);
    }
}

TEST_CASE("an opening is as large as the file has it where that is more", "[parts]") {
    Installation in = through_a_wall(PassThrough::ventilated_thimble);
    in.run[2].pass_through_clearance_m = 8.0 * inch_m;
    CHECK(lines_of(listed(in), "glass fiber").find("2 ft 2 in by 2 ft 2 in") != std::string::npos);
    in.run[2].pass_through_clearance_m = 3.0 * inch_m;
    CHECK(lines_of(listed(in), "glass fiber").find("22 in by 22 in") != std::string::npos);
}

TEST_CASE("nothing is sold for pipe that no system takes through the wall", "[parts]") {
    const PartsList list = listed(through_a_wall(PassThrough::none));
    CHECK(lines_of(list, "thimble").empty());
    CHECK(lines_of(list, "trim collar").empty());
    CHECK(std::any_of(list.assumed.begin(), list.assumed.end(), [](const std::string& said) {
        return said.find("nothing is listed for the wall at straight 3") != std::string::npos;
    }));
    // Not told: a thimble as the trade sells it, and a word that the system decides.
    const std::string open = lines_of(listed(through_a_wall(std::nullopt)), "wall thimble");
    CHECK(open.starts_with("1 wall thimble, 6 in: the file does not tell"));
}

TEST_CASE("where a chimney passes a ceiling, a roof or a wall its label gives the opening",
          "[parts]") {
    Installation in = through_a_wall(PassThrough::brick);
    in.run = {in.run.front(),
              straight_up(1.0, "insulated 25 mm", Zone::room),
              straight_up(2.0, "insulated 25 mm", Zone::attic),
              straight_up(2.0, "insulated 25 mm", Zone::outdoors),
              named(PartKind::cap)};
    in.run[1].passes = Passage::ceiling;
    in.run[2].passes = Passage::roof;
    // 6 in inside, 25 mm of insulation between two sheets, and the usual 2 in: 12 in and a little.
    const std::string usual = lines_of(listed(in), "ceiling firestop");
    CHECK(usual.find("frame an opening of 12") != std::string::npos);
    CHECK(usual.find("its label decides") != std::string::npos);
    in.run[1].listed_clearance_m = 3.0 * inch_m;
    const std::string label = lines_of(listed(in), "ceiling firestop");
    CHECK(label.find("frame an opening of 14") != std::string::npos);
    CHECK(label.find("as its label asks") != std::string::npos);
    CHECK(lines_of(listed(in), "roof flashing").find("frame an opening of 12")
          != std::string::npos);
}
