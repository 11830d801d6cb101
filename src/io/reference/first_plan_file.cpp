#include "commented_file.hpp"
#include "fluewright/io/reference/first_plan.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <fmt/format.h>

namespace fluewright {
namespace {

/// What a file says of a heater of a kind.
struct HeaterLines {
    std::string_view title;
    std::string_view type;
    std::string_view fuel; ///< as it stands behind the key
    std::string_view connector;
    std::string_view chimney;
    std::string_view power_key; ///< what a power on its plate is
};

constexpr std::string_view beech_wood = R"({"name": "beech", "moisture": "18 %"})";

constexpr std::array<HeaterLines, plan_heater_words.size()> lines_of_heaters{
    HeaterLines{
        "Stove", "stove", beech_wood, "single-wall steel", "insulated 25 mm", "heat_output"},
    {"Open fireplace",
     "fireplace",
     beech_wood,
     "clay-lined masonry",
     "insulated 25 mm",
     "heat_output"},
    {"Masonry heater",
     "masonry-heater",
     beech_wood,
     "single-wall steel heavy",
     "insulated 25 mm",
     "heat_output"},
    {"Pellet stove", "stove", R"("pellets")", "pellet vent", "pellet vent", "heat_output"},
    {"Coal stove",
     "stove",
     R"("anthracite")",
     "single-wall steel heavy",
     "insulated 25 mm",
     "heat_output"},
    {"Wood boiler", "boiler", beech_wood, "single-wall steel", "insulated 25 mm", "heat_output"},
    {"Oil boiler", "boiler", R"("heating oil")", "single-wall steel", "type l vent", "heat_input"},
    {"Gas heater with a draft hood",
     "draft-hood",
     R"("natural gas")",
     "type b vent",
     "type b vent",
     "heat_input"}};

constexpr std::array<std::string_view, plan_way_words.size()> titles_of_ways{
    "straight up through the roof", "through the wall and up", "into a masonry chimney"};

/// What was typed as it may stand between quotes: an inch may be one.
std::string quotable(std::string_view text) {
    std::string out;
    for (const char c : text) {
        out += c == '"' ? "\\\"" : std::string(1, c);
    }
    return out;
}

class PlanFile {
public:
    explicit PlanFile(const FirstPlan& plan)
        : plan_(plan), heater_(lines_of_heaters[static_cast<std::size_t>(plan.heater)]),
          us_(plan.units() == UnitSystem::us) {}

    std::string text() {
        begin();
        site();
        appliance();
        out_ += "  \"run\": [ @/run\n";
        run();
        out_ += "  ]\n}\n";
        return with_meanings(out_);
    }

private:
    void begin() {
        out_ +=
            "// A first plan for fluewright: put in what you know better, then\n"
            "//   fluewright check FILE    and    fluewright draw FILE -o run.svg\n"
            "// A value with a unit stands in quotes: \"150 mm\", \"6 in\", \"3 ft 4 1/2 in\".\n"
            "// A key you leave out is assumed, and the report says so.\n//\n";
        std::string_view sketch = sketch_;
        while (!sketch.empty()) {
            const std::size_t end = sketch.find('\n');
            out_ += fmt::format("// {}\n", sketch.substr(0, end));
            sketch.remove_prefix(end + 1);
        }
        out_ += fmt::format("{{\n  \"title\": \"{}, {}\",\n",
                            heater_.title,
                            plan_.is_fireplace() && plan_.way == PlanWay::masonry
                                ? "masonry chimney above it"
                                : titles_of_ways[static_cast<std::size_t>(plan_.way)]);
    }

    void site() {
        out_ += fmt::format("  \"site\": {{\n"
                            "    // Your coldest nights, and the mildest day you still light it.\n"
                            "    \"weather\": [ @/site/weather\n"
                            "      {{\"name\": \"frost\", \"outdoor_temperature\": \"{}\"}},\n"
                            "      {{\"name\": \"mild day\", \"outdoor_temperature\": \"{}\"}}\n"
                            "    ],\n",
                            us_ ? "10 degF" : "-10 degC",
                            us_ ? "55 degF" : "12 degC");
        out_ += "    \"roof\": {\n";
        if (plan_.pitch) {
            out_ += fmt::format("      \"pitch\": \"{}\", @/site/roof/pitch\n",
                                quotable(plan_.pitch->text));
        }
        if (plan_.ridge) {
            out_ +=
                fmt::format("      \"distance_to_ridge\": \"{}\", @/site/roof/distance_to_ridge\n",
                            quotable(plan_.ridge->text));
        }
        out_ += fmt::format("      \"top_above_roof\": \"{}\" @/site/roof/top_above_roof\n"
                            "    }}\n  }},\n",
                            length(plan_.top.value - plan_.roof.value));
    }

    void appliance() {
        out_ += fmt::format("  \"appliance\": {{\n    \"type\": \"{}\", @/appliance/type\n"
                            "    \"fuel\": {}, @/appliance/fuel\n",
                            heater_.type,
                            heater_.fuel);
        fire();
        if (plan_.is_fireplace()) {
            out_ += fmt::format("    \"door\": {{ @/appliance/door\n"
                                "      \"width\": \"{}\",\n"
                                "      \"height\": \"{}\"\n    }},\n",
                                quotable(plan_.front.width.text),
                                quotable(plan_.front.depth.text));
        }
        out_ += "    \"outlet\": { @/appliance/outlet\n";
        out_ +=
            fmt::format("      {},\n"
                        "      \"height\": \"{}\" @/appliance/outlet/height\n    }}\n  }},\n",
                        plan_.is_fireplace() ? section(plan_.flue) : diameter(plan_.collar.text),
                        quotable(plan_.collar_height.text));
    }

    void fire() {
        const FireSize& fire = plan_.fire;
        switch (fire.kind) {
        case Kind::power:
            out_ += fmt::format("    \"{0}\": \"{1}\", @/appliance/{0}\n",
                                heater_.power_key,
                                quotable(fire.said.text));
            break;
        case Kind::mass_rate:
            out_ +=
                fmt::format("    // For high fire; {{\"low\": ..., \"high\": ...}} tells both.\n"
                            "    \"burn_rate\": \"{}\", @/appliance/burn_rate\n",
                            quotable(fire.said.text));
            break;
        case Kind::volume:
            out_ +=
                fmt::format("    \"firebox\": {{\"volume\": \"{}\"}}, @/appliance/firebox/volume\n",
                            quotable(fire.said.text));
            break;
        case Kind::mass:
            out_ += fmt::format("    \"charge\": \"{}\", @/appliance/charge\n"
                                "    \"burn_time\": \"90 min\", @/appliance/burn_time\n",
                                quotable(fire.said.text));
            break;
        default:
            break;
        }
    }

    void run() {
        out_ +=
            "    // A part has the diameter, wall and zone of the part before it, unless it\n"
            "    // says otherwise. `fluewright catalog walls` lists the walls.\n"
            "    // Heights and lengths of parts go from the middle of one elbow to the next.\n";
        switch (plan_.way) {
        case PlanWay::up:
            straight_up();
            break;
        case PlanWay::wall:
            through_wall();
            break;
        case PlanWay::masonry:
            into_masonry();
            break;
        }
    }

    void straight_up() {
        const std::string first =
            plan_.is_fireplace() ? section(plan_.flue) : diameter(plan_.collar.text);
        upright(plan_.ceiling.value - plan_.collar_height.value,
                first + wall(plan_.is_fireplace() ? heater_.chimney : heater_.connector)
                    + R"(, "zone": "room")" + beside_bare_pipe() + passes_nothing());
        chimney_above(plan_.ceiling.value, wall(heater_.chimney));
        cap(plan_.is_fireplace() ? "open" : "rain");
    }

    void through_wall() {
        rise_and_go_across(R"("passes": "wall")" + system_in_wall());
        out_ += fmt::format(
            "    {{\"part\": \"tee\", \"flow\": \"side\", \"cleanout\": true{}, \"zone\": "
            "\"outdoors\"}},\n",
            wall(heater_.chimney));
        upright(plan_.top.value - plan_.entry_height.value, "");
        cap("rain");
    }

    void into_masonry() {
        const std::string masonry = section(plan_.flue) + wall("clay-lined masonry");
        if (plan_.is_fireplace()) {
            upright(plan_.ceiling.value - plan_.collar_height.value,
                    masonry + R"(, "zone": "room")");
            chimney_above(plan_.ceiling.value, "");
        } else {
            rise_and_go_across("");
            out_ += fmt::format(
                "    {{\"part\": \"tee\", \"flow\": \"side\", \"cleanout\": true, {}}},\n",
                masonry);
            if (plan_.ceiling.value > plan_.entry_height.value + shortest_m) {
                upright(plan_.ceiling.value - plan_.entry_height.value, "");
            }
            chimney_above(plan_.ceiling.value, "");
        }
        cap("open");
    }

    /// From a ceiling through the attic, where there is one, and out.
    void chimney_above(double from_m, std::string keys) {
        if (plan_.roof.value > from_m + shortest_m) {
            upright(plan_.roof.value - from_m, keys + R"(, "zone": "attic")");
            keys.clear();
        }
        upright(plan_.top.value - plan_.roof.value, keys + R"(, "zone": "outdoors")");
    }

    void rise_and_go_across(std::string_view passes) {
        upright(plan_.entry_height.value - rise_across_m(plan_) - plan_.collar_height.value,
                diameter(plan_.collar.text) + wall(heater_.connector) + R"(, "zone": "room")"
                    + beside_bare_pipe() + passes_nothing());
        out_ += "    {\"part\": \"elbow\", \"angle\": \"90 deg\"},\n";
        out_ += fmt::format(
            "    {{\"part\": \"straight\", \"across\": \"{}\", \"slope\": \"{}\"{}{}{}}},\n",
            quotable(plan_.distance.text),
            us_ ? "1/4 in/ft" : "20 mm/m",
            beside_bare_pipe(),
            passes.empty() ? "" : ", ",
            passes);
    }

    /// The clearance of bare pipe, where it was told.
    [[nodiscard]] std::string beside_bare_pipe() const {
        return plan_.has_bare_pipe() && plan_.clearance
                   ? fmt::format(", \"clearance\": \"{}\"", quotable(plan_.clearance->text))
                   : std::string{};
    }

    /// The plan leads bare pipe through nothing but the wall: the chimney begins before the
    /// ceiling.
    [[nodiscard]] std::string passes_nothing() const {
        return plan_.has_bare_pipe() ? R"(, "passes": "nothing")" : "";
    }

    [[nodiscard]] std::string system_in_wall() const {
        return plan_.has_bare_pipe() && plan_.pass
                   ? fmt::format(", \"pass_through\": \"{}\"", name(*plan_.pass))
                   : std::string{};
    }

    /// `more` are keys, with or without a comma before them.
    void upright(double height_m, std::string more) {
        if (!more.empty() && !more.starts_with(", ")) {
            more.insert(0, ", ");
        }
        out_ += fmt::format(
            "    {{\"part\": \"straight\", \"up\": \"{}\"{}}},\n", length(height_m), more);
    }

    void cap(std::string_view build) {
        out_ += fmt::format("    {{\"part\": \"cap\", \"build\": \"{}\"}}\n", build);
    }

    [[nodiscard]] static std::string wall(std::string_view name) {
        return fmt::format(", \"wall\": \"{}\"", name);
    }

    [[nodiscard]] static std::string diameter(std::string_view text) {
        return fmt::format("\"diameter\": \"{}\"", quotable(text));
    }

    [[nodiscard]] static std::string section(const SaidSection& of) {
        return of.width.text.empty() ? diameter(of.diameter.text)
                                     : fmt::format("\"width\": \"{}\", \"depth\": \"{}\"",
                                                   of.width.text,
                                                   of.depth.text);
    }

    /// A length that was reckoned, as a tape shows it.
    [[nodiscard]] std::string length(double meters) const {
        constexpr int digits = 4;
        return format_quantity(
            meters, Kind::length, us_ ? UnitSystem::us : UnitSystem::metric, digits);
    }

    static constexpr double shortest_m = 0.01;

    const FirstPlan& plan_;
    const HeaterLines& heater_;
    bool us_;
    std::string sketch_{plan_sketch(plan_)};
    std::string out_;
};

} // namespace

bool FirstPlan::has_bare_pipe() const {
    const HeaterLines& lines = lines_of_heaters[static_cast<std::size_t>(heater)];
    const catalog::Wall* pipe = catalog::find_wall(lines.connector);
    return heater != PlanHeater::oil_boiler && pipe != nullptr
           && pipe->kind.value() == WallKind::single;
}

std::string plan_file(const FirstPlan& plan) {
    return PlanFile{plan}.text();
}

} // namespace fluewright
