// The warm-up: closed forms, the steady march as its limit, energy, any step, and its order.
#include "catch.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "fluewright/model/warmup/storing_wall.hpp"
#include "fluewright/model/warmup/warmup.hpp"
#include "warm_stove.hpp"

#include <algorithm>
#include <cmath>
#include <string>

using namespace fluewright;
using namespace fluewright::warm_stove;

namespace {

WallLayer layer_of(std::string_view material, double thickness_m) {
    const catalog::Material& row = *catalog::find_material(material);
    return {.thickness_m = thickness_m,
            .conductivity_w_mk = row.conductivity_w_mk,
            .conductivity_slope_w_mk2 = row.conductivity_slope_w_mk2,
            .density_kg_m3 = row.density_kg_m3,
            .specific_heat_j_kgk = row.specific_heat_j_kgk,
            .emissivity = row.emissivity};
}

WallLayer gap_of(double width_m) {
    WallLayer gap;
    gap.thickness_m = width_m;
    gap.air_gap = true;
    return gap;
}

WallBuild wall_of(std::initializer_list<WallLayer> layers) {
    WallBuild wall;
    wall.inner_emissivity = wall.outer_emissivity = 0.9;
    for (const WallLayer& layer : layers) {
        wall.layers[wall.layer_count++] = layer;
    }
    return wall;
}

WallPlace place_of(const WallBuild& wall, double diameter_m = 0.15) {
    return {.wall = &wall,
            .inside_diameter_m = diameter_m,
            .ambient_k = 283.15,
            .air_pressure_pa = 101325.0,
            .wind_m_s = 0.0,
            .height_m = 3.0,
            .upright = true,
            .rectangular = false};
}

} // namespace

TEST_CASE("A thin wall warms as its exponential") {
    const WallBuild wall = wall_of({layer_of("carbon steel", 0.003)});
    const StoringWall storing(place_of(wall));
    constexpr double inside = 9.0;
    constexpr double outside = 5.0;
    constexpr double gas_k = 500.0;
    constexpr double ambient_k = 283.15;
    const double time_constant_s = storing.heat_capacity_j_m2k() / (inside + outside);
    const double end_k = (inside * gas_k + outside * ambient_k) / (inside + outside);

    std::vector<double> nodes(storing.node_count(), ambient_k);
    std::vector<double> before = nodes;
    constexpr int steps = 4000;
    double given = 0.0;
    double lost = 0.0;
    const double heat_before = storing.heat_j_m2(nodes);
    for (int i = 1; i <= steps; ++i) {
        before = nodes;
        const double step_s = 2.0 * time_constant_s / steps;
        const auto heat = storing.step({.inside_w_m2k = inside,
                                        .gas_k = gas_k,
                                        .outside_w_m2k = outside,
                                        .ambient_k = ambient_k},
                                       step_s,
                                       before,
                                       nodes);
        given += heat.in_w_m2 * step_s;
        lost += heat.out_w_m2 * step_s;
        if (i % 1000 == 0) {
            const double exact =
                end_k + (ambient_k - end_k) * std::exp(-2.0 * static_cast<double>(i) / steps);
            CHECK(nodes[1] == Approx(exact).margin(0.05));
        }
    }
    CHECK(given - lost == Approx(storing.heat_j_m2(nodes) - heat_before).epsilon(1e-9));
}

TEST_CASE("A wall given endless time is the steady wall") {
    const WallBuild insulated = wall_of({layer_of("stainless steel", 0.0005),
                                         layer_of("mineral wool hot", 0.025),
                                         layer_of("stainless steel", 0.0005)});
    const WallBuild masonry =
        wall_of({layer_of("clay tile", 0.016), gap_of(0.012), layer_of("fired brick", 0.1)});
    WallBuild resistance = wall_of({});
    resistance.fixed_resistance_m2k_w = 0.4;
    resistance.outside_diameter_m = 0.21;
    for (const WallBuild* wall :
         std::initializer_list<const WallBuild*>{&insulated, &masonry, &resistance}) {
        const StoringWall storing(place_of(*wall));
        std::vector<double> nodes(storing.node_count(), 283.15);
        const std::vector<double> start = nodes;
        StoringWall::Heat heat{};
        for (int i = 0; i < 200; ++i) {
            heat = storing.step({.inside_w_m2k = 12.0,
                                 .gas_k = 550.0,
                                 .outside_w_m2k = storing.outside_w_m2k(nodes.back()),
                                 .ambient_k = 283.15},
                                1e15,
                                start,
                                nodes);
        }
        const WallState steady = wall_state_from_inner(place_of(*wall), nodes.front());
        // Conductivity that rises with temperature is taken ring by ring.
        CHECK(heat.in_w_m2 == Approx(steady.flux_w_m2).epsilon(1e-3));
        CHECK(heat.out_w_m2 == Approx(heat.in_w_m2).epsilon(1e-8));
        CHECK(nodes.back() == Approx(steady.outer_k).margin(0.05));
    }
}

TEST_CASE("A thick wall is at first a half-space") {
    // Surface heated through a coefficient: T_s - T_0 = (T_g - T_0)(1 - exp(b^2) erfc(b)) with
    // b = h sqrt(a t)/k.
    WallLayer brick = layer_of("fired brick", 0.3);
    const WallBuild wall = wall_of({brick});
    // A wide flue, so that the wall is nearly plane.
    const StoringWall storing(place_of(wall, 20.0));
    std::vector<double> nodes(storing.node_count(), 283.15);
    std::vector<double> before;
    constexpr double inside = 10.0;
    constexpr double step_s = 5.0;
    constexpr double end_s = 3600.0;
    for (double t = 0.0; t < end_s - 1.0; t += step_s) {
        before = nodes;
        storing.step(
            {.inside_w_m2k = inside, .gas_k = 483.15, .outside_w_m2k = 8.0, .ambient_k = 283.15},
            step_s,
            before,
            nodes);
    }
    const double diffusivity =
        brick.conductivity_w_mk / (brick.density_kg_m3 * brick.specific_heat_j_kgk);
    const double b = inside * std::sqrt(diffusivity * end_s) / brick.conductivity_w_mk;
    const double exact = 283.15 + 200.0 * (1.0 - std::exp(b * b) * std::erfc(b));
    CHECK(nodes.front() == Approx(exact).margin(0.5));
}

TEST_CASE("A long fire ends in the steady march") {
    for (const char* chimney : {"insulated 25 mm", "double-wall air 6 mm"}) {
        Installation written = stove_on("single-wall steel", chimney);
        written.burn = {burn(30 * 60, 2.5)};
        const Case made = *resolve(written);
        const Warmup warmed = warm_up(made, {.total_s = 30.0 * 3600.0, .step_s = 300.0});
        const FlueModel model(made, surroundings_of(made, 0, Fire::burning));
        const StateResult steady = solve_state(model, StateKind::high_fire, Detail::stations);
        REQUIRE(steady.margin_pa() > 0.0);
        const WarmupMoment& end = warmed.moments.back();
        CHECK(end.gas_flow_kg_s == Approx(steady.gas_flow_kg_s).epsilon(1e-9));
        CHECK(end.outlet_k == Approx(steady.gas_temperature_k).margin(0.01));
        CHECK(end.top_k == Approx(steady.flow.top_temperature_k).epsilon(0.002));
        CHECK(end.draft_pa == Approx(steady.draft_pa).epsilon(0.002));
        const double steady_wall_k = steady.stations[made.sections.size() - 1].inner_wall_k;
        CHECK(end.top_wall_k == Approx(steady_wall_k).margin(2.0));
    }
}

TEST_CASE("Gas heat is stored or lost, at any step") {
    for (const char* chimney : {"insulated 25 mm", "clay-lined masonry", "flexible liner"}) {
        const Installation written = stove_on("single-wall steel", chimney);
        for (const double step_s : {15.0, 120.0, 900.0, 7200.0}) {
            const Warmup warmed = warm(written, step_s);
            CHECK(std::abs(warmed.balance.error()) < 1e-8);
            CHECK(warmed.balance.given_j > 0.0);
            for (const WarmupMoment& m : warmed.moments) {
                // Nothing gets colder than the coldest air or hotter than the hottest gas.
                CHECK(m.coldest_wall_k > 275.0 - 1.0);
                CHECK(m.top_k > 275.0 - 1.0);
                CHECK(m.top_k < 650.0);
                CHECK(std::isfinite(m.draft_pa));
            }
        }
    }
}

TEST_CASE("Halving the step takes three quarters off the error") {
    Installation written = stove_on("single-wall steel heavy", "clay-lined masonry");
    written.burn = {burn(60, 2.0)};
    const auto stored = [&](double step_s) {
        return warm(written, step_s, 3600.0).balance.stored_j;
    };
    const double coarse = stored(60.0);
    const double middle = stored(30.0);
    const double fine = stored(15.0);
    const double ratio = (coarse - middle) / (middle - fine);
    CHECK(ratio > 3.7);
    CHECK(ratio < 4.5);
}

TEST_CASE("Finer cells change little") {
    const Case made = *resolve(stove_on("single-wall steel", "insulated 25 mm"));
    const Warmup plain = warm_up(made, {.step_s = 30.0});
    const Warmup fine = warm_up(made, {.step_s = 30.0, .cells_factor = 4});
    CHECK(plain.balance.given_j == Approx(fine.balance.given_j).epsilon(0.002));
    REQUIRE(plain.dry_s);
    REQUIRE(fine.dry_s);
    CHECK(*plain.dry_s == Approx(*fine.dry_s).margin(30.0));
}

TEST_CASE("Heavy walls warm slowly and hold on") {
    const Warmup light = warm(stove_on("single-wall steel", "insulated 25 mm"), 30.0);
    const Warmup heavy = warm(stove_on("single-wall steel", "clay-lined masonry"), 30.0);
    REQUIRE(light.dry_s);
    CHECK((!heavy.dry_s || *heavy.dry_s > *light.dry_s));
    CHECK(heavy.balance.stored_j > 5.0 * light.balance.stored_j);
    REQUIRE(light.draft_met.from_s);
    CHECK(*light.draft_met.from_s < 1200.0);
    REQUIRE(light.fire_out_s);
}

TEST_CASE("The flow never passes what the fire asks, and drops where the flue is weak") {
    Installation written = stove_on("single-wall steel", "insulated 25 mm");
    for (const bool weak : {false, true}) {
        if (weak) {
            written.site.room.pressure_pa = -8.0;
        }
        const Case made = *resolve(written);
        const Warmup warmed = warm_up(made, {.step_s = 60.0});
        const BurnPlan plan(made, 0.0, made.room_temperature_k);
        bool starved = false;
        double start_s = 0.0;
        std::size_t phase = 0;
        for (const WarmupMoment& m : warmed.moments) {
            while (m.phase > phase) {
                start_s += plan.phases()[phase++].duration_s;
            }
            const FireDemand asked = plan.at(m.phase, m.time_s - start_s);
            if (!asked.out) {
                CHECK(m.gas_flow_kg_s <= asked.gas_flow_kg_s * (1.0 + 1e-9));
                CHECK(m.burn_rate_kg_s <= asked.burn_rate_kg_s * (1.0 + 1e-9));
            }
            starved = starved || m.starved;
        }
        CHECK(starved == weak);
        CHECK((warmed.starved_s > 0.0) == weak);
    }
}

TEST_CASE("The burn plan") {
    Installation written = stove_on("single-wall steel", "insulated 25 mm");
    SECTION("left out: lighting, high fire, burn-down and the time after") {
        const Case made = *resolve(written);
        const BurnPlan plan(made, 0.0, made.room_temperature_k);
        REQUIRE(plan.phases().size() == 4);
        CHECK(plan.phases().back().out);
        CHECK(plan.assumptions().size() == 7);
        const FireDemand high = plan.at(1, 60.0);
        CHECK(high.gas_flow_kg_s == Approx(made.appliance.high.gas_flow_kg_s));
        CHECK(high.aim_k == Approx(made.appliance.high.gas_temperature_k));
        CHECK(high.air_share == 0.0);
        CHECK(plan.at(3, 1.0).air_share == 1.0);
    }
    SECTION("at low fire the gas is that of low fire") {
        written.burn = {burn(60, 1.0)};
        const Case made = *resolve(written);
        const FireDemand low = BurnPlan(made, 0.0, made.room_temperature_k).at(0, 0.0);
        CHECK(low.gas_flow_kg_s == Approx(made.appliance.low.gas_flow_kg_s));
        CHECK(low.aim_k == Approx(made.appliance.low.gas_temperature_k));
        const GasFit mixed = made.gas_high().diluted(low.air_share);
        CHECK(mixed.carbon_dioxide == Approx(made.gas_low().products().carbon_dioxide));
    }
    SECTION("a total cuts it short or draws it out") {
        const Case made = *resolve(written);
        const auto total = [&](double seconds) {
            double sum = 0.0;
            const BurnPlan plan(made, seconds, made.room_temperature_k);
            for (const BurnPhase& phase : plan.phases()) {
                sum += phase.duration_s;
            }
            return sum;
        };
        CHECK(total(1000.0) == Approx(1000.0));
        CHECK(total(50000.0) == Approx(50000.0));
        CHECK(BurnPlan(made, 1000.0, made.room_temperature_k).phases().size() == 2);
    }
    SECTION("phases of the file; none burning is the fire out") {
        written.burn = {burn(20, 2.0), burn(30, 0.0)};
        const Case made = *resolve(written);
        const BurnPlan plan(made, 0.0, made.room_temperature_k);
        REQUIRE(plan.phases().size() == 2);
        CHECK(plan.phases()[1].out);
        CHECK(plan.assumptions().size() == 1);
        const Warmup warmed = warm_up(made, {.step_s = 30.0});
        REQUIRE(warmed.fire_out_s);
        CHECK(*warmed.fire_out_s == Approx(1200.0));
        CHECK(warmed.end_s == Approx(3000.0));
    }
}
