#include "fluewright/model/resolve/structure.hpp"

#include "fluewright/core/nearest_word.hpp"
#include "fluewright/model/run/case.hpp"
#include "values.hpp"

#include <algorithm>
#include <charconv>
#include <fmt/core.h>
#include <iterator>
#include <optional>

namespace fluewright {

namespace {

/// An object, or an entry of a list; its pointer is written only where there is something to say.
struct Place {
    std::string_view object;
    std::optional<std::size_t> entry{};

    [[nodiscard]] std::string pointer() const {
        return entry ? fmt::format("{}/{}", object, *entry) : std::string{object};
    }
};

void add(Faults& faults, const Place& place, std::string message, std::string help) {
    faults.push_back({place.pointer(), std::move(message), {}, {}, std::move(help)});
}

unsigned kind_of(const Part& part) {
    return part.part ? part_kind::bit(*part.part) : 0U;
}

/// `pointer()` gives the place in the file, written only where there is something to say.
template <class Pointer>
void check_name(const Word& name,
                Words words,
                const Installation& installation,
                std::string_view what,
                Faults& faults,
                const Pointer& pointer) {
    if (!name || is_known_name(*name, words, installation)) {
        return;
    }
    const auto known = known_names(words, installation);
    const auto nearest = nearest_word(*name, known);
    faults.push_back({pointer(),
                      fmt::format("`{}` is not a known {}", *name, what),
                      {},
                      joined(known),
                      nearest ? fmt::format("did you mean `{}`?", *nearest) : ""});
}

void check_names(const Installation& installation, Faults& faults) {
    const auto check =
        [&](const Word& name, Words words, std::string_view what, const auto& pointer) {
            check_name(name, words, installation, what, faults, pointer);
        };
    check(installation.appliance.fuel.name, Words::fuels, "fuel", [] {
        return std::string{"/appliance/fuel/name"};
    });
    for (std::size_t i = 0; i < installation.run.size(); ++i) {
        const auto& part = installation.run[i];
        const auto at = [i](std::string_view key) {
            return [i, key] { return fmt::format("/run/{}/{}", i, key); };
        };
        check(part.liner, Words::clay_liners, "clay liner", at("liner"));
        check(part.wall, Words::walls, "wall", at("wall"));
        check(part.fitting, Words::fittings, "fitting", at("fitting"));
    }
    for (std::size_t i = 0; i < installation.stock.size(); ++i) {
        check(installation.stock[i].wall, Words::walls, "wall", [i] {
            return fmt::format("/stock/{}/wall", i);
        });
    }
}

/// An oval is given by two of its three sizes.
template <class T>
void check_oval(const T& object, bool liner, const Place& place, Faults& faults) {
    const int sizes = static_cast<int>(object.diameter_m.has_value())
                      + static_cast<int>(object.width_m.has_value())
                      + static_cast<int>(object.depth_m.has_value());
    if (liner || sizes != 2) {
        add(faults,
            place,
            liner ? "a liner has a shape of its own" : "an oval takes two sizes",
            "give width and depth, or one of them with the diameter of the round pipe it was "
            "pressed from");
    } else if (!bore_of(size_of(object))) {
        add(faults,
            place,
            "round pipe of this diameter cannot be pressed to this width",
            "half its perimeter, 1.57 diameters, is the most");
    }
}

/// One section is given in one way: a diameter, width and depth, or a liner.
template <class T>
void check_section(const T& object, bool liner, const Place& place, Faults& faults) {
    if (object.shape == SectionShape::oval) {
        check_oval(object, liner, place, faults);
        return;
    }
    const bool sides = object.width_m || object.depth_m;
    if (static_cast<int>(object.diameter_m.has_value()) + static_cast<int>(sides)
            + static_cast<int>(liner)
        > 1) {
        add(faults,
            place,
            "the section is given in two ways",
            "keep a diameter, or width and depth, or a liner");
    } else if (object.width_m.has_value() != object.depth_m.has_value()) {
        const auto* missing = object.width_m ? "depth" : "width";
        add(faults,
            place,
            fmt::format("a rectangular section lacks its `{}`", missing),
            fmt::format("add \"{}\": \"200 mm\", or give a diameter", missing));
    } else if (object.shape && !sides) {
        add(faults, place, "a rectangular section lacks its `width` and `depth`", "add both");
    }
}

void check_straight(const Part& part, const Place& place, Faults& faults) {
    const int directions = static_cast<int>(part.up_m.has_value())
                           + static_cast<int>(part.down_m.has_value())
                           + static_cast<int>(part.across_m.has_value());
    if (directions == 0) {
        add(faults,
            place,
            "a straight needs one of `up`, `down` and `across`",
            "add its length, such as \"up\": \"1.2 m\"");
    } else if (directions > 1) {
        add(faults,
            place,
            "a straight goes only one way: `up`, `down` or `across`",
            part.across_m ? "for a sloping pipe write \"across\" with \"rise\""
                          : "write two parts, with elbows between them");
    } else if ((part.rise_m || part.slope) && !part.across_m) {
        add(faults,
            place,
            "`rise` and `slope` go with `across` only",
            "a vertical straight has its height in `up`");
    } else if (part.rise_m && part.slope) {
        add(faults, place, "`rise` and `slope` say the same thing twice", "keep one of them");
    }
}

void check_part(const Part& part, const Place& place, Faults& faults) {
    const unsigned kind = kind_of(part);
    check_section(part, part.liner.has_value(), place, faults);
    if (kind == part_kind::straight) {
        check_straight(part, place, faults);
    }
    if (part.joint && part.joint_gap_m) {
        add(faults, place, "`joint` and `joint_gap` say the same thing twice", "keep one of them");
    }
    const bool sized = part.diameter_m || part.width_m || part.depth_m || part.liner;
    if ((kind & (part_kind::reducer | part_kind::increaser)) != 0U && !sized) {
        add(faults,
            place,
            fmt::format("the {} lacks the size of its far end", name(*part.part)),
            "add \"diameter\": \"150 mm\"");
    }
    if (kind == part_kind::fitting && !part.fitting && !part.loss) {
        add(faults,
            place,
            "the part does not say which fitting it is",
            "name one with `fitting`, or give its `loss`");
    }
    if (kind == part_kind::obstruction && !part.blocked && !part.loss) {
        add(faults,
            place,
            "the obstruction does not say how much it blocks",
            "add \"blocked\": \"30 %\"");
    }
}

void check_run(const Installation& installation, Faults& faults) {
    const auto& run = installation.run;
    if (run.empty()) {
        add(faults,
            {"/run"},
            "the run has no parts",
            "list the parts from the outlet to the open air");
    }
    // A part whose kind could not be read may be a pipe; its own fault is reported already.
    const bool has_pipe = std::any_of(run.begin(), run.end(), [](const Part& part) {
        return kind_of(part) == part_kind::straight || kind_of(part) == 0U;
    });
    for (std::size_t i = 0; i < run.size(); ++i) {
        const Place place{"/run", i};
        const unsigned kind = kind_of(run[i]);
        check_part(run[i], place, faults);
        if (kind == part_kind::cap && i + 1 < run.size()) {
            const bool open = run[i].build == Build::open;
            add(faults,
                place,
                fmt::format("{} stands in the middle of the run", open ? "an open end" : "a cap"),
                "it is the last part; move it to the end, or take it away");
        }
        if (kind == part_kind::elbow && !has_pipe) {
            add(faults,
                place,
                "an elbow with no pipe",
                "add the straight before or after it, such as "
                "{\"part\": \"straight\", \"up\": \"1.2 m\"}");
        }
    }
}

void check_house(const House& house, Faults& faults) {
    if (house.leakage_area_m2 && house.air_changes_50_pa_1_s) {
        add(faults,
            {"/site/house"},
            "the tightness of the house is given in two ways",
            "keep the air changes at 50 Pa, or the leakage area");
    }
    if (house.height_m && house.neutral_level_m && *house.neutral_level_m >= *house.height_m) {
        add(faults,
            {"/site/house/neutral_level"},
            "the neutral level is above the top of the house",
            "it counts from the lowest floor of the heated shell");
    }
}

void check_room(const Room& room, Faults& faults) {
    if (room.pressure_pa && (room.pressure_burning_pa || room.pressure_idle_pa)) {
        add(faults,
            {"/site/room"},
            "the room pressure is given twice",
            "keep `pressure` for all times, or `pressure_burning` and `pressure_idle`");
    }
}

void check_high_low(const HighLow& values,
                    std::string_view key,
                    std::string_view what,
                    Faults& faults) {
    if (values.low && values.high && *values.low > *values.high) {
        const auto pointer = fmt::format("/appliance/{}", key);
        add(faults,
            {pointer},
            fmt::format("the {} at low fire is above that at high fire", what),
            "exchange `low` and `high`");
    }
}

void check_own(const Installation& installation, Faults& faults) {
    for (const auto& fuel : installation.fuels) {
        const double sum = fuel.carbon.value_or(0.0) + fuel.hydrogen.value_or(0.0)
                           + fuel.oxygen.value_or(0.0) + fuel.nitrogen.value_or(0.0)
                           + fuel.sulphur.value_or(0.0) + fuel.ash.value_or(0.0);
        constexpr double rounding = 0.005; // analyses are printed to a tenth of a per cent
        if (sum > 1.0 + rounding) {
            const auto pointer = "/fuels/" + pointer_step(fuel.id);
            add(faults,
                {pointer},
                fmt::format("the parts of the fuel add up to {:.1f} %", 100.0 * sum),
                "carbon, hydrogen, oxygen, nitrogen, sulfur and ash are shares of the dry fuel");
        }
    }
    for (const auto& wall : installation.walls) {
        const auto pointer = "/walls/" + pointer_step(wall.id);
        if (!wall.layers.empty() && wall.thermal_resistance_m2k_w) {
            add(faults,
                {pointer},
                "the wall has both layers and a thermal resistance",
                "keep one of them");
        }
        if (wall.layers.empty() && !wall.thermal_resistance_m2k_w) {
            add(faults,
                {pointer},
                "the wall has neither layers nor a thermal resistance",
                "add \"layers\": [{\"material\": \"carbon steel\", \"thickness\": \"1 mm\"}]");
        }
        static_assert(most_own_layers + 1 == most_wall_layers);
        for (std::size_t i = 0; i < wall.layers.size(); ++i) {
            const auto& layer = wall.layers[i];
            const auto place = fmt::format("{}/layers/{}", pointer, i);
            if (!layer.conductivity_w_mk) {
                check_name(layer.material, Words::materials, installation, "material", faults, [&] {
                    return place + "/material";
                });
            }
            if (!layer.conductivity_w_mk && !layer.material) {
                add(faults,
                    {place},
                    "the layer has neither a material nor a conductivity",
                    "add \"material\": \"mineral wool\"");
            }
        }
    }
}

void check_observed(const Installation& installation, Faults& faults) {
    std::vector<std::string_view> weathers;
    for (const auto& weather : installation.site.weather) {
        if (weather.name) {
            weathers.push_back(*weather.name);
        }
    }
    for (std::size_t i = 0; i < installation.observed.size(); ++i) {
        const auto& seen = installation.observed[i];
        if (seen.weather
            && std::find(weathers.begin(), weathers.end(), *seen.weather) == weathers.end()) {
            const auto nearest = nearest_word(*seen.weather, weathers);
            faults.push_back({fmt::format("/observed/{}/weather", i),
                              fmt::format("`{}` is not a weather of the site", *seen.weather),
                              {},
                              weathers.empty() ? "none is named" : joined(weathers),
                              nearest ? fmt::format("did you mean `{}`?", *nearest) : ""});
        }
        if (seen.look.has_value() != seen.found.has_value()) {
            faults.push_back({fmt::format("/observed/{}", i),
                              "`look` and `found` go together",
                              {},
                              {},
                              R"(write {"look": "cap", "found": "bad"})"});
        }
        if (seen.smoke_stick && !seen.at) {
            faults.push_back({fmt::format("/observed/{}", i),
                              "the smoke stick lacks its place",
                              {},
                              {},
                              R"(add "at": 2 for the joint behind part 2, or "at": "outlet")"});
        }
        if (!seen.at || *seen.at == "outlet" || *seen.at == "chimney top") {
            continue;
        }
        std::size_t number = 0;
        const auto* end = seen.at->data() + seen.at->size();
        const auto result = std::from_chars(seen.at->data(), end, number);
        if (result.ec != std::errc{} || result.ptr != end || number < 1
            || number > installation.run.size()) {
            faults.push_back({fmt::format("/observed/{}/at", i),
                              fmt::format("`{}` is not a place on the run", *seen.at),
                              {},
                              fmt::format("outlet, chimney top, or a part from 1 to {}",
                                          installation.run.size()),
                              ""});
        }
    }
}

} // namespace

Faults check_installation(const Installation& installation) {
    Faults faults;
    add_value_faults(installation, faults);
    Faults of_structure = check_structure(installation);
    faults.insert(faults.end(),
                  std::make_move_iterator(of_structure.begin()),
                  std::make_move_iterator(of_structure.end()));
    return faults;
}

Faults check_structure(const Installation& installation) {
    Faults faults;
    check_house(installation.site.house, faults);
    check_room(installation.site.room, faults);
    const auto& appliance = installation.appliance;
    check_section(appliance.outlet, false, {"/appliance/outlet"}, faults);
    check_high_low(appliance.burn_rate_kg_s, "burn_rate", "burn rate", faults);
    check_high_low(appliance.heat_input_w, "heat_input", "heat input", faults);
    check_high_low(appliance.heat_output_w, "heat_output", "heat output", faults);
    check_high_low(appliance.gas_flow_kg_s, "gas_flow", "gas flow", faults);
    check_names(installation, faults);
    check_run(installation, faults);
    check_own(installation, faults);
    check_observed(installation, faults);
    Faults of_stock = stock_faults(installation.stock);
    faults.insert(faults.end(), of_stock.begin(), of_stock.end());
    return faults;
}

} // namespace fluewright
