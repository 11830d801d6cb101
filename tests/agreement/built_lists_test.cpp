#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "law.hpp"
#include "property/random_installation.hpp"

#include <cmath>
#include <map>

using namespace fluewright;
using namespace fluewright::agreement;

namespace {

/// Pipe of the run and of other kinds, straight and bent, whole and telescoping.
std::vector<StockPiece> random_box(std::uint64_t seed, const Case& resolved) {
    property::Random random(seed + 77);
    std::vector<StockPiece> box;
    for (const RunPart& part : resolved.run.parts) {
        if (part.wall_kind == WallKind::masonry || !random.chance(0.5)) {
            continue;
        }
        StockPiece piece;
        piece.wall = resolved.walls[part.wall].name;
        piece.diameter_m = random.chance(0.9) ? part.bore.diameter_m : 0.2;
        piece.count = std::floor(random.between(1.0, 5.0));
        if (part.kind == PartKind::elbow) {
            piece.part = StockKind::elbow;
            piece.angle_rad = part.turn_rad;
        } else {
            piece.length_m = random.chance(0.5) ? 0.5 : random.between(0.2, 1.5);
            if (random.chance(0.2)) {
                piece.shortest_m = 0.7 * *piece.length_m;
            }
        }
        box.push_back(std::move(piece));
    }
    return box;
}

struct Ends {
    PipeEnd heater;
    PipeEnd chimney;
};

/// The ends of each piece as it lies once it is cut as the sheet says.
std::vector<Ends> ends_of(const PartsList& list, const PipeStretch& stretch, bool socketed) {
    const Ends whole =
        socketed ? Ends{PipeEnd::plain, PipeEnd::socket} : Ends{PipeEnd::crimped, PipeEnd::plain};
    std::vector<Ends> ends(stretch.pieces.size(), whole);
    for (const Cut& cut : list.cuts) {
        if (cut.place != stretch.place || cut.wall != stretch.wall) {
            continue;
        }
        // The cut end is plain until it is crimped.
        Ends& made = ends[cut.piece - 1];
        made = cut.from == MeasuredEnd::socket    ? Ends{PipeEnd::plain, PipeEnd::socket}
               : cut.from == MeasuredEnd::crimped ? Ends{PipeEnd::crimped, PipeEnd::plain}
                                                  : Ends{PipeEnd::plain, PipeEnd::plain};
        if (cut.crimp) {
            made.heater = PipeEnd::crimped;
        }
    }
    return ends;
}

void hold_stretch(const PartsList& list,
                  const PipeStretch& stretch,
                  double grid_m,
                  Differences& found) {
    if (stretch.kind == WallKind::masonry || stretch.pieces.empty()) {
        return;
    }
    double laid_m = 0.0;
    std::size_t cut = 0;
    for (const StretchPiece& piece : stretch.pieces) {
        laid_m += piece.length_m - stretch.lap_m;
        cut += piece.is_cut ? 1U : 0U;
    }
    constexpr double met_m = 0.0026; // of pipe that may not be cut
    const bool made_up =
        stretch.kind == WallKind::double_wall || stretch.kind == WallKind::insulated;
    found.under(stretch.place);
    const double off_m = laid_m - stretch.between_m - stretch.off_m;
    found.number("within its tolerance",
                 std::abs(off_m) <= grid_m + (made_up ? met_m : 1e-6) ? 1.0 : 0.0,
                 1.0);
    std::size_t cuts = 0;
    bool socketed = false;
    for (const PartEnds& ends : list.joints.parts) {
        socketed =
            socketed || (ends.part == stretch.parts.front() && ends.chimney.end == PipeEnd::socket);
    }
    for (const Cut& each : list.cuts) {
        cuts += each.place == stretch.place && each.wall == stretch.wall ? 1U : 0U;
    }
    found.number("cuts told", static_cast<double>(cuts), static_cast<double>(cut));
    if (stretch.kind == WallKind::single) {
        const std::vector<Ends> ends = ends_of(list, stretch, socketed);
        for (std::size_t i = 1; i < ends.size(); ++i) {
            EndFacts below;
            EndFacts above;
            below.end = ends[i - 1].chimney;
            above.end = ends[i].heater;
            found.number("pieces mate", mating_of(below, above) == Mating::good ? 1.0 : 0.0, 1.0);
        }
    }
}

/// No length gives more than it has.
void hold_lengths(const PartsList& list, Differences& found) {
    const double loss_m = catalog::default_of(DefaultId::cut_loss_m).value;
    std::map<std::size_t, double> used_m;
    std::map<std::size_t, double> of_m;
    for (const Cut& cut : list.cuts) {
        const auto fresh = used_m.try_emplace(cut.stock, -loss_m).first;
        fresh->second += cut.length_m + loss_m;
        of_m[cut.stock] = cut.from_m;
        found.under(cut.place);
        found.number("as long as what is left", cut.length_m <= cut.rest_m + 1e-3 ? 1.0 : 0.0, 1.0);
    }
    for (const auto& [stock, length_m] : used_m) {
        found.under("length " + std::to_string(stock));
        found.number("gives what it has", length_m <= of_m[stock] + 1e-6 ? 1.0 : 0.0, 1.0);
    }
}

/// What was at hand is used or told as left, each piece once.
void hold_box(const PartsList& list, const std::vector<StockPiece>& box, Differences& found) {
    double had = 0.0;
    for (const StockPiece& piece : box) {
        had += piece.count.value_or(0.0);
    }
    double seen = 0.0;
    for (const PartsLine& line : list.lines) {
        seen += line.at_hand ? line.count : 0.0;
    }
    for (const LeftInBox& left : list.left_in_box) {
        seen += left.count;
    }
    found.under("box");
    found.number("pieces used or left", seen, had);
}

/// Everything a list says of its pieces, held against itself.
Differences
differences_in(const PartsList& list, const std::vector<StockPiece>& box, UnitSystem units) {
    const double grid_m = units == UnitSystem::us ? 0.0254 / 16.0 : 0.001;
    Differences found;
    for (const PipeStretch& stretch : list.stretches) {
        hold_stretch(list, stretch, grid_m, found);
    }
    hold_lengths(list, found);
    hold_box(list, box, found);
    return found;
}

} // namespace

TEST_CASE("the pieces of a list, cut as it says, give each straight and mate") {
    constexpr std::uint64_t runs = 1000;
    constexpr std::uint64_t solved_every = 10; // those that are solved know what grows as well
    std::size_t pieces = 0;
    std::size_t exact = 0;
    std::size_t sliding = 0;
    for (std::uint64_t seed = 0; seed < runs; ++seed) {
        Installation written = random_household(seed);
        written.stock.clear();
        const auto resolved = resolve(written);
        REQUIRE(resolved.has_value());
        const std::vector<StockPiece> box = random_box(seed, *resolved);
        const Solution solution =
            seed % solved_every == 0 ? solve(*resolved, Detail::stations) : Solution{};
        PartsWishes wishes;
        wishes.at_hand = box;
        const PartsList list = parts_list(written, *resolved, solution, wishes);
        for (const PipeStretch& stretch : list.stretches) {
            pieces += stretch.pieces.size();
            sliding += stretch.must_slide && stretch.telescopes() ? 1U : 0U;
        }
        exact += list.exact ? 1U : 0U;
        const Differences found = differences_in(list, box, resolved->units);
        if (!found.none()) {
            fail_law(seed, found.text(), written);
        }
    }
    CHECK(pieces > 2 * runs);
    CHECK(sliding > 0);
    INFO(exact << " lists are shown to be best");
    CHECK(exact > runs * 98 / 100);
}

TEST_CASE("the pieces of a box alone give what is said of each straight, and nothing is bought") {
    constexpr std::uint64_t runs = 1000;
    std::size_t exact = 0;
    std::size_t short_ones = 0;
    for (std::uint64_t seed = 0; seed < runs; ++seed) {
        Installation written = random_household(seed);
        written.stock.clear();
        const auto resolved = resolve(written);
        REQUIRE(resolved.has_value());
        PartsWishes wishes;
        wishes.at_hand = random_box(seed, *resolved);
        wishes.from_box = true;
        const PartsList list = parts_list(written, *resolved, {}, wishes);
        Differences found = differences_in(list, wishes.at_hand, resolved->units);
        found.under("box alone");
        found.number("bought", list.bought_m, 0.0);
        for (const PipeStretch& stretch : list.stretches) {
            short_ones += stretch.off_m < 0.0 && !stretch.pieces.empty() ? 1U : 0U;
        }
        exact += list.exact ? 1U : 0U;
        if (!found.none()) {
            fail_law(seed, found.text(), written);
        }
    }
    CHECK(short_ones > runs / 10);
    INFO(exact << " boxes are shown to be laid as near as they go");
    CHECK(exact > runs * 98 / 100);
}
