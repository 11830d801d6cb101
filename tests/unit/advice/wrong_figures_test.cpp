// Where no cause explains what was seen, a figure of the file or a reading may be wrong.
#include "catch.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <algorithm>
#include <string>

using namespace fluewright;

namespace {

/// A sound run of 5.2 m; with `top` for its outdoor length, and what was seen.
Diagnosis diagnosis_of(const std::string& top, const std::string& observed) {
    const std::string text =
        R"({"site": {"weather": [{"name": "day", "outdoor_temperature": "5 degC"}]},
            "appliance": {"type": "stove", "fuel": {"name": "beech", "moisture": "16 %"},
              "burn_rate": "2.5 kg/h", "outlet": {"diameter": "150 mm", "height": "0.7 m"}},
            "run": [{"part": "straight", "up": "1.2 m", "diameter": "150 mm", "wall": "single-wall steel"},
              {"part": "elbow", "angle": "90 deg"}, {"part": "straight", "across": "0.6 m"}, {"part": "tee"},
              {"part": "straight", "up": ")"
        + top + R"(", "diameter": "150 mm", "wall": "insulated 25 mm", "zone": "outdoors"},
              {"part": "cap", "screen": "12 mm", "zone": "outdoors"}],
            "observed": [)"
        + observed + "]}";
    const auto read = read_installation(text);
    REQUIRE(read);
    auto made = diagnose(*read);
    REQUIRE(made.has_value());
    return std::move(made).value();
}

const WrongFigure* figure_at(const Diagnosis& diagnosis, std::string_view pointer, double meant) {
    const auto found = std::find_if(diagnosis.wrong_figures.begin(),
                                    diagnosis.wrong_figures.end(),
                                    [&](const WrongFigure& figure) {
                                        return figure.pointer == pointer
                                               && std::abs(figure.meant - meant) < 0.01 * meant;
                                    });
    return found == diagnosis.wrong_figures.end() ? nullptr : &*found;
}

constexpr const char* drawing_well =
    R"({"draft": "18 Pa", "at": "outlet", "state": "high fire"},
       {"gas_temperature": "250 degC", "at": "outlet", "state": "high fire"}, {"smoke": "none"})";

} // namespace

TEST_CASE("a slip in a length of the file is found from what the run shows", "[diagnosis]") {
    const Diagnosis made = diagnosis_of("0.4 m", drawing_well);
    CHECK(made.nothing_explains);
    const WrongFigure* figure = figure_at(made, "/run/4/up", 4.0);
    REQUIRE(figure != nullptr);
    CHECK(figure->written == Approx(0.4));
    CHECK(figure->slip == "a decimal point");
}

TEST_CASE("a slip in a reading is found, and the reading doubted", "[diagnosis]") {
    const Diagnosis made =
        diagnosis_of("4 m",
                     R"({"draft": "1.9 Pa", "at": "outlet", "state": "high fire"},
           {"gas_temperature": "290 degC", "at": "outlet", "state": "high fire"},
           {"smoke": "none", "state": "high fire"}, {"sluggish": false}, {"draft": "19 Pa", "at": "outlet", "state": "high fire"})");
    CHECK(made.nothing_explains);
    CHECK(figure_at(made, "/observed/0/draft", 19.0) != nullptr);
    REQUIRE_FALSE(made.doubtful.empty());
    CHECK(made.doubtful.front().seen == 0);
    CHECK(made.doubtful.front().explanation == "nothing hidden");
}

TEST_CASE("inches of water written as pascals are found", "[diagnosis]") {
    const Diagnosis made =
        diagnosis_of("4 m",
                     R"({"draft": "0.08 Pa", "at": "outlet", "state": "high fire"},
           {"gas_temperature": "270 degC", "at": "outlet", "state": "high fire"},
           {"smoke": "none", "state": "high fire"}, {"draft": "16 Pa", "at": "1", "state": "high fire"})");
    const WrongFigure* figure = figure_at(made, "/observed/0/draft", 19.9);
    REQUIRE(figure != nullptr);
    CHECK(figure->slip == "pascals written where inches of water were meant");
}

TEST_CASE("nothing is doubted where the run, or a cause, explains what was seen", "[diagnosis]") {
    for (const char* seen :
         {drawing_well,                            // the run as it stands
          R"({"draft": "3 Pa", "at": "outlet", "state": "high fire"}, {"smoke": "joints"},
             {"look": "cap", "found": "bad"})"}) { // a clogged screen
        const Diagnosis made = diagnosis_of("4 m", seen);
        CAPTURE(seen, made.sentence);
        CHECK_FALSE(made.nothing_explains);
        CHECK(made.wrong_figures.empty());
        CHECK(made.doubtful.empty());
    }
}
