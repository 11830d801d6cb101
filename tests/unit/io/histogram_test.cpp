#include "../../catch.hpp"
#include "fluewright/io/batch/batch_tally.hpp"
#include "io/chart/histogram.hpp"

#include <numeric>
#include <random>

using namespace fluewright;
using chart::bounds_of_bars;
using chart::counts_of_bars;

TEST_CASE("every value lies in one bar, between its bounds") {
    std::mt19937 random(7);
    for (const double scale : {1e-6, 0.3, 1.0, 47.0, 1e6}) {
        for (const int count : {1, 2, 3, 50, 1000}) {
            std::uniform_real_distribution<double> anywhere(-scale, 2.0 * scale);
            std::vector<double> values;
            for (int i = 0; i < count; ++i) {
                values.push_back(anywhere(random));
            }
            const auto bounds = bounds_of_bars(values);
            const auto counts = counts_of_bars(values, bounds);
            REQUIRE(bounds.size() == counts.size() + 1);
            CHECK(counts.size() <= 60);
            CHECK(std::accumulate(counts.begin(), counts.end(), std::size_t{0}) == values.size());
            for (const double value : values) {
                CHECK((bounds.front() <= value && value <= bounds.back()));
            }
        }
    }
}

TEST_CASE("a value on a bound counts above it, and equal values make a picture") {
    CHECK(counts_of_bars({0.0, 1.0, 1.0, 2.0}, {0.0, 1.0, 2.0}) == std::vector<std::size_t>{1, 3});
    const auto bounds = bounds_of_bars({5.0, 5.0, 5.0});
    CHECK(counts_of_bars({5.0, 5.0, 5.0}, bounds).size() + 1 == bounds.size());
    CHECK(chart::histogram_svg({.title = "t", .x_title = "x", .values = {5.0, 5.0}}).find("<svg")
          != std::string::npos);
    CHECK(chart::histogram_svg({.title = "t", .x_title = "x", .values = {}}).empty());
}

TEST_CASE("a tally put together of parts is the tally of all, and keeps so many rows") {
    const auto row = [](int i) {
        BatchRow made;
        made.id = std::to_string(i);
        made.outcome = i % 3 == 0 ? Outcome::pass : Outcome::short_of_draft;
        made.margin_pa = i;
        made.opening_share = 0.5;
        return made;
    };
    BatchTally all{TallyKeeps::rows};
    BatchTally first{TallyKeeps::rows};
    BatchTally second{TallyKeeps::rows};
    for (int i = 0; i < 400; ++i) {
        all.add(row(i));
        (i < 150 ? first : second).add(row(i));
    }
    first.add(second);
    CHECK(first.records() == 400);
    CHECK(first.failing_count() == all.failing_count());
    CHECK(first.margins_pa() == all.margins_pa());
    REQUIRE(first.failing().size() == BatchTally::most_failing);
    REQUIRE(all.failing().size() == BatchTally::most_failing);
    for (std::size_t i = 0; i < all.failing().size(); ++i) {
        CHECK(first.failing()[i].id == all.failing()[i].id);
    }
    CHECK(first.text() == all.text());
}
