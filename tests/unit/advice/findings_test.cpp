// Every finding fires where it should and keeps still just beside it.
#include "../outdoor_top.hpp"
#include "catch.hpp"
#include "fluewright/advice/assessment.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "sound.hpp"
#include "written_parts.hpp"

#include <algorithm>
#include <functional>
#include <set>
#include <string>
#include <vector>

using namespace fluewright;

namespace {
Part level(double across_m, double rise_m) {
    Part part;
    part.part = PartKind::straight;
    part.across_m = across_m;
    part.rise_m = rise_m;
    return part;
}

std::set<std::string> ids(const Installation& in) {
    const Result<Case, Faults> resolved = resolve(with_outdoor_top(in));
    REQUIRE(resolved.has_value());
    std::set<std::string> found;
    const Solution solution = solve(*resolved, Detail::stations);
    const Checked checked = check_all(in, *resolved, solution, {});
    for (const Finding& finding : checked.findings) {
        found.emplace(finding.matter->id);
        CHECK_FALSE(finding.message.empty());
        CHECK(finding.weight >= 0.0);
    }
    return found;
}

struct Probe {
    std::string id;
    std::function<void(Installation&)> fires;
    std::function<void(Installation&)> beside; ///< nearly the same, but within the limit
};

/// A hearth with a square opening on the same run.
void with_open_front(Installation& in, double side_m) {
    in.appliance = {};
    in.appliance.type = ApplianceType::fireplace;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.height_m = 1.0;
    in.appliance.door = {side_m, side_m, 0.2, std::nullopt, std::nullopt};
}

void let_in_insert(Installation& in, const char* wall) {
    in.appliance = {};
    in.appliance.type = ApplianceType::fireplace;
    in.appliance.insert = true;
    in.appliance.fuel.name = "beech";
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.height_m = 1.0;
    in.appliance.burn_rate_kg_s.high = 0.8e-3;
    for (Part& part : in.run) {
        if (part.part == PartKind::straight) {
            part.wall = wall;
        }
    }
}

void with_level_run(Installation& in, double across_m, double rise_m, bool cleanout) {
    Part first = straight_up(0.8, "insulated 25 mm", Zone::room);
    first.diameter_m = 0.15;
    first.expansion_allowed_m = 0.05;
    Part elbow = named(PartKind::elbow);
    elbow.build = Build::smooth;
    Part across = level(across_m, rise_m);
    across.expansion_allowed_m = 0.05;
    Part tee = named(PartKind::tee);
    tee.flow = TeeFlow::side;
    tee.cleanout = cleanout;
    in.run.erase(in.run.begin());
    in.run.insert(in.run.begin(), {first, elbow, across, tee});
}

/// A tight house with a cooker hood.
void in_house(Installation& in, double fan_m3_s) {
    in.site.room.pressure_pa.reset();
    in.site.house.height_m = 5.0;
    in.site.house.volume_m3 = 300.0;
    in.site.house.air_changes_50_pa_1_s = 3.0 / 3600.0;
    in.site.house.fans = {{"hood", fan_m3_s}};
}

/// Something in the flue behind the room, and joints of one fit below it.
void nest_in(Installation& in, double blocked, std::string_view fit) {
    Part nest = named(PartKind::obstruction);
    nest.blocked = blocked;
    in.run[0].joint = from_word<JointFit>(fit);
    in.run.insert(in.run.begin() + 2, nest);
}

void pushed_by_a_fan(Installation& in, std::string_view fit) {
    in.appliance.fuel = {"pellets", {}};
    in.appliance.fan_pressure_pa.high = 20.0;
    in.appliance.draft_needed_pa = {};
    in.run[0].joint = in.run[1].joint = in.run[2].joint = from_word<JointFit>(fit);
}

void bare_top_in_frost(Installation& in, double outdoor_k) {
    in.run[2].wall = "single-wall steel";
    in.run[2].up_m = 6.0;
    in.site.weather[0].outdoor_temperature_k = outdoor_k;
}

void burn_coal(Installation& in, const std::string& wall) {
    in.appliance.fuel = {};
    in.appliance.fuel.name = "bituminous coal";
    in.run[1].wall = wall;
    in.run[2].wall = "insulated 25 mm";
}

/// All heats of high fire stated: about 30 % of the heat is in the gas and 3 % unburned.
void measured(Installation& in, double efficiency) {
    in.appliance.efficiency.high = efficiency;
    in.appliance.gas_temperature_k.high = 680.0;
}

std::vector<Probe> probes() {
    const auto nothing = [](Installation&) {};
    return {
        {"alarm-has-sounded",
         [](Installation& in) { in.observed.emplace_back().co_alarm = true; },
         [](Installation& in) { in.observed.emplace_back().co_alarm = false; }},
        {"chimney-below-usual-height",
         [](Installation& in) { in.run[1].up_m = 1.9; },
         [](Installation& in) { in.run[1].up_m = 2.0; }},
        {"cold-air-falls-in-at-top",
         [](Installation& in) { in.run[1].diameter_m = 0.25; },
         [](Installation& in) { in.run[1].diameter_m = 0.18; }},
        {"crimp-points-up",
         [](Installation& in) {
             in.run[0].chimney_end = in.run[1].heater_end = PipeEnd::plain;
             in.run[1].heater_end = PipeEnd::socket;
         },
         [](Installation& in) {
             in.run[0].chimney_end = PipeEnd::socket;
             in.run[1].heater_end = PipeEnd::plain;
         }},
        {"diameters-do-not-match",
         [](Installation& in) { in.run[0].diameter_m = 0.1524; },
         [](Installation& in) { in.run[0].diameter_m = 0.1505; }},
        {"ends-do-not-mate",
         [](Installation& in) { in.run[0].chimney_end = in.run[1].heater_end = PipeEnd::plain; },
         [](Installation& in) {
             in.run[0].chimney_end = PipeEnd::plain;
             in.run[1].heater_end = PipeEnd::crimped;
         }},
        {"downdraft-in-wind",
         [](Installation& in) {
             in.site.top_position = ChimneyTopPosition::adverse;
             in.site.weather[0].wind_m_s = 11.0;
         },
         [](Installation& in) {
             in.site.top_position = ChimneyTopPosition::adverse;
             in.site.weather[0].wind_m_s = 4.0;
         }},
        {"draft-short",
         [](Installation& in) { in.appliance.draft_needed_pa.high = 39.0; },
         nothing},
        {"draft-too-strong",
         [](Installation& in) { in.appliance.draft_greatest_pa = 15.0; },
         nothing},
        {"fan-reverses-flue",
         [](Installation& in) { in_house(in, 0.12); },
         [](Installation& in) { in_house(in, 0.04); }},
        {"fan-reverses-idle-flue",
         [](Installation& in) { in_house(in, 0.04); },
         [](Installation& in) { in_house(in, 0.02); }},
        {"fan-vent-not-sealed",
         [](Installation& in) { pushed_by_a_fan(in, "ordinary"); },
         [](Installation& in) { pushed_by_a_fan(in, "tight"); }},
        {"flue-far-larger-than-outlet",
         [](Installation& in) { in.run[0].diameter_m = 0.264; },
         [](Installation& in) { in.run[0].diameter_m = 0.258; }},
        {"flue-smaller-than-outlet",
         [](Installation& in) { in.run[0].diameter_m = 0.14; },
         [](Installation& in) { in.run[0].diameter_m = 0.1495; }},
        {"damper-on-gas",
         [](Installation& in) {
             in.appliance.type = ApplianceType::boiler;
             in.appliance.fuel.name = "natural gas";
             in.appliance.fuel.moisture.reset();
             in.run.insert(in.run.begin() + 1, named(PartKind::damper));
         },
         [](Installation& in) { in.run.insert(in.run.begin() + 1, named(PartKind::damper)); }},
        {"fuel-too-wet",
         [](Installation& in) { in.appliance.fuel.moisture = 0.21; },
         [](Installation& in) { in.appliance.fuel.moisture = 0.20; }},
        {"gas-over-wall-rating",
         [](Installation& in) { in.appliance.gas_temperature_k.high = 823.15; },
         [](Installation& in) { in.appliance.gas_temperature_k.high = 803.15; }},
        {"gas-too-hot",
         [](Installation& in) { in.appliance.gas_temperature_k.high = 925.0; },
         [](Installation& in) { in.appliance.gas_temperature_k.high = 920.0; }},
        {"heat-does-not-close",
         [](Installation& in) { measured(in, 0.5); },
         [](Installation& in) { measured(in, 0.62); }},
        {"heater-overfired",
         [](Installation& in) { in.appliance.gas_temperature_k.high = 760.0; },
         [](Installation& in) { in.appliance.gas_temperature_k.high = 750.0; }},
        {"hood-spills",
         [](Installation& in) {
             in.run.insert(in.run.begin() + 1, named(PartKind::draft_hood));
             in.run.back().loss = 900.0;
         },
         [](Installation& in) { in.run.insert(in.run.begin() + 1, named(PartKind::draft_hood)); }},
        {"house-pulls-on-the-flue",
         [](Installation& in) { in.site.room.pressure_pa = -4.1; },
         [](Installation& in) { in.site.room.pressure_pa = -3.9; }},
        {"house-starves-the-fire",
         [](Installation& in) { in.site.room.pressure_pa = -40.0; },
         [](Installation& in) { in.site.room.pressure_pa = -4.1; }},
        {"ice-at-top",
         [](Installation& in) { bare_top_in_frost(in, 243.15); },
         [](Installation& in) { bare_top_in_frost(in, 273.15); }},
        {"insert-without-liner",
         [](Installation& in) { let_in_insert(in, "unlined masonry"); },
         [](Installation& in) { let_in_insert(in, "clay-lined masonry"); }},
        {"joints-without-draft", [](Installation& in) { nest_in(in, 0.69, "sealed"); }, nothing},
        {"joint-leak-dilutes",
         [](Installation& in) { in.run[1].leakage_area_m2 = 4e-4; },
         [](Installation& in) { in.run[1].leakage_area_m2 = 1e-4; }},
        {"level-run-too-flat",
         [](Installation& in) { with_level_run(in, 1.0, 0.015, true); },
         [](Installation& in) { with_level_run(in, 1.0, 0.021, true); }},
        {"run-falls",
         [](Installation& in) { with_level_run(in, 1.0, -0.01, true); },
         [](Installation& in) { with_level_run(in, 1.0, 0.0, true); }},
        {"level-run-too-long",
         [](Installation& in) { with_level_run(in, 4.2, 0.1, true); },
         [](Installation& in) { with_level_run(in, 3.9, 0.1, true); }},
        {"no-cleanout-at-turn-up",
         [](Installation& in) { with_level_run(in, 0.8, 0.02, false); },
         [](Installation& in) { with_level_run(in, 0.8, 0.02, true); }},
        {"reduced-on-the-way",
         [](Installation& in) {
             in.run[0].diameter_m = 0.2;
             in.run[1].diameter_m = 0.15;
         },
         nothing},
        {"reversed-when-idle", [](Installation& in) { in.site.room.pressure_pa = -4.0; }, nothing},
        {"room-far-below-outdoors",
         [](Installation& in) { in.site.room.pressure_pa = -8.1; },
         [](Installation& in) { in.site.room.pressure_pa = -7.9; }},
        {"seen-too-hot",
         [](Installation& in) { in.observed.emplace_back().surface_temperature_k = 605.4; },
         [](Installation& in) { in.observed.emplace_back().surface_temperature_k = 605.3; }},
        {"single-wall-outdoors",
         [](Installation& in) { in.run[2].wall = "single-wall steel"; },
         nothing},
        {"stovepipe-for-chimney",
         [](Installation& in) { in.run[2].wall = "double-wall connector"; },
         [](Installation& in) { in.run[1].wall = "double-wall connector"; }},
        {"smoke-at-door",
         [](Installation& in) {
             in.appliance.door = {0.9, 0.7, std::nullopt, std::nullopt, std::nullopt};
         },
         nothing},
        {"smoke-at-front",
         [](Installation& in) { with_open_front(in, 0.5); },
         [](Installation& in) { with_open_front(in, 0.3); }},
        {"smoke-at-joints",
         [](Installation& in) { nest_in(in, 0.77, "sealed"); },
         [](Installation& in) { nest_in(in, 0.74, "sealed"); }},
        {"smoke-may-seep-at-joints",
         [](Installation& in) { nest_in(in, 0.74, "sealed"); },
         [](Installation& in) { nest_in(in, 0.69, "sealed"); }},
        {"straight-grows-past-its-joint",
         [](Installation& in) { in.run[1].expansion_allowed_m = 0.004; },
         nothing},
        {"surface-over-rating",
         [](Installation& in) {
             in.run[0].wall = "single-wall steel";
             in.run[0].rated_surface_temperature_k = 400.0;
         },
         [](Installation& in) {
             in.run[0].wall = "single-wall steel";
             in.run[0].rated_surface_temperature_k = 600.0;
         }},
        {"too-many-turns",
         [](Installation& in) {
             for (int i = 0; i < 3; ++i) {
                 in.run.insert(in.run.begin(), named(PartKind::elbow));
             }
             in.run[3].wall = "double-wall connector";
             in.run[0].diameter_m = 0.15;
         },
         [](Installation& in) {
             for (int i = 0; i < 2; ++i) {
                 in.run.insert(in.run.begin(), named(PartKind::elbow));
             }
             in.run[0].diameter_m = 0.15;
         }},
        {"unusual-input",
         [](Installation& in) { in.appliance.fuel.moisture = 0.45; },
         [](Installation& in) { in.appliance.fuel.moisture = 0.39; }},
        {"wall-below-acid-dew-point",
         [](Installation& in) { burn_coal(in, "single-wall steel"); },
         [](Installation& in) { burn_coal(in, "insulated 25 mm"); }},
        {"wall-below-creosote-threshold",
         [](Installation& in) { in.run[1].wall = "single-wall steel"; },
         nothing},
        {"wall-below-dew-point",
         [](Installation& in) {
             in.run[1].wall = "single-wall steel";
             in.run[1].zone = Zone::outdoors;
             in.run[1].up_m = 9.0;
             in.site.weather[0].outdoor_temperature_k = 253.15;
         },
         nothing},
    };
}

} // namespace

TEST_CASE("a sound installation has no finding") {
    const std::set<std::string> found = ids(sound());
    for (const std::string& id : found) {
        CAPTURE(id);
        CHECK(id.empty());
    }
}

TEST_CASE("every finding of the table fires and keeps still") {
    std::set<std::string> probed;
    for (const Probe& probe : probes()) {
        CAPTURE(probe.id);
        probed.insert(probe.id);
        Installation fault = sound();
        probe.fires(fault);
        CHECK(ids(fault).count(probe.id) == 1);
        Installation near_miss = sound();
        probe.beside(near_miss);
        CHECK(ids(near_miss).count(probe.id) == 0);
    }
    for (const Check& row : checks()) {
        if (row.id == row.matter->id) {
            CAPTURE(row.id);
            CHECK(probed.count(std::string{row.id}) == 1);
        }
    }
}

TEST_CASE("a stretch that ends at the chimney top is free to grow") {
    Installation in = sound();
    in.appliance.gas_temperature_k.high = 900.0;
    for (Part& part : in.run) {
        part.expansion_allowed_m.reset();
    }
    in.run[1].up_m = 9.0;
    const std::string id = "straight-grows-past-its-joint";
    CHECK(ids(in).count(id) == 0);
    Part bend;
    bend.part = PartKind::elbow;
    bend.angle_rad = 0.25;
    in.run.insert(in.run.begin() + 2, bend);
    CHECK(ids(in).count(id) == 1);
}

TEST_CASE("findings stand in order of severity and weight") {
    Installation in = sound();
    in.run[1].wall = "single-wall steel";
    in.run[1].zone = Zone::outdoors;
    in.run[0].diameter_m = 0.1;
    in.site.weather[0].outdoor_temperature_k = 288.15;
    in.appliance.fuel.moisture = 0.45;
    const Result<Case, Faults> resolved = resolve(with_outdoor_top(in));
    REQUIRE(resolved.has_value());
    const Findings found =
        check_all(in, *resolved, solve(*resolved, Detail::stations), {}).findings;
    REQUIRE(found.size() > 3);
    CHECK(std::is_sorted(found.begin(), found.end(), [](const Finding& a, const Finding& b) {
        return a.severity != b.severity ? a.severity < b.severity : a.weight > b.weight;
    }));
}
