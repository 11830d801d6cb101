// Layouts side by side: which one is taken and why, and what the files say differently.
#include "catch.hpp"
#include "examples.hpp"
#include "fluewright/advice/study/common_ground.hpp"
#include "fluewright/advice/study/compare.hpp"
#include "fluewright/io/report/report_compare.hpp"
#include "unit/plain_stove.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

using namespace fluewright;

namespace {

Layout layout(const std::string& name, const Installation& in) {
    auto assessed = assess(in, {.size_search = false, .spread = false});
    REQUIRE(assessed.has_value());
    return layout_of(name, in, std::move(assessed).value());
}

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("the one that carries every state is taken, whatever its place", "[compare]") {
    const Layout good = layout("good", example("bindery"));
    const Layout bad = layout("bad", example("toll-house"));
    for (const auto& layouts : {std::vector{good, bad}, std::vector{bad, good}}) {
        const Comparison made = compare(layouts);
        CHECK(made.layouts[made.best].name == "good");
        CHECK(holds(made.sentence, "Take good: it alone is short of nothing that counts"));
        CHECK(holds(made.sentence, "bad falls short: Chimney without a liner"));
    }
}

TEST_CASE("where none carries every state the nearest is named and not recommended", "[compare]") {
    const Comparison made =
        compare({layout("hall", example("village-hall")), layout("boats", example("boat-shed"))});
    CHECK(holds(made.sentence, "Every one is short of something that counts"));
    CHECK_FALSE(holds(made.sentence, "Take"));
    // The boats have more draft, but their stovepipe outdoors is a danger.
    CHECK(made.layouts[made.best].name == "hall");
}

TEST_CASE("more than enough to spare counts for nothing; then fewer warnings, less pipe",
          "[compare]") {
    const Installation in = example("bindery");
    Installation longer = in;
    longer.run[0].up_m = *longer.run[0].up_m + 0.5;
    const Layout a = layout("short", in);
    Layout b = layout("long", longer);
    b.failures = a.failures;
    b.warnings = a.warnings;
    const Comparison by_pipe = compare({b, a});
    CHECK(by_pipe.layouts[by_pipe.best].name == "short");
    CHECK(holds(by_pipe.sentence, "less pipe"));
    b.warnings = 0;
    const Comparison by_warnings = compare({a, b});
    CHECK(by_warnings.layouts[by_warnings.best].name == "long");
    CHECK(holds(by_warnings.sentence, "fewer warnings"));
    b.failures = 1;
    const Comparison by_faults = compare({b, a});
    CHECK(by_faults.layouts[by_faults.best].name == "short");
    CHECK(holds(by_faults.sentence, "fewer dangers and faults"));
}

TEST_CASE("the same file twice comes to the same", "[compare]") {
    const Layout one = layout("one", example("bindery"));
    const Layout two = layout("two", example("bindery"));
    const Comparison made = compare({one, two});
    CHECK(made.alike);
    CHECK(made.best == 0);
    CHECK(file_differences(made).empty());
    CHECK(holds(comparison_text(made, Style{}), "The files say the same."));
}

TEST_CASE("differences of the files are found, titles aside", "[compare]") {
    const Installation in = example("bindery");
    Installation other = in;
    other.title = "another";
    other.appliance.fuel.moisture = 0.3;
    other.run[1].up_m = 3.3;
    const Comparison made = compare({layout("a", in), layout("b", other)});
    const auto rows = file_differences(made);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].pointer == "/appliance/fuel/moisture");
    CHECK(rows[0].values[1] == "30 % wet");
    CHECK(rows[1].pointer == "/run/1");
    CHECK(holds(rows[1].values[1], "3.3 m"));
}

TEST_CASE("lines that differ are marked and others are not", "[compare]") {
    const Installation in = example("bindery");
    Installation other = in;
    other.run[1].up_m = *other.run[1].up_m + 1.0;
    const std::string text =
        comparison_text(compare({layout("a", in), layout("b", other)}), Style{});
    CHECK(holds(text, "*  chimney top above outlet"));
    CHECK(holds(text, "   turns"));
    CHECK_FALSE(holds(text, "*  turns"));
}

TEST_CASE("JSON and CSV of a comparison tell the same layouts", "[compare]") {
    const Comparison made =
        compare({layout("a", example("bindery")), layout("b", example("toll-house"))});
    const auto json = nlohmann::json::parse(comparison_json(made, {})).at("result");
    CHECK(json.at("layouts").size() == 2);
    CHECK(json.at("best") == 0);
    CHECK(json.at("layouts").at(1).at("works") == false);
    const std::string csv = comparison_csv(made);
    CHECK(std::count(csv.begin(), csv.end(), '\n')
          == static_cast<std::ptrdiff_t>(1 + made.layouts[0].score.states.size()
                                         + made.layouts[1].score.states.size()));
}

namespace {

Comparison compared(const std::vector<NamedInstallation>& files, const std::string& rules = "") {
    const auto ground = common_ground(files, rules, std::nullopt);
    REQUIRE(ground);
    std::vector<Layout> layouts;
    for (std::size_t i = 0; i < files.size(); ++i) {
        auto assessed = assess(ground->installations[i],
                               {.size_search = false, .spread = false, .rules = ground->rules});
        REQUIRE(assessed);
        layouts.push_back(layout_of(files[i].name, files[i].written, std::move(assessed).value()));
    }
    Comparison made = compare(std::move(layouts));
    made.added = ground->added;
    return made;
}

} // namespace

TEST_CASE("a layout is no better for the weather its file leaves out", "[compare]") {
    Installation hidden = stove_with(pipe_in_room + chimney_of("0.9 m"));
    Installation whole = stove_with(pipe_in_room + chimney_of("1 m"));
    hidden.site.weather.resize(1);
    hidden.site.weather[0].name = "cold";
    hidden.site.weather[0].outdoor_temperature_k = 253.15;
    whole.site.weather[0] = hidden.site.weather[0];
    whole.site.weather[1].name = "warm";
    whole.site.weather[1].outdoor_temperature_k = 297.15;
    for (const auto& files :
         {std::vector<NamedInstallation>{{"hidden", hidden}, {"whole", whole}},
          std::vector<NamedInstallation>{{"whole", whole}, {"hidden", hidden}}}) {
        const Comparison made = compared(files);
        CAPTURE(made.sentence);
        for (const Layout& layout : made.layouts) {
            CHECK(layout.assessment.installation.weathers.size() == 2);
        }
        CHECK(made.layouts[made.best].name == "whole");
        REQUIRE(made.added.size() == 1);
        CHECK(made.added.front() == "hidden is checked in the weather of the others, too: warm.");
        CHECK(holds(comparison_text(made, Style{}), "hidden is checked in the weather"));
    }
}

TEST_CASE("of two weathers of one name the second is called by its file", "[compare]") {
    Installation one = stove_with(pipe_in_room + chimney_of("3 m"));
    Installation other = one;
    other.site.weather[0].outdoor_temperature_k = 258.15;
    const Comparison made = compared({{"one", one}, {"other", other}});
    CHECK(made.alike); // by the same three weathers
    for (const Layout& layout : made.layouts) {
        const auto& weathers = layout.assessment.installation.weathers;
        REQUIRE(weathers.size() == 3);
        CHECK(weathers[2].name == "frost of other");
        CHECK(weathers[2].outdoor_temperature_k == 258.15);
    }
}

TEST_CASE("a layout is no better for the rules its file does not name", "[compare]") {
    const auto with_roof = [](const std::string& more, const std::string& above) {
        return stove_with(pipe_in_room + chimney_of("3.4 m"),
                          more + R"("roof": {"top_above_roof": ")" + above
                              + R"(", "distance_to_ridge": "2 m", "pitch": "35 deg"},)");
    };
    const Installation us = with_roof(R"("rules": "us",)", "0.4 m");
    const Installation none = with_roof("", "0.2 m");
    const Comparison made = compared({{"us", us}, {"none", none}});
    CAPTURE(made.sentence);
    for (const Layout& layout : made.layouts) {
        CHECK(layout.assessment.body->id == "us");
    }
    CHECK((made.alike || made.layouts[made.best].name == "us"));
    REQUIRE(made.added.size() == 1);
    CHECK(made.added.front() == "none is held against the rules of United States, as all are.");
    CHECK(compared({{"us", us}, {"none", none}}, "uk").layouts[0].assessment.body->id == "uk");
    // Nor does a file that asks for none take away those of another, whichever is named first.
    const Installation no_rules = with_roof(R"("rules": "none",)", "0.2 m");
    CHECK(compared({{"none", no_rules}, {"us", us}}).layouts[0].assessment.body->id == "us");
}

TEST_CASE("a finding is told by what it is there, and the next best by what speaks for it",
          "[compare]") {
    const Installation near = stove_with(pipe_in_room + chimney_of("3.4 m"),
                                         R"("rules": "us", "roof": {"top_above_roof": "0.4 m",
                       "distance_to_ridge": "2 m", "pitch": "35 deg"},)");
    Installation far = near;
    far.site.roof.top_above_roof_m = 3.0;
    far.run[1].up_m = 3.9;
    const Comparison made = compared({{"near", near}, {"far", far}});
    const std::string text = comparison_text(made, Style{});
    for (const Layout& layout : made.layouts) {
        for (const Finding& finding : layout.assessment.findings) {
            if (finding.severity != finding.matter->severity) {
                CHECK_FALSE(holds(text,
                                  std::string{name(finding.matter->severity)} + "  "
                                      + std::string{finding.matter->title}));
            }
        }
    }
    CAPTURE(made.sentence);
    CHECK(made.layouts[made.best].name == "far");
    CHECK(holds(made.sentence, "near falls short: Chimney top too low"));
    // Where nothing falls short, less pipe speaks for the other.
    Installation lower = near;
    Installation higher = far;
    lower.site.roof = higher.site.roof = {};
    lower.site.months_since_inspection = 24.0;
    higher.site.months_since_inspection = 0.0;
    const Comparison sound = compared({{"lower", lower}, {"higher", higher}});
    CAPTURE(sound.sentence);
    CHECK(sound.layouts[sound.best].name == "higher");
    CHECK(holds(sound.sentence, "Take lower only where less pipe counts for more, 4.6 m against"));
}

namespace {

PiecePrices dear_pipe() {
    PiecePrices prices;
    prices.currency = "EUR";
    PiecePrice chimney;
    chimney.wall = "insulated 25 mm";
    chimney.per_metre = 200.0;
    PiecePrice pipe;
    pipe.wall = "single-wall steel";
    pipe.per_metre = 40.0;
    prices.prices = {chimney, pipe};
    return prices;
}

Layout priced(const std::string& name, const Installation& in) {
    auto assessed = assess(in, {.size_search = false, .spread = false});
    REQUIRE(assessed.has_value());
    return layout_of(name, in, std::move(assessed).value(), dear_pipe());
}

} // namespace

TEST_CASE("what is bought and what it costs is that of the list of parts", "[compare]") {
    const Installation low = stove_with(pipe_in_room + chimney_of("5 m"));
    const Installation tall = stove_with(pipe_in_room + chimney_of("7 m"));
    Layout a = priced("low", low);
    Layout b = priced("tall", tall);
    const PartsList list = parts_list(low,
                                      a.assessment.installation,
                                      a.assessment.solution,
                                      {.at_hand = {}, .prices = dear_pipe()});
    REQUIRE(a.parts.price.has_value());
    CHECK(*a.parts.price == *list.price);
    // Two more lengths of chimney; all else, its clips apart, is alike.
    CHECK(*b.parts.price == Approx(*a.parts.price + 2.0 * 200.0));
    const Comparison made = compare({a, b});
    const auto rows = part_differences(made);
    const auto lengths = std::find_if(rows.begin(), rows.end(), [](const PartDifference& row) {
        return row.what.find("length of 1 m") != std::string::npos;
    });
    REQUIRE(lengths != rows.end());
    CHECK(lengths->counts[1] == lengths->counts[0] + 2.0);
    // Where the margin decides for the dearer one, the price of it is said; where both have
    // enough, the cheaper one is taken.
    b.score.least_spare = a.score.least_spare + 0.2;
    a.score.least_spare = 0.05;
    b.failures = a.failures;
    b.warnings = a.warnings;
    b.parts.unpriced = a.parts.unpriced;
    const Comparison by_spare = compare({a, b});
    CAPTURE(by_spare.sentence);
    CHECK(holds(by_spare.sentence, "Take tall"));
    CHECK(holds(by_spare.sentence,
                "Take low only where less cost counts for more, 1050.00 EUR against"));
    a.score.least_spare = b.score.least_spare = 2.0;
    const Comparison by_cost = compare({b, a});
    CAPTURE(by_cost.sentence);
    CHECK(by_cost.layouts[by_cost.best].name == "low");
    CHECK(holds(by_cost.sentence, "its parts cost less"));
    // What has no price must not win by it.
    a.parts.price = 1.0;
    a.parts.unpriced += 1;
    const Comparison unknown = compare({b, a});
    CHECK_FALSE(holds(unknown.sentence, "cost less"));
}

TEST_CASE("those that tie are called ties, and of them none is the one to take", "[compare]") {
    const Installation in = stove_with(pipe_in_room + chimney_of("6 m"));
    const Installation low = stove_with(pipe_in_room + chimney_of("1 m"));
    const Comparison made = compare({layout("one", in), layout("low", low), layout("two", in)});
    CAPTURE(made.sentence);
    CHECK_FALSE(made.alike);
    CHECK(made.tied == std::vector<std::size_t>{2});
    CHECK(holds(made.sentence, "two comes to the same as one."));
    const std::string text = comparison_text(made, Style{});
    CHECK(holds(text, "one <"));
    CHECK(holds(text, "two <"));
    CHECK_FALSE(holds(text, "low <"));
    CHECK(compare({layout("one", in), layout("two", in)}).tied.size() == 1);
}
