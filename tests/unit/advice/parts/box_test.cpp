#include "catch.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "written_parts.hpp"

#include <algorithm>
#include <numbers>

using namespace fluewright;

namespace {

constexpr double box_inch_m = 0.0254;

/// 6 in pipe up, a bend, across, a tee and a chimney along the wall outdoors.
Installation wall_job() {
    Installation in;
    in.units = FileUnits::us;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 6.0 * box_inch_m;
    Part up = straight_up(27.0 * box_inch_m, "single-wall steel", Zone::room);
    Part bend = named(PartKind::elbow);
    bend.angle_rad = 0.5 * std::numbers::pi;
    Part across = named(PartKind::straight);
    across.across_m = 25.0 * box_inch_m;
    across.rise_m = box_inch_m;
    Part tee = named(PartKind::tee);
    tee.cleanout = true;
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

StockPiece straight_piece(std::string wall, double inches, double count, double size_in = 6.0) {
    StockPiece piece;
    piece.wall = std::move(wall);
    piece.diameter_m = size_in * box_inch_m;
    piece.length_m = inches * box_inch_m;
    piece.count = count;
    return piece;
}

StockPiece fitting(StockKind kind, std::string wall, double count = 1.0) {
    StockPiece piece;
    piece.part = kind;
    if (!wall.empty()) {
        piece.wall = std::move(wall);
    }
    piece.diameter_m = 6.0 * box_inch_m;
    piece.count = count;
    return piece;
}

PartsList list_from_box(const Installation& in, const PartsWishes& wishes = {}) {
    const Result<Case, Faults> made = resolve(in);
    REQUIRE(made.has_value());
    return parts_list(in, *made, solve(*made, Detail::stations), wishes);
}

double count_of(const PartsList& list, std::string_view word, bool at_hand) {
    double count = 0.0;
    for (const PartsLine& line : list.lines) {
        count +=
            line.at_hand == at_hand && line.what.find(word) != std::string::npos ? line.count : 0.0;
    }
    return count;
}

const LeftInBox* left_of(const PartsList& list, std::string_view word) {
    for (const LeftInBox& left : list.left_in_box) {
        if (left.what.find(word) != std::string::npos) {
            return &left;
        }
    }
    return nullptr;
}

} // namespace

TEST_CASE("fittings come out of the box, and what is not used says why") {
    StockPiece elbow = fitting(StockKind::elbow, "single-wall steel", 2.0);
    elbow.angle_rad = 0.5 * std::numbers::pi;
    StockPiece flat = elbow;
    flat.angle_rad = 0.25 * std::numbers::pi;
    const PartsWishes wishes{{elbow,
                              flat,
                              fitting(StockKind::tee, "insulated 25 mm"),
                              fitting(StockKind::cap, ""),
                              fitting(StockKind::thimble, ""),
                              straight_piece("single-wall steel", 48.0, 1.0, 5.0),
                              straight_piece("insulated 50 mm", 36.0, 1.0)},
                             {},
                             false};
    const PartsList list = list_from_box(wall_job(), wishes);
    CHECK(count_of(list, "elbow of 90", true) == 1.0);
    CHECK(count_of(list, "elbow", false) == 0.0);
    CHECK(count_of(list, "tee with cleanout", true) == 1.0);
    CHECK(count_of(list, "cap", true) == 1.0);
    CHECK(count_of(list, "wall thimble", true) == 1.0);
    REQUIRE(left_of(list, "elbow of 90") != nullptr);
    CHECK(left_of(list, "elbow of 90")->count == 1.0);
    CHECK(left_of(list, "elbow of 45")->why.find("no such elbow") != std::string::npos);
    CHECK(left_of(list, "straight of 4 ft")->why == "its size is 5 in, that of the run 6 in");
    CHECK(left_of(list, "insulated 50 mm")->why == "the run has no straight of this wall");
}

TEST_CASE("an elbow of other ends is left, one that only lies the other way is not") {
    Installation in = wall_job();
    in.run[1].heater_end = PipeEnd::crimped;
    in.run[1].chimney_end = PipeEnd::plain;
    StockPiece elbow = fitting(StockKind::elbow, "single-wall steel");
    elbow.angle_rad = 0.5 * std::numbers::pi;
    elbow.heater_end = PipeEnd::plain;
    elbow.chimney_end = PipeEnd::crimped;
    CHECK(count_of(list_from_box(in, {{elbow}, {}, false}), "elbow", true) == 1.0);
    elbow.chimney_end = PipeEnd::plain;
    CHECK(count_of(list_from_box(in, {{elbow}, {}, false}), "elbow", true) == 0.0);
}

TEST_CASE("pipe with a socket does not lie in a run that is crimped") {
    StockPiece piece = straight_piece("single-wall steel", 36.0, 3.0);
    CHECK(list_from_box(wall_job(), {{piece}, {}, false}).left_in_box.size() == 1);
    piece.heater_end = PipeEnd::plain;
    piece.chimney_end = PipeEnd::socket;
    const PartsList list = list_from_box(wall_job(), {{piece}, {}, false});
    REQUIRE(list.left_in_box.size() == 1);
    CHECK(list.left_in_box[0].count == 3.0);
    CHECK(list.left_in_box[0].why.find("socket") != std::string::npos);
}

TEST_CASE("pipe whose wall is not told or not known is a fault that lists those of the run") {
    const Installation in = wall_job();
    const Result<Case, Faults> made = resolve(in);
    REQUIRE(made.has_value());
    StockPiece bare = straight_piece("x", 24.0, 10.0);
    bare.wall.reset();
    const std::vector<StockPiece> box{
        bare, straight_piece("insulatd 25 mm", 24.0, 1.0), fitting(StockKind::cap, "")};
    const Faults faults = box_faults(box, in, *made);
    REQUIRE(faults.size() == 2);
    CHECK(faults[0].pointer == "/stock/0");
    CHECK(faults[0].help.find("single-wall steel, insulated 25 mm") != std::string::npos);
    CHECK(faults[1].pointer == "/stock/1/wall");
    CHECK(faults[1].help == "did you mean `insulated 25 mm`?");
    // It is not used all the same.
    CHECK(count_of(list_from_box(in, {{bare}, {}, false}), "length", true) == 0.0);
}

TEST_CASE("stock lacks nothing it must have") {
    StockPiece short_one = straight_piece("single-wall steel", 24.0, 1.0);
    CHECK(stock_faults({short_one}).empty());
    short_one.shortest_m = *short_one.length_m;
    CHECK(stock_faults({short_one}).size() == 1);
    StockPiece elbow = fitting(StockKind::elbow, "single-wall steel");
    CHECK(stock_faults({elbow}).size() == 1);
    elbow.angle_rad = 1.0;
    CHECK(stock_faults({elbow}).empty());
    elbow.count.reset();
    CHECK(stock_faults({elbow}).size() == 1);
    CHECK(stock_faults({StockPiece{}}).size() == 1);
    CHECK(stock_faults({fitting(StockKind::reducer, "single-wall steel")}).size() == 1);
}

TEST_CASE("prices decide what is bought, and the sum is that of the priced lines") {
    const auto price = [](double inches, double each) {
        PiecePrice p;
        p.wall = "single-wall steel";
        p.length_m = inches * box_inch_m;
        p.each = each;
        return p;
    };
    // One of 36 in does for both straights; two of 24 in cost less.
    PartsWishes wishes;
    CHECK(count_of(list_from_box(wall_job()), "length of 3 ft", false) == 1.0);
    wishes.prices.currency = "marks";
    wishes.prices.prices = {price(24.0, 8.0), price(36.0, 20.0)};
    PiecePrice band;
    band.what = "locking band";
    band.each = 3.0;
    wishes.prices.prices.push_back(band);
    const PartsList list = list_from_box(wall_job(), wishes);
    CHECK(count_of(list, "single-wall steel, length of 2 ft", false) == 2.0);
    REQUIRE(list.price.has_value());
    CHECK(*list.price == Approx(2.0 * 8.0 + 3.0 * count_of(list, "locking band", false)));
    CHECK(list.unpriced > 3);
    // By its length, 36 in costs less again.
    PiecePrice metre;
    metre.wall = "single-wall steel";
    metre.per_metre = 10.0;
    wishes.prices.prices = {metre};
    CHECK(count_of(list_from_box(wall_job(), wishes), "length of 3 ft", false) == 1.0);
}

TEST_CASE("the list holds what the run passes through, each once") {
    Installation in = wall_job();
    in.run = {straight_up(0.9, "single-wall steel", Zone::room),
              straight_up(1.2, "insulated 50 mm", Zone::room),
              straight_up(1.5, "insulated 50 mm", Zone::attic),
              straight_up(1.8, "insulated 50 mm", Zone::outdoors),
              named(PartKind::cap)};
    in.site.roof.pitch_rad = std::numbers::pi / 6.0;
    in.site.roof.top_above_roof_m = 1.7;
    PartsList list = list_from_box(in);
    CHECK(count_of(list, "ceiling support", false) == 1.0);
    CHECK(count_of(list, "wall support", false) == 0.0);
    CHECK(count_of(list, "wall band", false) == 0.0);
    CHECK(count_of(list, "ceiling firestop", false) == 1.0);
    CHECK(count_of(list, "attic shield", false) == 1.0);
    CHECK(count_of(list, "roof flashing for a pitch of 30 deg", false) == 1.0);
    CHECK(count_of(list, "storm collar", false) == 1.0);
    CHECK(count_of(list, "roof brace", false) == 1.0);
    CHECK(count_of(list, "slip joint", false) == 1.0);
    CHECK(count_of(list, "stove paint rated at least", false) == 1.0);
    // Told as passing the ceiling and the roof, it passes each once all the same.
    in.run[2].passes = Passage::ceiling;
    in.run[3].passes = Passage::roof;
    list = list_from_box(in);
    CHECK(count_of(list, "ceiling firestop", false) == 1.0);
    CHECK(count_of(list, "storm collar", false) == 1.0);
    // 5 ft above the roof stand by themselves.
    in.site.roof.top_above_roof_m = 1.524;
    CHECK(count_of(list_from_box(in), "roof brace", false) == 0.0);
    for (const PartsLine& line : list.lines) {
        INFO(line.what);
        // What the run itself tells is computed and has no source.
        const bool told = !line.source.empty() || line.why.find("(computed)") != std::string::npos;
        CHECK(line.why.empty() != told);
    }
}

TEST_CASE("nothing is bought that makes a forbidden way look right") {
    Installation in = wall_job();
    in.run = {straight_up(1.5, "single-wall steel", Zone::room),
              straight_up(3.0, "insulated 50 mm", Zone::outdoors),
              named(PartKind::cap)};
    CHECK(list_from_box(in).dangers.empty());
    in.run[0].passes = Passage::ceiling;
    const PartsList list = list_from_box(in);
    REQUIRE(list.dangers.size() == 1);
    CHECK(list.dangers[0].id == "pipe-passes-where-it-must-not");
    CHECK(list.dangers[0].part == 0);
    CHECK(count_of(list, "firestop", false) == 0.0);
    // The same of pipe that only its zones tell of.
    in.run[0].passes.reset();
    in.run[1].wall = "single-wall steel";
    CHECK(count_of(list_from_box(in), "flashing", false) == 0.0);
}

TEST_CASE("a thermometer is listed where it is required for, of the kind that reads") {
    PartsWishes wishes;
    CHECK(count_of(list_from_box(wall_job(), wishes), "thermometer", false) == 0.0);
    wishes.thermometer = true;
    CHECK(count_of(list_from_box(wall_job(), wishes), "magnet thermometer", false) == 1.0);
    Installation in = wall_job();
    in.run[0].wall = "double-wall connector";
    CHECK(count_of(list_from_box(in, wishes), "probe thermometer", false) == 1.0);
}

TEST_CASE("along a wall outdoors stand a wall support and bands") {
    const PartsList list = list_from_box(wall_job());
    CHECK(count_of(list, "wall support with a plate under the tee", false) == 1.0);
    CHECK(count_of(list, "wall band", false) == 1.0);
    CHECK(count_of(list, "wall thimble", false) == 1.0);
    CHECK(count_of(list, "roof", false) == 0.0);
}

TEST_CASE("a liner is one piece, whatever is sold") {
    Installation in = wall_job();
    in.run[3].wall = "flexible liner";
    in.run[3].zone = Zone::room;
    in.run[4] = straight_up(11.5, "flexible liner", Zone::room);
    in.run.insert(in.run.begin() + 5, straight_up(0.5, "flexible liner", Zone::outdoors));
    const PartsList list = list_from_box(in);
    for (const PipeStretch& stretch : list.stretches) {
        if (stretch.kind == WallKind::liner) {
            CHECK(stretch.pieces.size() == 1);
            CHECK(stretch.note.find("order it in one length") != std::string::npos);
        }
    }
    CHECK(list.lines.size() > 5);
}
