#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/advice/study/sweep.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "trial.hpp"

#include <algorithm>

using namespace fluewright;
using namespace fluewright::property;

// A remedy that is offered does something, can be built, and reads back as what it promised.
TEST_CASE("every remedy of every installation can be built and written out") {
    int offered = 0;
    for (std::uint64_t seed = 0; seed < some / 4; ++seed) {
        const property::Trial t = trial(seed);
        // Some of the installations are beyond what the reader takes.
        constexpr double least_kg_s = 0.1 / 3600.0;
        if (t.resolved.appliance.low.burn_rate_kg_s < least_kg_s
            || !read_installation(write_installation(t.written))) {
            continue;
        }
        for (const Remedy& remedy : possible_remedies(t.written, t.resolved)) {
            CAPTURE(remedy.what);
            const auto changed = apply(remedy, t.written);
            REQUIRE(changed.has_value());
            const auto direct = resolve(*changed);
            REQUIRE(direct.has_value());
            const std::string text = write_installation(in_short(*changed));
            INFO(text);
            const auto again = read_installation(text);
            INFO((again ? "" : diagnostics_text(again.error())));
            REQUIRE(again.has_value());
            const auto from_text = resolve(*again);
            REQUIRE(from_text.has_value());
            REQUIRE(from_text->sections.size() == direct->sections.size());
            CHECK(from_text->total_rise_m() == Approx(direct->total_rise_m()).margin(1e-9));
            for (std::size_t i = 0; i < direct->sections.size(); ++i) {
                const Section& a = direct->sections[i];
                const Section& b = from_text->sections[i];
                CHECK(a.area_m2 == Approx(b.area_m2));
                CHECK(a.loss == Approx(b.loss));
                CHECK(a.joint_leak_m2 == Approx(b.joint_leak_m2).margin(1e-15));
                CHECK(direct->walls[a.wall].id == from_text->walls[b.wall].id);
            }
            CHECK(remedy.effort > 0.0);
            ++offered;
        }
    }
    CHECK(offered > 200);
}

TEST_CASE("remedies, sizes and sweeps end with an answer for every installation") {
    for (std::uint64_t seed = 0; seed < some / 20; ++seed) {
        const property::Trial t = trial(seed);
        const auto made = improve(t.written, {});
        REQUIRE(made.has_value());
        CHECK_FALSE(made->sentence.empty());
        for (std::size_t i = 0; i < made->plans.size(); ++i) {
            CHECK(made->plans[i].rank == i + 1);
            CHECK(made->plans[i].gain > 0.0);
        }
        const auto table = tabulate_sizes(t.written, {});
        REQUIRE(table.has_value());
        CHECK_FALSE(table->sentence.empty());
        auto over = read_varied("outdoor=-20..20degC:3", t.written);
        REQUIRE(over.has_value());
        const auto swept = sweep(t.written, {std::move(over).value()}, {});
        REQUIRE(swept.has_value());
        CHECK_FALSE(swept->sentence.empty());
    }
}
