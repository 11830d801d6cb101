#include "catch.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/reference/schema.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/structure.hpp"

#include <algorithm>
#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

using namespace fluewright;

namespace {

/// Writes an object that holds every key of the table with its example, leaving out those that
/// exclude each other.
class ExampleWriter {
public:
    template <class T>
    std::string object(const std::string& path, unsigned kinds = part_kind::any) {
        std::string text;
        const auto add = [&text](std::string_view key, const std::string& value) {
            text += fmt::format("{}\"{}\": {}", text.empty() ? "" : ", ", key, value);
        };
        for (const auto& field : fields<T>()) {
            if ((field.info.parts & kinds) != 0U && !left_out(field.info.key, path)) {
                add(field.info.key, value_of(field, path + '/' + std::string{field.info.key}));
            }
        }
        T object;
        for_each_child(object, [&](const ChildInfo& child, auto& member) {
            add(child.key, child_of(member, path + '/' + std::string{child.key}));
        });
        return '{' + text + '}';
    }

    [[nodiscard]] const std::vector<std::pair<std::string, double>>& numbers() const {
        return numbers_;
    }

private:
    static bool left_out(std::string_view key, const std::string& path) {
        const std::set<std::string_view> other_ways{"down",
                                                    "across",
                                                    "rise",
                                                    "slope",
                                                    "width",
                                                    "depth",
                                                    "shape",
                                                    "liner",
                                                    "thermal_resistance",
                                                    "joint_gap",
                                                    "pressure_burning",
                                                    "pressure_idle"};
        if (path == "/site/house" && key == "leakage_area") {
            return true;
        }
        return path != "/appliance/door" && path != "/appliance/firebox"
               && other_ways.count(key) > 0;
    }

    template <class T>
    std::string value_of(const Field<T>& field, const std::string& path) {
        const auto& info = field.info;
        const std::string typed = '"' + std::string{info.example} + '"';
        if (std::holds_alternative<Flag T::*>(field.member)) {
            return "true";
        }
        if (std::holds_alternative<Word T::*>(field.member)
            || std::holds_alternative<ChoiceMember<T>>(field.member)) {
            const bool kind = std::is_same_v<T, Part> && info.key == "part";
            return kind ? '"' + part_ + '"' : typed;
        }
        const auto quantity = parse_quantity(info.example, info.kind);
        CAPTURE(path, info.example);
        REQUIRE(quantity.has_value());
        const auto text = info.kind == Kind::number ? std::string{info.example} : typed;
        if (std::holds_alternative<Given T::*>(field.member)) {
            numbers_.emplace_back(path, quantity->value);
            return text;
        }
        numbers_.emplace_back(path + "/low", quantity->value);
        numbers_.emplace_back(path + "/high", quantity->value);
        return fmt::format("{{\"low\": {}, \"high\": {}}}", text, text);
    }

    template <class T>
    std::string child_of(T& /*member*/, const std::string& path) {
        return object<T>(path);
    }

    template <class T>
    std::string child_of(std::vector<T>& /*list*/, const std::string& path) {
        if constexpr (Named<T>) {
            return "{\"mine\": " + object<T>(path + "/mine") + '}';
        } else if constexpr (std::is_same_v<T, Part>) {
            std::string text;
            // The cap has to come last.
            std::vector<std::string_view> names(part_kind::names().begin(),
                                                part_kind::names().end());
            std::stable_partition(
                names.begin(), names.end(), [](std::string_view name) { return name != "cap"; });
            for (std::size_t i = 0; i < names.size(); ++i) {
                part_ = names[i];
                text += i == 0 ? "" : ",\n ";
                text += object<Part>(fmt::format("{}/{}", path, i),
                                     part_kind::bit(*from_word<PartKind>(names[i])));
            }
            return '[' + text + ']';
        } else {
            return '[' + object<T>(path + "/0") + ']';
        }
    }

    std::string part_;
    std::vector<std::pair<std::string, double>> numbers_;
};

template <class T>
void check_rows() {
    for (const auto& field : fields<T>()) {
        const auto& info = field.info;
        CAPTURE(info.key);
        CHECK(info.meaning.size() > 10);
        CHECK(info.meaning.back() == '.');
        CHECK_FALSE(info.example.empty());
        CHECK(find_field<T>(info.key, info.parts) == &field);
        if (!std::holds_alternative<Given T::*>(field.member)
            && !std::holds_alternative<HighLow T::*>(field.member)) {
            CHECK((info.words == Words::choices) == !info.choices.empty());
            continue;
        }
        CHECK(info.lowest < info.highest);
        CHECK_FALSE(info.limit_reason.empty());
        const auto example = parse_quantity(info.example, info.kind);
        REQUIRE(example.has_value());
        CHECK(example->value >= info.lowest);
        CHECK(example->value <= info.highest);
    }
}

void compare_with_file(const std::string& fresh, const std::string& name) {
    const std::string path = std::string{PROJECT_SOURCE_DIR} + "/docs/" + name;
    if (std::getenv("FLUEWRIGHT_UPDATE_DOCS") != nullptr) {
        std::ofstream{path} << fresh;
    }
    std::ifstream file{path};
    std::ostringstream committed;
    committed << file.rdbuf();
    INFO("docs/" << name << " is stale; run this test with FLUEWRIGHT_UPDATE_DOCS=1");
    CHECK(committed.str() == fresh);
}

} // namespace

TEST_CASE("every row of the table is complete and its example is in range", "[fields]") {
    check_rows<Installation>();
    check_rows<Site>();
    check_rows<Room>();
    check_rows<Weather>();
    check_rows<House>();
    check_rows<Fan>();
    check_rows<HouseOpening>();
    check_rows<Appliance>();
    check_rows<FuelChoice>();
    check_rows<Outlet>();
    check_rows<Door>();
    check_rows<Firebox>();
    check_rows<Part>();
    check_rows<OwnFuel>();
    check_rows<OwnWall>();
    check_rows<OwnLayer>();
    check_rows<OwnFitting>();
    check_rows<Observation>();
    check_rows<BurnEntry>();
}

TEST_CASE("a file with every key reads back to each value", "[fields]") {
    ExampleWriter writer;
    const auto text = writer.object<Installation>("");
    auto result = read_installation(text);
    INFO(text);
    INFO((result.has_value() ? "" : diagnostics_text(result.error())));
    REQUIRE(result.has_value());
    auto& read = result.value();
    CHECK(writer.numbers().size() > 100);
    for (const auto& [pointer, value] : writer.numbers()) {
        CAPTURE(pointer);
        const auto slot = find_value(read, pointer);
        REQUIRE(slot);
        REQUIRE(slot.value->has_value());
        CHECK(**slot.value == value);
    }
    CHECK(read.run.size() == part_kind::names().size());
    CHECK(read.run.back().build == Build::plain);
}

TEST_CASE("numbers are found by their pointer", "[fields]") {
    Installation installation;
    installation.run.resize(2);
    installation.run[1].part = PartKind::elbow;
    installation.fuels.push_back({"a/b", {}, {}, {}, {}, {}, {}, {}, {}, {}, {}});
    CHECK(find_value(installation, "/run/1/angle").value == &installation.run[1].angle_rad);
    CHECK(find_value(installation, "/run/1/angle").field->key == "angle");
    CHECK(find_value(installation, "/appliance/burn_rate").value
          == &installation.appliance.burn_rate_kg_s.high);
    CHECK(find_value(installation, "/appliance/burn_rate/low").value
          == &installation.appliance.burn_rate_kg_s.low);
    CHECK(find_value(installation, "/fuels/a~1b/ash").value == &installation.fuels[0].ash);
    for (const auto* nowhere : {"",
                                "/",
                                "/run",
                                "/run/2/up",
                                "/run/-1/up",
                                "/run/1x/up",
                                "/run/1/up",
                                "/title",
                                "/appliance/burn_rate/middle",
                                "/site/altitude/low",
                                "/appliance/type"}) {
        CAPTURE(nowhere);
        CHECK_FALSE(find_value(installation, nowhere));
    }
}

TEST_CASE("every listed pointer leads to a number of its own", "[fields]") {
    Installation installation;
    installation.run.resize(3);
    installation.run[0].part = PartKind::straight;
    installation.run[1].part = PartKind::elbow;
    installation.run[2].part = PartKind::cap;
    installation.walls.emplace_back().id = "my wall";
    installation.walls[0].layers.resize(2);
    const auto pointers = value_pointers(installation);
    std::set<Given*> slots;
    for (const auto& pointer : pointers) {
        CAPTURE(pointer);
        const auto slot = find_value(installation, pointer);
        REQUIRE(slot);
        CHECK(slots.insert(slot.value).second);
    }
    CHECK(std::count(pointers.begin(), pointers.end(), "/run/2/screen") == 1);
    CHECK(std::count(pointers.begin(), pointers.end(), "/run/1/up") == 0);
    CHECK(std::count(pointers.begin(), pointers.end(), "/walls/my wall/layers/1/thickness") == 1);
}

TEST_CASE("the schema holds every key", "[fields]") {
    const auto schema = nlohmann::json::parse(input_schema());
    CHECK(schema["$schema"] == "https://json-schema.org/draft/2020-12/schema");
    CHECK(schema["required"] == nlohmann::json({"appliance", "run"}));
    for (const auto& field : fields<Appliance>()) {
        CAPTURE(field.info.key);
        CHECK(schema["properties"]["appliance"]["properties"].contains(field.info.key));
    }
    const auto& elbow = schema["properties"]["run"]["items"]["oneOf"][1]["properties"];
    CHECK(elbow["part"]["const"] == "elbow");
    CHECK(elbow.contains("angle"));
    CHECK_FALSE(elbow.contains("up"));
}

TEST_CASE("the documents made from the table are fresh", "[fields]") {
    compare_with_file(input_reference_markdown(), "input.md");
    compare_with_file(result_schema(), "result.schema.json");
    compare_with_file(output_reference_markdown(), "output.md");
    compare_with_file(input_schema(), "fluewright.schema.json");
    compare_with_file(checks_reference_markdown(), "checks.md");
}
