#include "../outdoor_top.hpp"
#include "catch.hpp"
#include "fluewright/advice/upkeep/heat_demand.hpp"
#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/advice/upkeep/maintenance.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/physics/wall_beside_pipe.hpp"

#include <algorithm>
#include <set>

using namespace fluewright;

namespace {

Installation stove() {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.fuel.moisture = 0.16;
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.height_m = 0.8;
    in.appliance.burn_rate_kg_s = {1.0 / 3600.0, 3.0 / 3600.0};
    in.appliance.firebox.volume_m3 = 0.0566;
    in.site.room.temperature_k = 293.15;
    Weather cold;
    cold.name = "cold";
    cold.outdoor_temperature_k = 268.15;
    in.site.weather = {cold};
    Part pipe;
    pipe.part = PartKind::straight;
    pipe.up_m = 1.5;
    pipe.diameter_m = 0.15;
    pipe.wall = "single-wall steel";
    pipe.zone = Zone::room;
    Part chimney = pipe;
    chimney.up_m = 3.5;
    chimney.wall = "insulated 50 mm";
    chimney.zone = Zone::outdoors;
    in.run = {pipe, chimney};
    return in;
}

struct Solved {
    Case made;
    Solution solution;
};

Solved solved(const Installation& in) {
    Result<Case, Faults> resolved = resolve(with_outdoor_top(in));
    REQUIRE(resolved.has_value());
    Solution solution = solve(*resolved, Detail::stations);
    return {std::move(resolved).value(), std::move(solution)};
}

BuildingPart part_of(std::string element, double area_m2) {
    BuildingPart part;
    part.element = std::move(element);
    part.area_m2 = area_m2;
    return part;
}

/// A workshop of 6 x 8 x 3 m, bare sheet, 2 m2 of window and 9 m2 of roller door.
Installation workshop() {
    Installation in = stove();
    in.building.volume_m3 = 144.0;
    in.building.air_changes_per_s = 1.0 / 3600.0;
    in.building.indoor_temperature_k = 293.15;
    in.building.outdoor_temperature_k = 273.15;
    in.building.parts = {part_of("sheet", 84.0 - 11.0 + 48.0),
                         part_of("single glazing", 2.0),
                         part_of("roller door", 9.0),
                         part_of("concrete floor", 48.0)};
    return in;
}

} // namespace

TEST_CASE("the wall beside a pipe keeps its limits") {
    using namespace wall_beside_pipe;
    const wall_beside_pipe::Room room{293.15, 101325.0};
    const HotPipe hot{0.15, 523.15, 0.9, 0.3};
    CHECK(view_factor(0.15, 0.0) == Approx(1.0));
    CHECK(view_factor(0.15, 0.075) == Approx(0.5));
    CHECK(view_factor(0.2, 0.9) == Approx(0.1));
    // No fire: the room's temperature. Far off: nearly so. Nearer is hotter.
    CHECK(bare_wall_k({0.15, 293.15, 0.9, 0.3}, room) == Approx(293.15));
    CHECK(bare_wall_k({0.15, 523.15, 0.9, 100.0}, room) == Approx(293.15).margin(1.0));
    double before = 1e9;
    for (const double distance_m : {0.05, 0.15, 0.3, 0.457, 0.9}) {
        const double wall_k = bare_wall_k({0.15, 523.15, 0.9, distance_m}, room);
        CHECK(wall_k < before);
        CHECK(wall_k > room.temperature_k);
        before = wall_k;
    }
    const wall_beside_pipe::Shielded behind = shielded_wall_k(hot, {0.025, 0.8}, room);
    CHECK(behind.wall_k < behind.shield_k);
    CHECK(behind.wall_k < bare_wall_k(hot, room));
    CHECK(behind.wall_k > room.temperature_k);
    // A shield that absorbs next to nothing keeps the wall at the room's temperature.
    CHECK(shielded_wall_k(hot, {0.025, 1e-4}, room).wall_k == Approx(293.15).margin(0.5));
}

TEST_CASE("the wall's balance closes when summed by hand") {
    using namespace wall_beside_pipe;
    const wall_beside_pipe::Room room{293.15, 101325.0};
    const double wall_k = bare_wall_k({0.15, 523.15, 0.9, 0.457}, room);
    // F = 0.075 / 0.532; net of radiation must equal 1.2 to 1.4 (dT)^(4/3) W/m2 of convection.
    const double f = 0.075 / 0.532;
    const double s = constants::stefan_boltzmann_w_m2k4;
    const double radiated = f * 0.9 * 0.9 * s * (std::pow(523.15, 4) - std::pow(wall_k, 4))
                            - (1.0 - f) * 0.9 * s * (std::pow(wall_k, 4) - std::pow(293.15, 4));
    const double per_rise = radiated / std::pow(wall_k - 293.15, 4.0 / 3.0);
    CHECK(per_rise > 1.1);
    CHECK(per_rise < 1.6);
    // At the code distance a pipe of 250 degC leaves the wall below 85 degC.
    CHECK(wall_k < 358.15);
}

TEST_CASE("hot surfaces are judged against paint, and a wall only where a distance is given") {
    Installation in = stove();
    in.appliance.gas_temperature_k.high = 700.0;
    Solved s = solved(in);
    HotSurfaces all = hot_surfaces(in, s.made, s.solution);
    REQUIRE(all.parts.size() == 2);
    CHECK(all.parts[0].surface_k > 373.15);
    CHECK(all.parts[0].surface_k < 700.0);
    CHECK(all.parts[0].rating_assumed);
    CHECK_FALSE(all.parts[0].over_rating());
    CHECK_FALSE(all.parts[0].wall_k.has_value());
    CHECK_FALSE(all.parts[1].rating_k.has_value());
    CHECK(all.parts[1].surface_k < 343.15);
    in.run[0].rated_surface_temperature_k = 380.0;
    in.run[0].clearance_m = 0.15;
    in.run[0].shield = Shield::sheet_steel;
    in.run[0].shield_gap_m = 0.025;
    s = solved(in);
    all = hot_surfaces(in, s.made, s.solution);
    CHECK(all.parts[0].over_rating());
    CHECK(all.parts[0].shielded);
    CHECK(*all.parts[0].wall_k < *all.parts[0].bare_wall_k);
}

TEST_CASE("the workshop's demand comes out as worked by hand") {
    // 121 x 5.7 + 2 x 5.6 + 9 x 4.0 + 48 x 0.8 + 0.33 x 144 = 689.7 + 11.2 + 36 + 38.4 + 47.5
    const Installation in = workshop();
    const Solved s = solved(in);
    const auto d = heat_demand(in, s.made, s.solution);
    REQUIRE(d.has_value());
    CHECK(d->missing.empty());
    CHECK(d->total_w == Approx(20.0 * 822.82).epsilon(1e-6));
    CHECK(d->ventilation_w == Approx(20.0 * 47.52));
    CHECK(d->parts.front().name == "sheet");
    CHECK_FALSE(d->heater_carries);
    CHECK_FALSE(d->throttled);
    // Fuel in proportion to the output at high fire.
    CHECK(d->burn_rate_kg_s
          == Approx(s.made.appliance.high.burn_rate_kg_s * d->total_w
                    / s.made.appliance.high.heat_output_w));
    REQUIRE(d->load_hours.has_value());
    // The demand is past high fire, so a load lasts as long as at high fire.
    CHECK(d->load_rate_kg_s == Approx(d->high_burn_rate_kg_s));
    CHECK(*d->load_hours == Approx(d->load_kg / d->high_burn_rate_kg_s / 3600.0));
    CHECK(d->load_kg == Approx(0.0566 * 112.0));
    CHECK(d->capacity_kg_s.value_or(0.0) > 0.0);
}

TEST_CASE("demand says what is missing and what is throttled") {
    Installation in = stove();
    Solved s = solved(in);
    CHECK_FALSE(heat_demand(in, s.made, s.solution).has_value());
    in.building.volume_m3 = 60.0;
    s = solved(in);
    auto d = heat_demand(in, s.made, s.solution);
    REQUIRE(d.has_value());
    CHECK(std::set<std::string>(d->missing.begin(), d->missing.end())
          == std::set<std::string>{"/building/outdoor_temperature", "/building/parts"});
    in.building.outdoor_temperature_k = 283.15;
    BuildingPart wall;
    wall.area_m2 = 60.0;
    wall.thermal_resistance_m2k_w = 4.0;
    in.building.parts = {wall};
    s = solved(in);
    d = heat_demand(in, s.made, s.solution);
    CHECK(d->missing.empty());
    CHECK(d->parts.front().u_value_w_m2k == Approx(0.25));
    CHECK(d->throttled);
    CHECK(d->heater_carries);
    CHECK(d->assumed.size() == 1);
}

TEST_CASE("hours for a load agree with the derived table") {
    // 2 ft3: 5.21 kg of dry wood at 22 % on dry weight, 6.35 kg as fired; 2.7 h at 1.9 kg/h dry.
    const double load_kg = 2.0 * 0.0283168 * 112.0;
    CHECK(load_kg == Approx(6.35).epsilon(0.01));
    CHECK(load_kg / 1.22 / 1.9 == Approx(2.7).epsilon(0.02));
}

TEST_CASE("deposit risk follows the wall and the wood") {
    Installation in = stove();
    in.appliance.gas_temperature_k = {480.0, 650.0};
    Solved s = solved(in);
    const Maintenance warm = maintenance(in, s.made, s.solution);
    CHECK(warm.applies);
    in.appliance.gas_temperature_k = {350.0, 380.0};
    s = solved(in);
    const Maintenance cold = maintenance(in, s.made, s.solution);
    CHECK(cold.risk == DepositRisk::high);
    CHECK(cold.risk >= warm.risk);
    CHECK(cold.sweep.to_months < 12.0);
    CHECK(cold.sweep.from_months <= cold.sweep.to_months);
    CHECK_FALSE(cold.look_first.empty());
    CHECK(cold.clean_at_m == Approx(0.003175));
    in.appliance.fuel.name = "natural gas";
    in.appliance.fuel.moisture.reset();
    in.appliance.type = ApplianceType::draft_hood;
    in.appliance.gas_temperature_k = {};
    s = solved(in);
    CHECK_FALSE(maintenance(in, s.made, s.solution).applies);
}

TEST_CASE("wet wood raises a raised risk") {
    Installation in = stove();
    in.appliance.gas_temperature_k = {470.0, 850.0};
    Solved s = solved(in);
    const DepositRisk dry = maintenance(in, s.made, s.solution).parts.front().risk;
    in.appliance.fuel.moisture = 0.3;
    s = solved(in);
    const DepositRisk wet = maintenance(in, s.made, s.solution).parts.front().risk;
    CHECK(dry == DepositRisk::raised);
    CHECK(wet == DepositRisk::high);
}

TEST_CASE("words of the fields are rows of the tables") {
    const auto same = [](const FieldInfo& field, std::set<std::string_view> rows) {
        INFO(field.key);
        CHECK(std::set<std::string_view>(field.choices.begin(), field.choices.end()) == rows);
    };
    std::set<std::string_view> elements;
    for (const auto& row : catalog::building_elements()) {
        if (row.kind != "air changes") {
            elements.insert(row.id);
        }
    }
    same(find_field<BuildingPart>("element")->info, elements);
    std::set<std::string_view> shields;
    for (const auto& row : catalog::shield_clearances()) {
        shields.insert(row.id);
    }
    same(find_field<Part>("shield")->info, shields);
    std::set<std::string_view> styles;
    for (const auto& row : catalog::unlisted_clearances()) {
        styles.insert(row.id);
    }
    same(find_field<Appliance>("style")->info, styles);
    std::set<std::string_view> bodies;
    for (const auto& row : catalog::rule_bodies()) {
        bodies.insert(row.id);
    }
    same(find_field<Site>("rules")->info, bodies);
}
