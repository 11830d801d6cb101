// Sobol points against an independent program, and their evenness.
#include "catch.hpp"
#include "fluewright/core/name_list.hpp"
#include "fluewright/core/numeric/sobol.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <vector>

using namespace fluewright;

namespace {

constexpr std::size_t all = SobolSequence::most_dimensions;

/// Points of scipy.stats.qmc.Sobol (SciPy 1.10.1), unscrambled; 4096 points of all 21 dimensions
/// were found equal to the last bit.
constexpr std::array<double, all> point_100{
    0.4140625, 0.2578125, 0.7734375, 0.7265625, 0.8828125, 0.7421875, 0.0234375,
    0.4765625, 0.6328125, 0.6953125, 0.4609375, 0.6796875, 0.4765625, 0.8515625,
    0.3203125, 0.4921875, 0.6796875, 0.7421875, 0.8359375, 0.3359375, 0.7578125};
constexpr std::array<double, all> point_777{
    0.6923828125, 0.9365234375, 0.1630859375, 0.2744140625, 0.6357421875, 0.3564453125,
    0.1904296875, 0.7626953125, 0.3486328125, 0.3232421875, 0.7451171875, 0.6962890625,
    0.3837890625, 0.4736328125, 0.5693359375, 0.5146484375, 0.4033203125, 0.8642578125,
    0.3701171875, 0.7529296875, 0.2373046875};

} // namespace

TEST_CASE("the plain sequence is that of another program") {
    const SobolSequence plain(all);
    for (std::size_t d = 0; d < all; ++d) {
        INFO("dimension " << d);
        CHECK(plain.at(0, d) == 0.0);
        CHECK(plain.at(1, d) == 0.5);
        CHECK(plain.at(100, d) == point_100[d]);
        CHECK(plain.at(777, d) == point_777[d]);
    }
}

TEST_CASE("2^k points have one in each piece of every edge, moved by a seed as well") {
    constexpr std::size_t points = 256;
    for (const SobolSequence& sequence : {SobolSequence(all), SobolSequence(all, 3)}) {
        for (std::size_t d = 0; d < all; ++d) {
            std::set<std::size_t> pieces;
            for (std::size_t i = 0; i < points; ++i) {
                pieces.insert(static_cast<std::size_t>(sequence.at(i, d) * points));
            }
            CHECK(pieces.size() == points);
        }
        // And one in each of the 16 x 16 squares of the first face.
        std::set<std::size_t> squares;
        for (std::size_t i = 0; i < points; ++i) {
            squares.insert(static_cast<std::size_t>(sequence.at(i, 0) * 16.0) * 16
                           + static_cast<std::size_t>(sequence.at(i, 1) * 16.0));
        }
        CHECK(squares.size() == points);
    }
}

TEST_CASE("a seed moves the points, never onto an edge, and the same seed alike") {
    const SobolSequence one(4, 1);
    const SobolSequence other(4, 2);
    CHECK(one.at(5, 2) == SobolSequence(4, 1).at(5, 2));
    CHECK(one.at(5, 2) != other.at(5, 2));
    for (std::size_t i = 0; i < 1000; ++i) {
        for (std::size_t d = 0; d < 4; ++d) {
            CHECK((one.at(i, d) > 0.0 && one.at(i, d) < 1.0));
        }
    }
}

TEST_CASE("a list is parted at its commas") {
    CHECK(names_of_list("").empty());
    CHECK(names_of_list("a, b c ,d") == std::vector<std::string_view>{"a", "b c", "d"});
    CHECK(names_of_list("a,,b,") == std::vector<std::string_view>{"a", "", "b", ""});
}
