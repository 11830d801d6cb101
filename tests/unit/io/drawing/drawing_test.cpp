#include "../../../catch.hpp"
#include "../../../property/random_household.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/io/drawing/draw.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/report/report_compare.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "fluewright/io/report/report_size.hpp"
#include "fluewright/io/report/report_warmup.hpp"
#include "io/drawing/elevation.hpp"
#include "svg_reader.hpp"

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace {

using namespace fluewright;

struct Judged {
    Installation written;
    Assessment assessment;
};

std::optional<Judged> judged(Installation written, AssessOptions options = {}) {
    options.size_search = false;
    options.spread = false;
    auto assessment = assess(written, options);
    if (!assessment) {
        return std::nullopt;
    }
    return Judged{std::move(written), std::move(assessment).value()};
}

Installation example(const std::filesystem::path& file) {
    std::ifstream in(file);
    std::ostringstream text;
    text << in.rdbuf();
    auto read = read_installation(text.str(), file.string());
    REQUIRE(read);
    return std::move(read).value();
}

Judged example_named(const std::string& name) {
    auto made = judged(example(std::string{PROJECT_SOURCE_DIR "/examples/"} + name + ".json"));
    REQUIRE(made);
    return std::move(*made);
}

/// Every picture of an installation.
std::vector<std::string> pictures_of(const Judged& of) {
    const PartsList parts =
        parts_list(of.written, of.assessment.installation, of.assessment.solution);
    std::vector<std::string> pictures;
    for (std::size_t i = 0; i < show_words.size(); ++i) {
        pictures.push_back(draw_run(of.written,
                                    of.assessment,
                                    {.show = static_cast<Show>(i), .state = {}, .parts = &parts}));
    }
    pictures.push_back(draw_profile(of.written, of.assessment, nullptr));
    return pictures;
}

void check_pictures(const Judged& of) {
    for (const std::string& text : pictures_of(of)) {
        REQUIRE(picture::fault_of_xml(text) == "");
        const picture::Svg svg = picture::read_svg(text);
        REQUIRE(svg.texts.size() > 1);
        REQUIRE(picture::crowded(svg) == "");
        for (const std::string_view no_number :
             {"\"nan", "-nan", ",nan", "\"inf", "-inf", ",inf"}) {
            REQUIRE(text.find(no_number) == std::string::npos);
        }
    }
}

} // namespace

TEST_CASE("No words of a picture overlap or leave it, on every example") {
    std::size_t count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(PROJECT_SOURCE_DIR "/examples")) {
        if (entry.path().extension() == ".json") {
            INFO(entry.path().string());
            const auto made = judged(example(entry.path()));
            REQUIRE(made);
            check_pictures(*made);
            ++count;
        }
    }
    CHECK(count >= 20);
}

TEST_CASE("No words of a picture overlap or leave it, on random installations", "[many]") {
    std::size_t count = 0;
    for (std::uint64_t seed = 1; count < 500; ++seed) {
        REQUIRE(seed < 2000);
        INFO("seed " << seed);
        const auto made = judged(property::random_household(seed));
        if (made) {
            check_pictures(*made);
            ++count;
        }
    }
}

TEST_CASE("No words of a chart overlap or leave it, on every example", "[many]") {
    std::vector<Layout> layouts;
    for (const auto& entry : std::filesystem::directory_iterator(PROJECT_SOURCE_DIR "/examples")) {
        if (entry.path().extension() != ".json") {
            continue;
        }
        INFO(entry.path().string());
        const Installation written = example(entry.path());
        const auto made = judged(written);
        REQUIRE(made);
        const Case& c = made->assessment.installation;
        SizeTableOptions sizes;
        sizes.separate = layouts.size() % 2 == 0;
        sizes.heights_m = {3.0, 6.0};
        const auto table = tabulate_sizes(written, sizes);
        REQUIRE(table);
        std::vector<WarmupInWeather> courses;
        for (std::size_t weather = 0; weather < c.weathers.size(); ++weather) {
            courses.push_back(
                {weather, warm_up(c, {.weather = weather, .total_s = 7200.0, .step_s = 60.0})});
        }
        auto diagnoser = Diagnoser::open(written);
        REQUIRE(diagnoser);
        const WarmupReportOptions warmup{
            .style = {}, .dangers = {}, .not_decided = {}, .input = {}};
        for (const std::string& text : {size_table_svg(*table),
                                        warmup_svg(c, courses, warmup),
                                        diagnosis_svg(diagnoser->diagnose())}) {
            REQUIRE(picture::fault_of_xml(text) == "");
            REQUIRE(picture::crowded(picture::read_svg(text)) == "");
        }
        layouts.push_back(layout_of(entry.path().stem().string(), written, made->assessment));
    }
    for (const std::size_t count : {std::size_t{2}, std::size_t{5}, layouts.size()}) {
        const std::string text =
            comparison_svg(compare({layouts.begin(), layouts.begin() + static_cast<long>(count)}));
        REQUIRE(picture::fault_of_xml(text) == "");
        REQUIRE(picture::crowded(picture::read_svg(text)) == "");
    }
}

TEST_CASE("The measure finds an overlap and words outside") {
    const std::string start = R"(<svg width="100" height="40">)";
    const std::string one = R"(<text x="10" y="20" font-size="12">draft</text>)";
    const auto found = [&](const std::string& more) {
        return picture::crowded(picture::read_svg(start + one + more + "</svg>"));
    };
    CHECK(found("") == "");
    CHECK(found(R"(<text x="30" y="24" font-size="12">low</text>)") != "");
    CHECK(found(R"(<text x="90" y="38" font-size="12">outside</text>)") != "");
    CHECK(found(R"(<text x="60" y="20" font-size="12">low</text>)") == "");
    CHECK(picture::fault_of_xml("<a b=\"1\"><c/></a>") == "");
    CHECK(picture::fault_of_xml("<a b=1></a>") != "");
    CHECK(picture::fault_of_xml("<a>&</a>") != "");
    CHECK(picture::fault_of_xml("<a><b></a></b>") != "");
}

TEST_CASE("A title cannot break a picture") {
    for (const std::string_view title :
         {std::string_view{"<svg onload=\"x()\">&amp;'\"]]>"},
          std::string_view{"a\x01\x1b[31m b\tc\nd"},
          std::string_view{"\u202e\u2066turned\u2069\u200f"},
          std::string_view{"\uFFFE\uFFFF\uFDD0"},
          std::string_view{"\xff\xfe\xc0\x80 broken"},
          std::string_view{
              "\u5ba4\u5185\u306e\u7159\u7a81\u5ba4\u5185\u306e\u7159\u7a81\u5ba4\u5185\u306e\u7159"
              "\u7a81\u5ba4\u5185\u306e\u7159\u7a81\u5ba4\u5185\u306e"}}) {
        Judged of = example_named("weigh-house");
        of.written.title = std::string{title};
        of.written.site.weather.front().name = std::string{title};
        auto made = judged(of.written);
        REQUIRE(made);
        check_pictures(*made);
        for (const std::string& text : pictures_of(*made)) {
            CHECK(text.find("onload=\"") == std::string::npos);
        }
    }
}

TEST_CASE("The elevation stands where the run says") {
    const Judged of = example_named("net-loft");
    const drawing::Elevation e = drawing::elevation_of(of.written, of.assessment.installation);
    REQUIRE(e.parts.size() == of.written.run.size());
    // 0.8 m outlet, 1 m up, 0.7 m across rising 20 mm, 4.6 m up.
    CHECK(e.outlet.y_m == Approx(0.8));
    CHECK(e.top.y_m == Approx(0.8 + 1.0 + 0.02 + 4.6));
    CHECK(e.top.x_m == Approx(0.7));
    CHECK(e.run_leaves_sideways);
    const drawing::Barrier* wall = e.first(drawing::BarrierKind::wall);
    REQUIRE(wall != nullptr);
    CHECK(wall->at_m > 0.0);
    CHECK(wall->at_m < 0.7);
    CHECK_FALSE(wall->stated);
    CHECK(e.first(drawing::BarrierKind::roof) == nullptr);
    // 25 mm of insulation round 150 mm.
    CHECK(e.parts[4].bore_m == Approx(0.15));
    CHECK(e.parts[4].outside_m > 0.2);
    CHECK(e.parts[0].outside_m < 0.16);
}

TEST_CASE("Ceiling and roof stand where the zones change, the roof where the file says") {
    const Judged bindery = example_named("bindery");
    const drawing::Elevation zones =
        drawing::elevation_of(bindery.written, bindery.assessment.installation);
    REQUIRE(zones.first(drawing::BarrierKind::ceiling) != nullptr);
    CHECK(zones.first(drawing::BarrierKind::ceiling)->at_m == Approx(0.75 + 1.5 + 1.1));
    REQUIRE(zones.first(drawing::BarrierKind::roof) != nullptr);
    CHECK(zones.first(drawing::BarrierKind::roof)->at_m == Approx(0.75 + 1.5 + 1.1 + 0.7));
    REQUIRE(zones.roof);
    CHECK_FALSE(zones.roof->pitch_known);

    Judged weigh = example_named("weigh-house");
    weigh.written.site.roof.top_above_roof_m = 1.0;
    const auto again = judged(weigh.written);
    REQUIRE(again);
    const drawing::Elevation told =
        drawing::elevation_of(again->written, again->assessment.installation);
    CHECK(told.first(drawing::BarrierKind::roof)->at_m == Approx(told.top.y_m - 1.0));
    CHECK(told.first(drawing::BarrierKind::roof)->stated);
    CHECK(told.roof->pitch_known);
    REQUIRE(told.combustibles.size() >= 4);
    // 18 in from the outside of the pipe, not from its axis.
    const drawing::Combustible& beside = told.combustibles.front();
    CHECK(beside.from.x_m
          == Approx(told.parts[0].axis[0].x_m + 0.5 * told.parts[0].outside_m + 0.4572));
}

TEST_CASE("The picture shows the figures of the profile and marks what leaks") {
    const Judged sound = example_named("bindery");
    const std::string calm = draw_run(sound.written, sound.assessment, {.show = Show::pressure});
    CHECK(calm.find("joint lets smoke out") == std::string::npos);
    const Judged pressed = example_named("toll-house");
    const std::string bad = draw_run(pressed.written, pressed.assessment, {.show = Show::pressure});
    CHECK(bad.find("joint lets smoke out") != std::string::npos);
    CHECK(bad.find("DANGER") != std::string::npos);

    const StateResult* state = drawn_state(sound.assessment, Show::temperature);
    REQUIRE(state != nullptr);
    const std::string gas = format_quantity(
        state->stations.back().gas_temperature_k, Kind::temperature, UnitSystem::metric);
    CHECK(draw_run(sound.written, sound.assessment, {}).find("gas " + gas) != std::string::npos);
}

TEST_CASE("A condition is found by its name") {
    const Judged of = example_named("bindery");
    const std::vector<std::string> names = drawn_state_names(of.assessment);
    REQUIRE(names.size() > 2);
    for (const std::string& name : names) {
        REQUIRE(state_named(of.assessment, name) != nullptr);
        CHECK(draw_profile(of.written, of.assessment, state_named(of.assessment, name)).find(name)
              != std::string::npos);
    }
    CHECK(state_named(of.assessment, "a fire under water") == nullptr);
}

TEST_CASE("Entries of a column keep apart and near to where they are wanted") {
    const std::vector<drawing::Entry> entries{{10.0, 10.0}, {12.0, 10.0}, {50.0, 10.0}};
    const std::vector<double> tops = drawing::in_column(entries, 0.0, 2.0);
    REQUIRE(tops.size() == 3);
    CHECK(tops[1] >= tops[0] + 12.0);
    CHECK(tops[2] == Approx(45.0));
    CHECK(std::abs(tops[0] + 5.0 - 10.0) < 8.0);
    // None above the top, whatever is wanted.
    CHECK(drawing::in_column({{-50.0, 10.0}}, 4.0, 2.0).front() == Approx(4.0));
}
