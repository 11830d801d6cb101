// Ranges of a quantity, the names of what can be varied, and what a value does to the installation.
#include "catch.hpp"
#include "examples.hpp"
#include "fluewright/advice/study/varied.hpp"
#include "fluewright/core/quantity/quantity_range.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>

using namespace fluewright;
using What = VariedKey::What;

namespace {

std::vector<double> range(const std::string& text, Kind kind) {
    const auto values = parse_range(text, kind);
    INFO(text);
    REQUIRE(values.has_value());
    return *values;
}

std::string range_fault(const std::string& text, Kind kind) {
    const auto values = parse_range(text, kind);
    INFO(text);
    REQUIRE_FALSE(values.has_value());
    return values.error();
}

VariedKey key_of(const std::string& name, const Installation& in) {
    auto key = find_varied_key(name, in);
    INFO((key ? "" : key.error()));
    REQUIRE(key.has_value());
    return *key;
}

std::string key_fault(const std::string& name, const Installation& in) {
    const auto key = find_varied_key(name, in);
    REQUIRE_FALSE(key.has_value());
    return key.error();
}

bool holds(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("a range takes the unit at its end and has both ends in it", "[varied]") {
    const auto cold = range("-20..15degC:8", Kind::temperature);
    REQUIRE(cold.size() == 8);
    CHECK(cold.front() == Approx(253.15));
    CHECK(cold.back() == Approx(288.15));
    CHECK(cold[1] - cold[0] == Approx(5.0));
    CHECK(range("3..8m", Kind::length) == std::vector<double>{3.0, 4.25, 5.5, 6.75, 8.0});
    CHECK(range("3 m, 4 m,6 m", Kind::length) == std::vector<double>{3.0, 4.0, 6.0});
    CHECK(range("3,4,6 m", Kind::length) == std::vector<double>{3.0, 4.0, 6.0});
    CHECK(range("4 m", Kind::length) == std::vector<double>{4.0});
    CHECK(range("8..3 m:2", Kind::length) == std::vector<double>{8.0, 3.0});
    CHECK(range("900 mm..2 m:2", Kind::length) == std::vector<double>{0.9, 2.0});
    CHECK(range("10..30 %:2", Kind::fraction) == std::vector<double>{0.1, 0.3});
    CHECK(range("0.5..1.5:3", Kind::number) == std::vector<double>{0.5, 1.0, 1.5});
}

TEST_CASE("a range that cannot be read says why", "[varied]") {
    CHECK(holds(range_fault("3..8m:1", Kind::length), "no count"));
    CHECK(holds(range_fault("3..8m:x", Kind::length), "no count"));
    CHECK(holds(range_fault("3..8m:100000", Kind::length), "no count"));
    std::string many;
    for (int i = 0; i < 1001; ++i) {
        many += i == 0 ? "3" : ", 3";
    }
    CHECK(holds(range_fault(many + " m", Kind::length), "more than 1000"));
    CHECK(holds(range_fault("3..8", Kind::length), "unit"));
    CHECK_FALSE(range_fault("", Kind::length).empty());
    CHECK_FALSE(range_fault("..", Kind::length).empty());
    CHECK_FALSE(range_fault("3..8 degC", Kind::length).empty());
    CHECK_FALSE(range_fault("3 m,,4 m", Kind::length).empty());
}

TEST_CASE("short names, ends of pointers and pointers all lead to their number", "[varied]") {
    const Installation in = example("bindery");
    CHECK(key_of("outdoor", in).what == What::outdoor);
    CHECK(key_of("outdoor", in).kind == Kind::temperature);
    CHECK(key_of("height", in).what == What::height);
    CHECK(key_of("diameter", in).what == What::diameter);
    CHECK(key_of("burn_rate", in).kind == Kind::mass_rate);
    CHECK(key_of("moisture", in).pointers == std::vector<std::string>{"/appliance/fuel/moisture"});
    CHECK(key_of("room/pressure", in).pointers == std::vector<std::string>{"/site/room/pressure"});
    CHECK(key_of("room.pressure", in).pointers == std::vector<std::string>{"/site/room/pressure"});
    CHECK(key_of("room_pressure", in).pointers == std::vector<std::string>{"/site/room/pressure"});
    CHECK(key_of("outlet-diameter", in).pointers
          == std::vector<std::string>{"/appliance/outlet/diameter"});
    CHECK(key_of("/run/0/up", in).label == "up of straight 1");
    CHECK(key_of("wind", in).pointers.size() == in.site.weather.size());
}

TEST_CASE("every number of every example can be varied by its pointer", "[varied]") {
    for (const std::string name : {"bindery", "weaving-mill", "tile-kiln", "sugar-house"}) {
        const Installation in = example(name);
        for (const std::string& pointer : value_pointers(in)) {
            if (pointer.starts_with("/observed/") || pointer.starts_with("/stock/")) {
                CHECK_FALSE(find_varied_key(pointer, in).has_value());
                continue;
            }
            const VariedKey key = key_of(pointer, in);
            CHECK(key.pointers == std::vector<std::string>{pointer});
            auto changed = with_value(in, key, 1.25);
            REQUIRE(changed.has_value());
            Installation after = *changed;
            CHECK(*find_value(after, pointer).value == 1.25);
        }
    }
}

TEST_CASE("a name that fits nothing or too much says what is near", "[varied]") {
    const Installation in = example("bindery");
    CHECK(holds(key_fault("moistrue", in), "did you mean `moisture`?"));
    CHECK(holds(key_fault("heigth", in), "did you mean `height`?"));
    CHECK(holds(key_fault("/run/0/upp", in), "did you mean `/run/0/up`?"));
    CHECK(holds(key_fault("qqqqqqqqqqqqqqqqq", in), "write outdoor"));
    CHECK(holds(key_fault("up", in), "/run/0/up"));
    CHECK(holds(key_fault("up", in), "several numbers"));
}

TEST_CASE("values are held against the limits of the key", "[varied]") {
    const Installation in = example("bindery");
    const auto fault = [&](const std::string& typed) {
        const auto read = read_varied(typed, in);
        INFO(typed);
        REQUIRE_FALSE(read.has_value());
        return read.error();
    };
    CHECK(holds(fault("height"), "lacks its values"));
    CHECK(holds(fault("=3..4m"), "lacks its values"));
    CHECK(holds(fault("moisture=10..140 %:3"), "out of range"));
    CHECK(holds(fault("height=3..4"), "height: "));
    const auto read = read_varied("height=3..8m:6", in);
    REQUIRE(read.has_value());
    CHECK(read->values.size() == 6);
}

TEST_CASE("the short names change what they say", "[varied]") {
    const Installation in = example("bindery");
    const auto set = [&](const std::string& name, double value) {
        auto changed = with_value(in, key_of(name, in), value);
        REQUIRE(changed.has_value());
        return std::move(changed).value();
    };
    const auto higher = resolve(set("height", 7.5));
    REQUIRE(higher.has_value());
    CHECK(higher->total_rise_m() == Approx(7.5));
    const Installation cold = set("outdoor", 250.0);
    REQUIRE(cold.site.weather.size() == 1);
    CHECK(*cold.site.weather.front().outdoor_temperature_k == 250.0);
    const auto wide = resolve(set("diameter", 0.2));
    REQUIRE(wide.has_value());
    CHECK(wide->sections.back().diameter_m == Approx(0.2));
    const auto brisk = resolve(set("burn_rate", 0.001));
    REQUIRE(brisk.has_value());
    CHECK(brisk->appliance.high.burn_rate_kg_s == Approx(0.001));
    const auto low = with_value(in, key_of("height", in), 0.1);
    REQUIRE_FALSE(low.has_value());
    CHECK(holds(low.error(), "topmost straight"));
}
