// Many installations out of one: every combination, or an even spread of samples.
#include "catch.hpp"
#include "fluewright/advice/study/variations.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "plain_run.hpp"

#include <algorithm>
#include <set>

using namespace fluewright;

namespace {

VariedRange range(const Installation& in, std::string_view typed) {
    auto read = read_varied(typed, in);
    REQUIRE(read);
    return {.varied = std::move(read).value(),
            .any_between = typed.find("..") != std::string_view::npos};
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
        CHECK(*made->id == "stack-" + std::to_string(i + 1));
    }
    CHECK(seen.size() == 6);
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
    CHECK(spread.id(0, "s") == "s-01");
    CHECK(spread.id(59, "s") == "s-60");
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
