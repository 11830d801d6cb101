// Many installations out of one: every combination, or an even spread of samples.
#include "catch.hpp"
#include "fluewright/advice/study/variations.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "plain_run.hpp"

#include <algorithm>
#include <cmath>
#include <set>

using namespace fluewright;

namespace {

VariedRange range(const Installation& in, std::string_view typed) {
    auto read = read_varied_range(typed, in);
    REQUIRE(read);
    return std::move(read).value();
}

} // namespace

TEST_CASE("a grid has every combination once") {
    const Installation in = with_outdoor_top(plain::stack(5.0, 0.15, 0.3));
    const Variations grid = Variations::every_combination(
        in, {range(in, "height=3..5 m:3"), range(in, "outdoor=-10..10 degC:2")});
    REQUIRE(grid.size() == 6);
    std::set<std::pair<double, double>> seen;
    for (std::size_t i = 0; i < grid.size(); ++i) {
        const auto made = grid.at(i, "stack");
        REQUIRE(made);
        seen.insert({*made->run[0].up_m, *made->site.weather[0].outdoor_temperature_k});
    }
    CHECK(seen.size() == 6);
    CHECK(grid.id(0, "stack") == "stack height=3m outdoor=-10degC");
    CHECK(grid.id(5, "stack") == "stack height=5m outdoor=10degC");
    CHECK(*grid.at(0, "x")->run[0].up_m == Approx(3.0));
    CHECK(*grid.at(5, "x")->site.weather[0].outdoor_temperature_k == Approx(283.15));
}

TEST_CASE("samples cover each range evenly, and lists give their values equally often") {
    const Installation in = with_outdoor_top(plain::stack(5.0, 0.15, 0.3));
    constexpr std::size_t samples = 60;
    const Variations spread = Variations::latin_hypercube(
        in,
        {range(in, "outdoor=-10..10 degC"), range(in, "diameter=130 mm, 150 mm, 180 mm")},
        samples,
        5);
    std::vector<double> outdoor;
    std::multiset<double> diameters;
    for (std::size_t i = 0; i < samples; ++i) {
        const auto made = spread.at(i, "s");
        REQUIRE(made);
        outdoor.push_back(*made->site.weather[0].outdoor_temperature_k - 263.15);
        diameters.insert(*made->run[0].diameter_m);
    }
    std::sort(outdoor.begin(), outdoor.end());
    for (std::size_t i = 0; i < samples; ++i) {
        const double piece = 20.0 / static_cast<double>(samples);
        CHECK(outdoor[i] >= piece * static_cast<double>(i) - 1e-9);
        CHECK(outdoor[i] <= piece * static_cast<double>(i + 1) + 1e-9);
    }
    for (const double diameter : {0.13, 0.15, 0.18}) {
        CHECK(diameters.count(diameter) == samples / 3);
    }
    CHECK(spread.id(0, "s").starts_with("s-01 outdoor="));
    CHECK(spread.id(59, "s").starts_with("s-60 outdoor="));
}

TEST_CASE("sizes are those of the trade, of the unit they are required in") {
    const Installation in = with_outdoor_top(plain::stack(5.0, 0.15, 0.3));
    const auto inches = range(in, "diameter=trade 5..8 in").together.front().values;
    CHECK(inches == std::vector<double>{0.127, 0.1524, 0.1778, 0.2032});
    for (const double size : range(in, "diameter=trade 125..205 mm").together.front().values) {
        CHECK(std::find(inches.begin(), inches.end(), size) == inches.end());
    }
    CHECK_FALSE(read_varied_range("outdoor=trade 1..5 degC", in));
    CHECK_FALSE(read_varied_range("diameter=trade 151..151.5 mm", in));
}

TEST_CASE("numbers that go together keep step, in a grid and in samples") {
    const Installation in = with_outdoor_top(plain::stack(5.0, 0.15, 0.3));
    const Variations grid = Variations::every_combination(
        in, {range(in, "height=3,4,5 m & diameter=130,150,180 mm"), range(in, "outdoor=0,5 degC")});
    REQUIRE(grid.size() == 6);
    CHECK(grid.values(0) == std::vector<double>{3.0, 0.13, 273.15});
    CHECK(grid.values(3) == std::vector<double>{4.0, 0.15, 278.15});
    CHECK(grid.values(5) == std::vector<double>{5.0, 0.18, 278.15});
    const Variations samples =
        Variations::latin_hypercube(in, {range(in, "height=3..5 m & diameter=200..100 mm")}, 30, 2);
    for (std::size_t i = 0; i < 30; ++i) {
        const std::vector<double> values = samples.values(i);
        CHECK((values[0] - 3.0) / 2.0 == Approx((0.2 - values[1]) / 0.1));
    }
    CHECK_FALSE(read_varied_range("height=3,4 m & diameter=130 mm", in));
    CHECK_FALSE(read_varied_range("height=3..4 m & diameter=130,150,160,170,180 mm", in));
}

TEST_CASE("likelihoods have their mean and spread") {
    const Installation in = with_outdoor_top(plain::stack(5.0, 0.15, 0.3));
    constexpr std::size_t count = 2000;
    const Variations samples = Variations::latin_hypercube(
        in, {range(in, "height=3..4..8 m"), range(in, "moisture=18 % sd 3 %")}, count, 9);
    double height = 0.0;
    double moisture = 0.0;
    double square = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const std::vector<double> values = samples.values(i);
        CHECK(values[0] >= 3.0);
        CHECK(values[0] <= 8.0);
        height += values[0] / count;
        moisture += values[1] / count;
        square += (values[1] - 0.18) * (values[1] - 0.18) / count;
    }
    CHECK(height == Approx(5.0).epsilon(0.002)); // (3 + 4 + 8)/3
    CHECK(moisture == Approx(0.18).epsilon(0.002));
    CHECK(std::sqrt(square) == Approx(0.03).epsilon(0.01));
    CHECK_FALSE(read_varied_range("height=4..3..8 m", in));
    CHECK_FALSE(read_varied_range("moisture=18 % sd 0 %", in));
}

TEST_CASE("the line of a variation is read back as that variation") {
    const Installation in = with_outdoor_top(plain::stack(5.0, 0.15, 0.3));
    const Variations spread = Variations::latin_hypercube(
        in, {range(in, "height=3..8 m"), range(in, "moisture=12..30 %")}, 20, 1);
    for (std::size_t i = 0; i < spread.size(); ++i) {
        const auto made = spread.at(i, "s");
        REQUIRE(made);
        const std::string line = write_installation_line(*made);
        CHECK(line.find('\n') == line.size() - 1);
        const auto again = read_installation(line, "line.json");
        REQUIRE(again);
        CHECK(again->run == made->run);
        CHECK(again->appliance == made->appliance);
        CHECK(again->id == made->id);
    }
}
