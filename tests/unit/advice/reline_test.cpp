#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/advice/verdict.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "unit/examples.hpp"

#include <algorithm>

using namespace fluewright;

namespace {

HarmOutcome outcome_of(const Assessment& a, Harm harm) {
    const auto found = std::find_if(a.verdict.harms.begin(),
                                    a.verdict.harms.end(),
                                    [&](const HarmVerdict& v) { return v.harm == harm; });
    REQUIRE(found != a.verdict.harms.end());
    return found->outcome;
}

Assessment checked(const Installation& in) {
    auto made = assess(in, {.size_search = false, .words = false, .spread = false});
    REQUIRE(made.has_value());
    return std::move(made).value();
}

/// A small stove on a wide square chimney of unlined masonry.
Installation on_wide_chimney(double side_m, double height_m, double outdoor_k) {
    Installation in = example("toll-house");
    in.site.weather.resize(1);
    in.site.weather[0].outdoor_temperature_k = outdoor_k;
    for (Part& part : in.run) {
        if (part.width_m) {
            part.width_m = part.depth_m = side_m;
        }
    }
    in.run[4].up_m = 0.6 * height_m;
    in.run[5].up_m = 0.4 * height_m;
    return in;
}

} // namespace

// A flue far wider than the collar is cold; one near its size draws at least as well as the heater
// asks where the wide one did.
TEST_CASE("a liner never turns a wide cold chimney that draws into one that does not") {
    int held = 0;
    int lined_runs = 0;
    for (const double side_m : {0.2, 0.25, 0.3, 0.38}) {
        for (const double height_m : {4.0, 5.5, 7.0, 9.0}) {
            for (const double outdoor_k : {258.15, 273.15, 288.15}) {
                const Installation in = on_wide_chimney(side_m, height_m, outdoor_k);
                const Assessment before = checked(in);
                for (const Remedy& remedy : possible_remedies(in, before.installation)) {
                    if (remedy.kind != RemedyKind::line_flue) {
                        continue;
                    }
                    const auto lined = apply(remedy, in);
                    REQUIRE(lined.has_value());
                    const Assessment after = checked(*lined);
                    ++lined_runs;
                    CAPTURE(side_m, height_m, outdoor_k, remedy.what);
                    for (const Harm harm : {Harm::draft, Harm::reloading}) {
                        if (outcome_of(before, harm) == HarmOutcome::passes) {
                            CAPTURE(name(harm));
                            CHECK(outcome_of(after, harm) == HarmOutcome::passes);
                            ++held;
                        }
                    }
                }
            }
        }
    }
    CHECK(lined_runs > 50);
    CHECK(held > 50);
}
