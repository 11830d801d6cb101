#include "catch.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "written_parts.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

using namespace fluewright;

namespace {

/// 6 in single-wall pipe up, a bend, across, a tee, and a factory-built chimney outdoors.
Installation shed() {
    Installation in;
    in.units = FileUnits::us;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.1524;
    Weather cold;
    cold.name = "cold";
    cold.outdoor_temperature_k = 268.15;
    in.site.weather = {cold};
    Part up = straight_up(1.3, "single-wall steel", Zone::room);
    up.diameter_m = 0.1524;
    Part bend;
    bend.part = PartKind::elbow;
    Part across;
    across.part = PartKind::straight;
    across.across_m = 1.2;
    across.rise_m = 0.03;
    Part tee;
    tee.part = PartKind::tee;
    tee.cleanout = true;
    tee.wall = "insulated 25 mm";
    tee.zone = Zone::outdoors;
    Part chimney = straight_up(4.2, "insulated 25 mm", Zone::outdoors);
    Part cap;
    cap.part = PartKind::cap;
    in.run = {up, bend, across, tee, chimney, cap};
    return in;
}

PartsList listed(const Installation& in, const std::vector<StockPiece>& at_hand = {}) {
    const Result<Case, Faults> made = resolve(in);
    REQUIRE(made.has_value());
    return parts_list(in, *made, solve(*made, Detail::stations), {at_hand, {}, false});
}

double sum(const std::vector<StretchPiece>& pieces) {
    return std::accumulate(pieces.begin(), pieces.end(), 0.0, [](double m, const auto& piece) {
        return m + piece.length_m;
    });
}

const PartsLine* line_of(const PartsList& list, std::string_view word) {
    for (const PartsLine& line : list.lines) {
        if (line.what.find(word) != std::string::npos) {
            return &line;
        }
    }
    return nullptr;
}

StockPiece piece(std::string wall, double length_m, std::optional<double> count) {
    StockPiece p;
    p.wall = std::move(wall);
    p.length_m = length_m;
    p.count = count;
    return p;
}

} // namespace

TEST_CASE("pieces and laps make up each stretch to the millimetre") {
    const PartsList list = listed(shed());
    REQUIRE(list.stretches.size() == 3);
    for (const PipeStretch& stretch : list.stretches) {
        INFO(stretch.place);
        const double laying_m =
            sum(stretch.pieces) - stretch.lap_m * static_cast<double>(stretch.pieces.size());
        CHECK(laying_m == Approx(stretch.between_m + stretch.off_m).margin(0.003));
        for (const StretchPiece& piece : stretch.pieces) {
            CHECK(piece.length_m > 0.1);
        }
    }
    // Up 1300 mm to the centre of a gored bend of 0.75 x 152.4 mm radius and a 50 mm collar.
    CHECK(list.stretches[0].between_m == Approx(1.3 - 0.75 * 0.1524 - 0.05));
    // 1135.7 mm to lay: pieces of 48 in lay 1168.4 mm, so one piece of 1135.7 + 50.8 does.
    REQUIRE(list.stretches[0].pieces.size() == 1);
    CHECK(list.stretches[0].pieces[0].length_m
          == Approx(1.3 - 0.75 * 0.1524 - 0.05 + 0.0508).margin(0.0254 / 32.0 + 1e-9));
    // Across: bend at one end, at the other the adapter to the tee and the tee.
    CHECK(list.stretches[1].between_m
          == Approx(std::hypot(1.2, 0.03) - 0.75 * 0.1524 - 0.05 - 0.5 * 0.1524 - 0.05 - 0.1));
    CHECK(list.stretches[2].to_top);
}

TEST_CASE("a tee of which nothing is said is bought with what closes it") {
    Installation in = shed();
    const auto why = [](const Installation& of) {
        const PartsList list = listed(of);
        const PartsLine* const line = line_of(list, "cleanout plug");
        return line == nullptr ? std::string{} : line->why;
    };
    CHECK(why(in).find("assumed") == std::string::npos);
    CHECK(!why(in).empty());
    in.run[3].cleanout.reset();
    CHECK(why(in).find("assumed") != std::string::npos);
    const auto made = resolve(in);
    REQUIRE(made);
    CHECK(std::any_of(made->assumptions.begin(), made->assumptions.end(), [](const auto& a) {
        return a.pointer == "/run/3/cleanout" && a.word == "true";
    }));
    in.run[3].cleanout = false; // the file says that nothing comes off
    CHECK(why(in).empty());
}

TEST_CASE("cuts say which end to measure from") {
    const PartsList list = listed(shed());
    REQUIRE_FALSE(list.cuts.empty());
    for (const Cut& cut : list.cuts) {
        CHECK(cut.length_m < cut.from_m);
        CHECK(cut.measure.find(cut.from_offcut ? "offcut" : "keep the crimp") != std::string::npos);
    }
    Installation thick = shed();
    thick.run[0].wall = "single-wall steel heavy";
    thick.run[0].diameter_m = thick.appliance.outlet.diameter_m = 0.15;
    const PartsList socketed = listed(thick);
    REQUIRE_FALSE(socketed.cuts.empty());
    for (const Cut& cut : socketed.cuts) {
        CHECK_FALSE(cut.from_offcut);
        CHECK(cut.measure.find("keep the socket") != std::string::npos);
    }
}

TEST_CASE("small things are counted") {
    const PartsList list = listed(shed());
    // Joints under: pieces of pipe, the elbow and the adapter to the chimney; three screws each.
    const double pieces =
        static_cast<double>(list.stretches[0].pieces.size() + list.stretches[1].pieces.size());
    REQUIRE(line_of(list, "screws") != nullptr);
    CHECK(line_of(list, "screws")->count == Approx(3.0 * (pieces + 2.0)));
    // Bands: adapter to tee, tee to chimney, and between the lengths of the chimney.
    CHECK(line_of(list, "locking band")->count
          == Approx(1.0 + static_cast<double>(list.stretches[2].pieces.size())));
    CHECK(line_of(list, "furnace cement")->unit == "kg");
    CHECK(line_of(list, "tee with cleanout") != nullptr);
    CHECK(line_of(list, "cleanout plug") != nullptr);
    CHECK(line_of(list, "wall thimble") != nullptr);
    CHECK(line_of(list, "wall support")->where == "under tee 4");
    CHECK(line_of(list, "wall band")->count == Approx(1.0));
    CHECK(line_of(list, "hanger")->count == Approx(1.0));
    CHECK(line_of(list, "adapter from pipe to insulated 25 mm") != nullptr);
    CHECK(line_of(list, "plain cap") != nullptr);
    CHECK(list.weight_kg > 10.0);
    CHECK(list.weight_kg < 80.0);
}

TEST_CASE("pieces at hand are used first") {
    const PartsList bought = listed(shed());
    const PartsList helped = listed(shed(),
                                    {piece("single-wall steel", 1.25, 1.0),
                                     piece("single-wall steel", 1.1, 1.0),
                                     piece("insulated 25 mm", 0.9144, 2.0)});
    CHECK(helped.bought_m < bought.bought_m - 3.0);
    double at_hand = 0.0;
    for (const PartsLine& line : helped.lines) {
        at_hand += line.at_hand ? line.count : 0.0;
    }
    CHECK(at_hand == Approx(4.0));
}

TEST_CASE("the file's own lengths stand in for the catalog's") {
    Installation in = shed();
    in.stock = {piece("single-wall steel", 2.0, std::nullopt)};
    const PartsList list = listed(in);
    REQUIRE(list.groups.size() == 1);
    for (const Bar& bar : list.groups[0].plan.bars) {
        CHECK(list.groups[0].lengths[bar.length].length_m == Approx(2.0));
    }
}

TEST_CASE("growth is that of the metal at its heat, and names where it goes") {
    Installation in = shed();
    const PartsList list = listed(in);
    REQUIRE(list.growth.size() == 3);
    for (const Growth& growth : list.growth) {
        CHECK(growth.grows_m > 0.0);
        // Steel: 12 to 18 millionths per kelvin over 20 degC.
        const double per_k = growth.grows_m / growth.length_m / (growth.mean_wall_k - 293.15);
        CHECK(per_k > 11e-6);
        CHECK(per_k < 19e-6);
        CHECK(growth.free);
    }
    CHECK(list.growth[0].where.find("elbow 2") != std::string::npos);
    CHECK(list.growth[2].where.find("chimney top") != std::string::npos);
    // Pipe held between heater and chimney.
    in.run = {in.run[0], straight_up(3.0, "insulated 25 mm", Zone::outdoors)};
    CHECK_FALSE(listed(in).growth[0].free);
    in.run[0].slip_joint = true;
    const PartsList sliding = listed(in);
    CHECK(sliding.growth[0].where == "in its slip joint");
    // What the file has is bought, whether the run would need it or not.
    CHECK(std::any_of(sliding.lines.begin(), sliding.lines.end(), [](const PartsLine& line) {
        return line.what.find("slip joint") == 0;
    }));
}

TEST_CASE("the mass of pipe") {
    const Result<Case, Faults> made = resolve(shed());
    REQUIRE(made.has_value());
    // 0.6 mm of steel round 152.4 mm: pi x 0.153 x 0.0006 x 7850 = 2.26 kg/m.
    CHECK(wall_mass_kg_m(made->walls[0], 0.1524)
          == Approx(constants::pi * 0.153 * 0.0006 * 7850.0));
}

TEST_CASE("no stub: one length is cut so that the other stays whole") {
    Installation in = shed();
    in.units = FileUnits::metric;
    in.appliance.outlet.diameter_m = 0.15;
    in.run[0].diameter_m = 0.15;
    // 1 m lays 950 mm, so 1030 mm would leave a stub of 80 mm; 250 mm whole leave 830 mm.
    in.run[0].up_m = 1.03 + 0.75 * 0.15 + 0.05;
    const PartsList list = listed(in);
    REQUIRE(list.stretches[0].pieces.size() == 2);
    CHECK(list.stretches[0].pieces[0].length_m == Approx(0.25));
    CHECK(list.stretches[0].pieces[1].length_m == Approx(0.88));
}

TEST_CASE("a lap of the file stands in for the usual one") {
    Installation in = shed();
    in.run[0].lap_m = 0.03;
    const PartsList list = listed(in);
    CHECK(list.stretches[0].lap_m == Approx(0.03));
    CHECK(list.stretches[1].lap_m == Approx(0.0508));
}

TEST_CASE("a liner weighs its sheet, not the chimney round it, and is clamped at the top") {
    Installation in = shed();
    in.run[3].wall = in.run[4].wall = "flexible liner insulated";
    in.run[3].zone = in.run[4].zone = Zone::room;
    in.run[5].zone = Zone::outdoors;
    const PartsList list = listed(in);
    const PartsLine* liner = line_of(list, "flexible liner insulated, length");
    REQUIRE(liner != nullptr);
    // 0.15 mm of stainless steel round 152.4 mm: near 0.57 kg/m.
    CHECK(liner->weight_kg / 7.62
          == Approx(constants::pi * 0.15255 * 0.00015 * 7900.0).epsilon(0.02));
    CHECK(line_of(list, "top plate") != nullptr);
    REQUIRE(line_of(list, "loose insulation") != nullptr);
    CHECK(line_of(list, "loose insulation")->unit == "kg");
    // A liner of another size than its connector needs a reducer or increaser.
    in.run[3].diameter_m = 0.2032;
    CHECK(line_of(listed(in), "increaser, 6 in crimped below, 8 in plain above") != nullptr);
}

TEST_CASE("fittings that touch leave nothing to cut and say so") {
    Installation in = shed();
    in.run[2].across_m = 0.2;
    in.run[2].rise_m = 0.004;
    const PartsList list = listed(in);
    CHECK(list.stretches[1].pieces.empty());
    CHECK(list.stretches[1].off_m > 0.0);
    CHECK_FALSE(list.stretches[1].note.empty());
}

TEST_CASE("an oval collar takes an adapter or a reducer that ends round") {
    Installation in = shed();
    in.appliance.outlet = {};
    in.appliance.outlet.width_m = 8.0 * 0.0254;
    in.appliance.outlet.depth_m = 5.0 * 0.0254;
    in.appliance.outlet.shape = SectionShape::oval;
    const PartsList round = listed(in);
    CHECK(line_of(round, "oval-to-round adapter, 8 in x 5 in crimped below, 6 in plain above")
          != nullptr);
    // Oval pipe first, and a reducer that leads to round.
    in.run[0].diameter_m.reset();
    Part reducer = named(PartKind::reducer);
    reducer.diameter_m = 0.1524;
    in.run.insert(in.run.begin() + 1, reducer);
    const PartsList list = listed(in);
    CHECK(line_of(list, "oval-to-round reducer") != nullptr);
    CHECK(line_of(list, "oval-to-round adapter") == nullptr);
    REQUIRE_FALSE(list.stretches.empty());
    CHECK(list.stretches.front().size == "oval 8 in x 5 in");
    CHECK(list.stretches.back().size == "6 in");
}
