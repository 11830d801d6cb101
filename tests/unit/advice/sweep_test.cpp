// A sweep says of every value what a check of the changed installation says, finds where the
// verdict turns, and draws it.
#include "catch.hpp"
#include "examples.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/study/sweep.hpp"
#include "fluewright/io/report/report_sweep.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "unit/plain_stove.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

using namespace fluewright;

namespace {

Sweep swept(const Installation& in,
            const std::vector<std::string>& over,
            const SweepOptions& options = {}) {
    std::vector<Varied> varied;
    for (const std::string& typed : over) {
        auto read = read_varied(typed, in);
        INFO((read ? "" : read.error()));
        REQUIRE(read.has_value());
        varied.push_back(std::move(read).value());
    }
    auto made = sweep(in, std::move(varied), options);
    REQUIRE(made.has_value());
    return std::move(made).value();
}

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

std::size_t count_of(const std::string& text, const std::string& words) {
    std::size_t count = 0;
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
        ++count;
    }
    return count;
}

} // namespace

TEST_CASE("every point is what a check of the changed file says", "[sweep]") {
    const Installation in = example("village-hall");
    const Sweep made = swept(in, {"outdoor=-10..14degC:3", "height=6..12m:4"});
    REQUIRE(made.points.size() == 12);
    CHECK(made.point(1, 2).at == std::vector<double>{made.over[0].values[1], 10.0});
    for (const SweepPoint& point : made.points) {
        Installation changed = in;
        for (std::size_t i = 0; i < 2; ++i) {
            changed = with_value(changed, made.over[i].key, point.at[i]).value();
        }
        const auto assessed = assess(changed, {.size_search = false, .spread = false});
        REQUIRE(assessed.has_value());
        CHECK(point.passes() == assessed->works());
        const auto& states = point.score->states;
        for (const StateResult& state : states) {
            const auto same =
                std::find_if(assessed->solution.states.begin(),
                             assessed->solution.states.end(),
                             [&](const StateResult& other) {
                                 return other.kind == state.kind && other.weather == state.weather;
                             });
            REQUIRE(same != assessed->solution.states.end());
            CHECK(state.draft_pa == Approx(same->draft_pa).margin(1e-6));
        }
    }
}

TEST_CASE("the turn is where the verdict turns", "[sweep]") {
    const Installation in = example("village-hall");
    const Sweep made = swept(in, {"height=5..10m:10"});
    REQUIRE(made.turns.size() == 1);
    const SweepTurn& turn = made.turns.front();
    CHECK(turn.passes_above);
    const auto passes = [&](double height_m) {
        const auto resolved = resolve(with_value(in, made.over[0].key, height_m).value());
        REQUIRE(resolved.has_value());
        return score(*resolved).passes;
    };
    CHECK(passes(turn.at));
    CHECK_FALSE(passes(turn.at - 0.002));
    CHECK(holds(made.sentence, "Nothing that counts is short"));
    CHECK(holds(made.sentence, "the draft is short in"));
}

TEST_CASE("values may come in any order and twice", "[sweep]") {
    const Installation in = example("bindery");
    const Sweep made = swept(in, {"height=6 m, 4 m, 6 m, 5 m"});
    REQUIRE(made.points.size() == 3);
    CHECK(made.points[0].at.front() == 4.0);
    CHECK(made.points[2].at.front() == 6.0);
}

TEST_CASE("what cannot be built says why and does not stop the rest", "[sweep]") {
    const Sweep made = swept(example("village-hall"), {"height=2..8m:7"});
    CHECK_FALSE(made.points.front().score.has_value());
    CHECK(holds(made.points.front().fault, "topmost straight"));
    CHECK(made.points.back().score.has_value());
}

TEST_CASE("the sweep does not depend on the number of threads", "[sweep]") {
    const Installation in = example("boat-shed");
    const Sweep one = swept(in, {"outdoor=-20..15degC:4", "diameter=150..250mm:3"});
    const Sweep three =
        swept(in, {"outdoor=-20..15degC:4", "diameter=150..250mm:3"}, {.units = {}, .threads = 3});
    CHECK(sweep_json(one, {}) == sweep_json(three, {}));
    CHECK(sweep_svg(one) == sweep_svg(three));
}

TEST_CASE("a wet fuel is found out", "[sweep]") {
    Installation in = example("bindery");
    in.appliance.draft_needed_pa = {9.0, 25.0};
    const Sweep made = swept(in, {"moisture=12..55%:8"});
    REQUIRE(made.turns.size() == 1);
    CHECK_FALSE(made.turns.front().passes_above);
}

TEST_CASE("a chart has axes with units, a legend and the line of the need", "[sweep]") {
    const Installation in = example("village-hall");
    const std::string lines = sweep_svg(swept(in, {"height=5..14m:10"}));
    CHECK(lines.starts_with("<svg "));
    CHECK(lines.ends_with("</svg>\n"));
    CHECK(holds(lines, "height of the chimney top above the outlet, m<"));
    CHECK(holds(lines, "draft at the outlet, Pa<"));
    CHECK(holds(lines, "door may be opened, %<"));
    CHECK(holds(lines, "required draft, high fire<"));
    CHECK(holds(lines, "opening asked<"));
    CHECK(holds(lines, "low fire, mild day<"));
    const std::string map = sweep_svg(swept(in, {"outdoor=-20..15degC:4", "height=4..14m:4"}));
    CHECK(holds(map, "outdoor temperature, degC<"));
    CHECK(holds(map, "draft just as needed<"));
    CHECK(holds(map, "every state passes<"));
    for (const std::string& svg : {lines, map}) {
        CHECK_FALSE(holds(svg, "nan"));
        CHECK_FALSE(holds(svg, "inf"));
        CHECK(count_of(svg, "<text") == count_of(svg, "</text>"));
    }
}

TEST_CASE("a title cannot break out of the chart", "[sweep]") {
    Installation in = example("village-hall");
    in.title = "<script>\"&'\x01";
    const std::string svg = sweep_svg(swept(in, {"height=5..9m:3"}));
    CHECK_FALSE(holds(svg, "<script>"));
    CHECK_FALSE(holds(svg, "\x01"));
    CHECK(holds(svg, "&lt;script&gt;&quot;&amp;"));
}

TEST_CASE("one value, or a grid with holes, can be drawn", "[sweep]") {
    const Installation in = example("village-hall");
    for (const auto& over :
         std::vector<std::vector<std::string>>{{"height=6m"},
                                               {"height=6m", "outdoor=0degC"},
                                               {"height=2..9m:4", "outdoor=-9..9degC:3"}}) {
        const std::string svg = sweep_svg(swept(in, over));
        CHECK_FALSE(holds(svg, "nan"));
        CHECK_FALSE(holds(svg, "inf"));
    }
}

TEST_CASE("text, CSV and JSON tell the same points", "[sweep]") {
    const Sweep made = swept(example("sugar-house"), {"outdoor=-4..60degF:5"});
    const auto json = nlohmann::json::parse(sweep_json(made, {})).at("result");
    CHECK(json.at("points").size() == 5);
    CHECK(json.at("over").at(0).at("unit") == "K");
    const std::string csv = sweep_csv(made);
    CHECK(csv.starts_with("outdoor_k,works,falls_short,least_relative_spare,fault,state,weather,"));
    CHECK(count_of(csv, "\r\n") == 1 + 5 * made.points.front().score->states.size());
    Style style;
    style.units = UnitSystem::us;
    const std::string text = sweep_text(made, style);
    CHECK(holds(text, "degF"));
    CHECK_FALSE(holds(text, "degC"));
}

TEST_CASE("values at which a run cannot be built are named with the reason", "[sweep]") {
    const Installation in = stove_with(pipe_in_room + chimney_of("1 m"));
    const Sweep one = swept(in, {"height=1..5m:9"});
    CAPTURE(one.sentence);
    CHECK(holds(one.sentence, "the draft is short in "));
    CHECK(holds(one.sentence, "At 1 m it cannot be built: too little would be left"));
    const Sweep two = swept(in, {"height=1..5m:5", "diameter=150..200mm:3"});
    REQUIRE(two.blanks.size() == 1);
    CHECK(two.blanks[0].words == "1 m");
    CHECK(two.blanks[0].count == 3);
    const std::string reason = "1 m: it cannot be built, too little would be left";
    CHECK(holds(sweep_text(two, Style{}), "at " + reason));
    CHECK(holds(sweep_svg(two), "no color: at 1 m"));
}

TEST_CASE("the least height that passes is told with the next that is built", "[sweep]") {
    const Sweep made = swept(stove_with(pipe_in_room + chimney_of("2.7 m")), {"height=1.5..6m:10"});
    REQUIRE(made.turns.size() == 1);
    REQUIRE(made.turns.front().passes_above);
    CAPTURE(made.sentence, made.turns.front().at);
    const auto at = made.sentence.find("Built in steps of 250 mm, that is ");
    REQUIRE(at != std::string::npos);
    const double built_m = 0.25 * std::ceil(made.turns.front().at / 0.25);
    CHECK(holds(made.sentence, "that is " + format_number(built_m) + " m."));
}
