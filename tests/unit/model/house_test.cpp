// The house's balance of air, wind on house and chimney top, and the flue before lighting.
#include "../outdoor_top.hpp"
#include "catch.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "fluewright/physics/openings.hpp"

#include <algorithm>
#include <cmath>
#include <random>

using namespace fluewright;

namespace {

constexpr double hour_s = 3600.0;

/// A tight house of one storey above the outlet, in which nothing but leaks and what is added acts.
HouseCase shell() {
    HouseCase house;
    house.known = true;
    house.height_m = 5.0;
    house.outlet_level_m = 0.8;
    house.leak_exponent = 0.65;
    house.leak_m3_s = openings::coefficient_m3_s(
        {.volume_m3 = 300.0, .air_changes_1_s = 3.0 / hour_s}, house.leak_exponent);
    house.wind_share = 0.6;
    house.wind_coefficient_windward = 0.6;
    house.wind_coefficient_lee = -0.3;
    house.wind_coefficient_sides = -0.65;
    return house;
}

constexpr HouseWeather even{
    .outdoor_density_kg_m3 = 1.2, .room_density_kg_m3 = 1.2, .wind_m_s = 0.0};
constexpr HouseWeather frost{
    .outdoor_density_kg_m3 = 1.34, .room_density_kg_m3 = 1.2, .wind_m_s = 0.0};

Installation stove_in_house() {
    const auto read = read_installation(R"({
        "site": {"room": {"temperature": "20 degC"},
                 "weather": [{"name": "cool", "outdoor_temperature": "5 degC"}],
                 "house": {"height": "5 m", "volume": "300 m3", "air_changes_at_50_pa": "3 1/h",
                           "fans": ["25 L/s", {"name": "supply", "flow": "-5 L/s"}]}},
        "appliance": {"type": "stove", "fuel": "beech", "burn_rate": "3 kg/h",
                      "outlet": {"diameter": "150 mm", "height": "0.8 m"}, "draft_needed": "12 Pa"},
        "run": [{"part": "straight", "up": "6 m", "wall": "insulated 25 mm", "zone": "room"}]})",
                                        "house.json");
    REQUIRE(read.has_value());
    return *read;
}

Case made(const Installation& in) {
    const Result<Case, Faults> resolved = resolve(with_outdoor_top(in));
    REQUIRE(resolved.has_value());
    return *resolved;
}

StateResult state_of(const Case& c, StateKind kind) {
    const Solution solution = solve(c, Detail::totals);
    return *std::find_if(solution.states.begin(), solution.states.end(), [&](const StateResult& s) {
        return s.kind == kind;
    });
}

} // namespace

TEST_CASE("one fan in a house without stack: the power law", "[house]") {
    for (const double fan_m3_s : {0.01, 0.05, 0.15, -0.05}) {
        HouseCase house = shell();
        (fan_m3_s > 0.0 ? house.exhaust_m3_s : house.supply_m3_s) = std::abs(fan_m3_s);
        const double law =
            -std::copysign(std::pow(std::abs(fan_m3_s) / house.leak_m3_s, 1.0 / 0.65), fan_m3_s);
        CHECK(HouseAir(house, even).room_pressure_pa(0.0) == Approx(law).epsilon(1e-9));
        CHECK(HouseAir(house, even).room_pressure_pa(0.0, Fans::off) == Approx(0.0).margin(1e-9));
    }
    CHECK(HouseAir(shell(), even).room_pressure_pa(0.06 * 1.2)
          == Approx(-std::pow(0.06 / shell().leak_m3_s, 1.0 / 0.65)));
}

TEST_CASE("the neutral level follows the leaks, or the leaks the neutral level", "[house]") {
    HouseCase house = shell();
    house.leak_exponent = 0.5;
    const HouseAir even_leaks(house, frost);
    const double free_pa = even_leaks.room_pressure_pa(0.0);
    // Two equal openings: h = H / (1 + rho_o / rho_i).
    CHECK(even_leaks.neutral_height_m(free_pa) + house.outlet_level_m
          == Approx(5.0 / (1.0 + 1.34 / 1.2)).epsilon(1e-6));
    for (const double level_m : {0.0, 0.7, 2.5, 4.2}) {
        HouseCase set = shell();
        set.neutral_level_m = level_m;
        for (const HouseWeather& weather :
             {frost, HouseWeather{.outdoor_density_kg_m3 = 1.15, .room_density_kg_m3 = 1.2}}) {
            const HouseAir air(set, weather);
            CHECK(air.neutral_height_m(air.room_pressure_pa(0.0)) + set.outlet_level_m
                  == Approx(level_m).margin(2e-6));
        }
    }
}

TEST_CASE("opening a window by the fire never moves the house towards starving it", "[house]") {
    std::mt19937_64 bits(11);
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(bits() >> 11U) * 0x1p-53;
    };
    for (int trial = 0; trial < 500; ++trial) {
        HouseCase house = shell();
        house.leak_m3_s *= std::pow(10.0, between(-1.0, 1.0));
        house.leak_exponent = between(0.5, 0.9);
        house.height_m = between(3.0, 12.0);
        house.outlet_level_m = between(0.3, 8.0);
        house.exhaust_m3_s = between(0.0, 0.2);
        house.supply_m3_s = between(0.0, 0.1);
        const HouseWeather weather{.outdoor_density_kg_m3 = between(1.12, 1.5),
                                   .room_density_kg_m3 = between(1.15, 1.25)};
        const double taken = between(0.0, 0.05);
        const double shut_pa = HouseAir(house, weather).room_pressure_pa(taken);
        double last_pa = shut_pa;
        for (const double area_m2 : {0.002, 0.02, 0.2, 1.5}) {
            house.openings = {{.area_m2 = area_m2, .height_m = 0.0, .wind_coefficient = 0.0}};
            const double open_pa = HouseAir(house, weather).room_pressure_pa(taken);
            CHECK(open_pa >= std::min(last_pa, 0.0) - 1e-7);
            CHECK(std::abs(open_pa) <= std::abs(last_pa) + 1e-7);
            last_pa = open_pa;
        }
    }
}

TEST_CASE("the opening that is said to cure does cure", "[house]") {
    HouseCase house = shell();
    house.exhaust_m3_s = 0.1;
    const HouseAir air(house, frost);
    const double taken = 0.01;
    REQUIRE(air.room_pressure_pa(taken) < -10.0);
    for (const double wanted_pa : {-8.0, -4.0, -1.0}) {
        HouseCase cured = house;
        cured.openings = {{.area_m2 = air.inlet_area_m2(wanted_pa, taken),
                           .height_m = 0.0,
                           .wind_coefficient = 0.0}};
        CHECK(HouseAir(cured, frost).room_pressure_pa(taken) == Approx(wanted_pa).epsilon(1e-5));
    }
    CHECK(air.inlet_area_m2(-60.0, taken) == 0.0);
}

TEST_CASE("wind: a windward window fills the house, one in the lee empties it", "[house]") {
    HouseWeather wind = even;
    wind.wind_m_s = 8.0;
    const auto with_window = [&](double coefficient) {
        HouseCase house = shell();
        house.openings = {{.area_m2 = 0.5, .height_m = 0.0, .wind_coefficient = coefficient}};
        return HouseAir(house, wind).room_pressure_pa(0.0);
    };
    const double shut_pa = HouseAir(shell(), wind).room_pressure_pa(0.0);
    const double head_pa = 0.5 * 1.2 * 4.8 * 4.8;
    CHECK(with_window(0.6) > shut_pa);
    CHECK(with_window(0.6) > 0.0);
    CHECK(with_window(-0.3) < 0.0);
    CHECK(shut_pa < 0.6 * head_pa);
    CHECK(shut_pa > -0.65 * head_pa);
}

TEST_CASE("wind at the chimney top: clear helps, adverse harms, unknown does neither", "[house]") {
    Installation in = stove_in_house();
    in.site.house = {};
    in.site.room.pressure_pa = 0.0;
    in.site.weather[0].wind_m_s = 7.0;
    const auto draft = [&](Choice<ChimneyTopPosition> position, Build cap) {
        in.site.top_position = position;
        Part top;
        top.part = PartKind::cap;
        top.build = cap;
        in.run.resize(1);
        in.run.push_back(top);
        return state_of(made(in), StateKind::high_fire).draft_pa;
    };
    const double density = surroundings_of(made(in), 0, Fire::burning).outdoor_density_kg_m3;
    const double head_pa = 0.5 * density * 49.0;
    const double calm_pa = draft({}, Build::open);
    CHECK(draft(ChimneyTopPosition::clear, Build::open) - calm_pa == Approx(0.4 * head_pa));
    CHECK(draft(ChimneyTopPosition::near_ridge, Build::open) == Approx(calm_pa));
    CHECK(draft(ChimneyTopPosition::adverse, Build::open) - calm_pa == Approx(-0.4 * head_pa));
    CHECK(draft(ChimneyTopPosition::clear, Build::plain) - draft({}, Build::plain)
          == Approx(0.5 * head_pa));
}

TEST_CASE("room and flue are solved together", "[house]") {
    const Installation in = stove_in_house();
    const Case c = made(in);
    REQUIRE(c.house.known);
    CHECK(c.house.exhaust_m3_s == Approx(0.025));
    CHECK(c.house.supply_m3_s == Approx(0.005));
    const Solution solution = solve(c, Detail::totals);
    const HouseAir house = surroundings_of(c, 0, Fire::burning).house;
    for (const StateResult& state : solution.states) {
        CAPTURE(name(state.kind));
        CHECK(state.status == Status::solved);
        CHECK(house.surplus_kg_s(state.room.pressure_pa, state.room.taken_kg_s)
              == Approx(0.0).margin(2e-6));
        CHECK(state.room.pressure_pa <= state.room.idle_pressure_pa + 1e-9);
        CHECK(state.draft_pa
              == Approx(state.room.pressure_pa - state.flow.outlet_pressure_pa).margin(1e-9));
    }
    const StateResult high = state_of(c, StateKind::high_fire);
    const StateResult low = state_of(c, StateKind::low_fire);
    CHECK(high.room.taken_kg_s == Approx(high.gas_flow_kg_s - high.burn_rate_kg_s));
    CHECK(high.room.pressure_pa < low.room.pressure_pa);
    CHECK(high.room.pressure_without_fans_pa > high.room.pressure_pa);
}

TEST_CASE("a tight house closes doors on the flow: coupled states draw less", "[house]") {
    Installation in = stove_in_house();
    const StateResult loose = [&] {
        Installation leaky = in;
        leaky.site.house.air_changes_50_pa_1_s = 20.0 / hour_s;
        return state_of(made(leaky), StateKind::free_burn);
    }();
    in.site.house.air_changes_50_pa_1_s = 0.6 / hour_s;
    in.site.house.fans.clear();
    const StateResult tight = state_of(made(in), StateKind::free_burn);
    CHECK(tight.status == Status::solved);
    CHECK(tight.gas_flow_kg_s < loose.gas_flow_kg_s);
}

TEST_CASE("a pressure given for the room wins, a duct spares the room", "[house]") {
    Installation in = stove_in_house();
    in.site.house.outdoor_air = true;
    const StateResult ducted = state_of(made(in), StateKind::high_fire);
    CHECK(ducted.room.taken_kg_s == 0.0);
    CHECK(ducted.room.pressure_pa == Approx(ducted.room.idle_pressure_pa));
    const StateResult opened = state_of(made(in), StateKind::door_open_embers);
    CHECK(opened.room.taken_kg_s > 0.0);
    in.site.room.pressure_pa = -2.5;
    const Case given = made(in);
    CHECK_FALSE(given.house.known);
    CHECK(state_of(given, StateKind::high_fire).room.pressure_pa == -2.5);
}

TEST_CASE("air drawn in by joints in the room counts as taken", "[house]") {
    Installation in = stove_in_house();
    in.run[0].leakage_area_m2 = 4e-4;
    const Case c = made(in);
    const StateResult state = state_of(c, StateKind::high_fire);
    CHECK(state.flow.leak_from_room_kg_s > 0.0);
    CHECK(state.room.taken_kg_s
          == Approx(state.gas_flow_kg_s - state.burn_rate_kg_s + state.flow.leak_from_room_kg_s));
    CHECK(surroundings_of(c, 0, Fire::burning)
              .house.surplus_kg_s(state.room.pressure_pa, state.room.taken_kg_s)
          == Approx(0.0).margin(2e-6));
}

TEST_CASE("the reader knows houses and refuses what contradicts itself", "[house]") {
    const auto read = [](const std::string& house) {
        return read_installation(
            R"({"site": {"house": )" + house
                + R"(}, "appliance": {"type": "stove", "fuel": "beech", "burn_rate": "3 kg/h",
            "outlet": {"diameter": "150 mm"}},
            "run": [{"part": "straight", "up": "5 m"}]})",
            "house.json");
    };
    const auto good = read(R"({"stories": 2, "fans": ["150 cfm ± 10 %"],
                              "openings": [{"area": "150 cm2", "side": "windward"}]})");
    REQUIRE(good.has_value());
    CHECK(good->site.house.fans.at(0).flow_m3_s == Approx(0.0707921).epsilon(1e-5));
    REQUIRE(good->tolerances.size() == 1);
    CHECK(good->tolerances[0].pointer == "/site/house/fans/0/flow");
    Installation copy = *good;
    CHECK(find_value(copy, good->tolerances[0].pointer));
    CHECK(made(*good).house.height_m == Approx(5.4));
    CHECK_FALSE(read(R"({"fans": [150]})").has_value());
    CHECK_FALSE(read(R"({"openings": [{"side": "lee"}]})").has_value());
    CHECK_FALSE(read(R"({"openings": ["150 cm2"]})").has_value());
    CHECK_FALSE(
        read(R"({"leakage_area": "300 cm2", "air_changes_at_50_pa": "3 1/h"})").has_value());
    CHECK_FALSE(read(R"({"height": "5 m", "neutral_level": "6 m"})").has_value());
    const auto low = read(R"({"neutral_level": "9 m"})");
    REQUIRE(low.has_value());
    CHECK_FALSE(resolve(*low).has_value());
}

TEST_CASE("an idle flue turns at the temperature that is stated", "[cold start]") {
    Installation in = stove_in_house();
    in.site.house = {};
    in.site.room.pressure_pa = -2.0;
    in.run[0].zone = Zone::outdoors;
    in.run[0].wall = "single-wall steel";
    Case c = made(in);
    const StateResult idle = state_of(c, StateKind::idle);
    REQUIRE(idle.draft_pa < 0.0);
    CHECK(idle.cold.idle_draft_pa == Approx(idle.draft_pa));
    // A column of room air, as warm as stated, holds the balance.
    const Surroundings around = surroundings_of(c, 0, Fire::out);
    const double density = around.density_kg_m3[0] * around.temperature_k[0] / idle.cold.turning_k;
    CHECK((around.outdoor_density_kg_m3 - density) * constants::gravity_m_s2 * 6.0
          == Approx(2.0).epsilon(1e-9));
    CHECK(idle.cold.heat_j > 0.0);
    CHECK(idle.cold.duration_s * c.kindling.preheat_w == Approx(idle.cold.heat_j));

    // A thin wall is warm through at once: twice the power, half the time.
    c.kindling.preheat_w *= 2.0;
    CHECK(cold_start(c, around).duration_s == Approx(0.5 * idle.cold.duration_s));
    // Brick takes up more the longer it lasts: twice the power saves more than half.
    in.run[0].wall = "unlined masonry";
    Case brick = made(in);
    const double once = cold_start(brick, around).duration_s;
    brick.kindling.preheat_w *= 2.0;
    CHECK(cold_start(brick, around).duration_s < 0.5 * once);

    in.site.room.pressure_pa = 0.0;
    in.run[0].zone = Zone::room;
    const StateResult draws = state_of(made(in), StateKind::idle);
    CHECK(draws.draft_pa > 0.0);
    CHECK(draws.cold.duration_s == 0.0);
}

TEST_CASE("kindling draws less than a warm flue and more than none", "[cold start]") {
    Installation in = stove_in_house();
    in.site.house = {};
    in.site.room.pressure_pa = 0.0;
    const Case c = made(in);
    const StateResult kindled = state_of(c, StateKind::cold_start);
    CHECK(kindled.status == Status::solved);
    CHECK(kindled.draft_pa > state_of(c, StateKind::idle).draft_pa);
    CHECK(kindled.draft_pa < state_of(c, StateKind::high_fire).draft_pa);
    CHECK(kindled.flow.top_temperature_k > c.room_temperature_k);
    CHECK(kindled.flow.outlet_pressure_pa + kindled.flow.buoyancy_pa - kindled.flow.friction_pa
              - kindled.flow.fittings_pa - kindled.flow.acceleration_pa
          == Approx(kindled.flow.top_pressure_pa).margin(1e-12));
}
