// What a spread behind a value does to the margins.
#include "../outdoor_top.hpp"
#include "catch.hpp"
#include "fluewright/advice/study/tolerance_study.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "plain_run.hpp"

#include <algorithm>

using namespace fluewright;

namespace {

const AssessOptions plainly{.size_search = false, .spread = false, .sizes = {}, .units = {}};

Assessment assessed(const Installation& in) {
    auto made = assess(with_outdoor_top(in), plainly);
    REQUIRE(made);
    return std::move(made).value();
}

Installation stack() {
    return with_outdoor_top(plain::stack(5.0, 0.15, 0.3));
}

ToleranceStudy study(const Installation& in, const ToleranceOptions& options = {}) {
    return study_tolerances(in, assessed(in), options);
}

const StateSpread& of(const ToleranceStudy& study, const Assessment& a, StateKind kind) {
    const auto found = std::find_if(study.states.begin(), study.states.end(), [&](const auto& s) {
        return a.solution.states[s.state].kind == kind;
    });
    REQUIRE(found != study.states.end());
    return *found;
}

} // namespace

TEST_CASE("the margin spreads as the required draft does, and by no more") {
    Installation in = stack();
    in.tolerances = {{"/appliance/draft_needed/high", 2.0}};
    const Assessment a = assessed(in);
    const ToleranceStudy result = study(in);
    const StateSpread& high = of(result, a, StateKind::high_fire);
    // Margin = draft - need, the need uniform over 2 Pa to both sides: 5 % of it lies in the
    // outermost tenth of one side.
    CHECK(high.low == Approx(high.as_written - 0.9 * 2.0).margin(1e-3));
    CHECK(high.high == Approx(high.as_written + 0.9 * 2.0).margin(1e-3));
    CHECK(high.median == Approx(high.as_written).margin(1e-3));
    CHECK(high.first_order.front() == Approx(1.0).margin(0.01));
    const StateSpread& low = of(result, a, StateKind::low_fire);
    CHECK(low.low == Approx(low.as_written));
    CHECK(low.high == Approx(low.as_written));
    CHECK(low.first_order.front() == 0.0);
}

TEST_CASE("the chance to pass is the part of the spread below the draft there is") {
    Installation in = stack();
    const Assessment before = assessed(in);
    const double draft_pa = before.solution.states.front().draft_pa;
    in.appliance.draft_needed_pa.high = draft_pa + 1.0; // short by 1 Pa of 4 to either side
    in.tolerances = {{"/appliance/draft_needed/high", 4.0}};
    const ToleranceStudy result = study(in);
    const Assessment a = assessed(in);
    CHECK_FALSE(a.works());
    CHECK(of(result, a, StateKind::high_fire).passing_share == Approx(3.0 / 8.0).margin(1e-3));
    CHECK(result.working_share == Approx(3.0 / 8.0).margin(1e-3));
    CHECK(a.solution.states[result.states[result.tightest].state].kind == StateKind::high_fire);
}

TEST_CASE("height and weather share the spread as their slopes do") {
    Installation in = stack();
    in.tolerances = {{"/run/0/up", 0.2}, {"/site/weather/0/outdoor_temperature", 3.0}};
    const Assessment a = assessed(in);
    const StateSpread high = of(study(in), a, StateKind::high_fire);
    const auto moved = [&](double height_m, double temperature_k) {
        Installation other = in;
        *other.run[0].up_m += height_m;
        *other.site.weather[0].outdoor_temperature_k += temperature_k;
        return assessed(other).solution.states.front().margin_pa();
    };
    const double by_height = moved(0.2, 0.0) - moved(-0.2, 0.0);
    const double by_weather = moved(0.0, 3.0) - moved(0.0, -3.0);
    const double both = by_height * by_height + by_weather * by_weather;
    CHECK(high.first_order[0] == Approx(by_height * by_height / both).margin(0.015));
    CHECK(high.first_order[1] == Approx(by_weather * by_weather / both).margin(0.015));
}

TEST_CASE("one thread and many give the same, one seed the same again") {
    Installation in = stack();
    in.tolerances = {{"/run/0/up", 0.3}, {"/appliance/fuel/moisture", 0.05}};
    const ToleranceStudy one = study(in, {.runs = 700, .seed = 3, .jobs = 1});
    for (const unsigned jobs : {2U, 5U}) {
        const ToleranceStudy many = study(in, {.runs = 700, .seed = 3, .jobs = jobs});
        for (std::size_t i = 0; i < one.states.size(); ++i) {
            CHECK(many.states[i].low == one.states[i].low);
            CHECK(many.states[i].high == one.states[i].high);
            CHECK(many.states[i].first_order == one.states[i].first_order);
        }
    }
    const ToleranceStudy other = study(in, {.runs = 700, .seed = 4, .jobs = 1});
    CHECK(other.states[0].low != one.states[0].low);
    CHECK(other.states[0].low == Approx(one.states[0].low).epsilon(0.01));
}

TEST_CASE("readings are no tolerances of the installation") {
    Installation in = stack();
    in.tolerances = {{"/observed/0/draft", 1.0}};
    CHECK_FALSE(has_tolerances(in));
    in.tolerances.push_back({"/run/0/up", 0.1});
    CHECK(has_tolerances(in));
    CHECK(study(in).inputs.size() == 1);
}

TEST_CASE("runs whose values do not go together are counted and told") {
    Installation in = stack();
    // A flow of air colder than the room makes no outlet of a burning stove.
    in.appliance.gas_temperature_k = {300.0, 300.0};
    in.tolerances = {{"/appliance/gas_temperature/high", 60.0}};
    const auto a = assess(in, plainly);
    if (a) {
        const ToleranceStudy result = study_tolerances(in, *a, {});
        CHECK(result.runs + result.refused == ToleranceOptions{}.runs);
        CHECK(result.refused > 0);
        CHECK(result.refusal.has_value());
    }
}

TEST_CASE("a spread that reaches past what can be is an error of the file") {
    const auto read = read_installation(R"({
        "appliance": {"type": "stove", "fuel": {"name": "beech", "moisture": "2 % ± 5 %"},
                      "burn_rate": "3 kg/h", "outlet": "150 mm"},
        "run": [{"part": "straight", "up": "4 m ± 10 %"}]})",
                                        "spread.json");
    REQUIRE_FALSE(read);
    const bool told = std::any_of(read.error().begin(), read.error().end(), [](const auto& d) {
        return d.fault.pointer == "/appliance/fuel/moisture"
               && d.fault.message.find("reaches past") != std::string::npos;
    });
    CHECK(told);
}
