#include "../plain_run.hpp"

#include <cmath>

using namespace fluewright;

namespace {

/// A stove under a steel pipe that holds heat.
Installation stove() {
    Installation in = plain::stack(5.0, 0.15, 0.05);
    in.walls.clear();
    in.run[0].wall = "single-wall steel";
    in.appliance.door = {0.4, 0.3, {}, {}, {}};
    return in;
}

void set_mass(Case& c, double factor) {
    for (WallBuild& wall : c.walls) {
        for (WallLayer& layer : wall.layers) {
            layer.density_kg_m3 *= factor;
        }
    }
    c.appliance.lining.heat_j_k *= factor;
}

std::vector<DoorMoment> moments_of(const Case& c, StateKind kind) {
    const FlueModel model = plain::burning(c);
    return open_door_moments(model, solve_state(model, kind, Detail::totals));
}

} // namespace

TEST_CASE("an opened door loses what walls and lining held") {
    const Case c = plain::resolved(stove());
    for (const StateKind kind : {StateKind::door_open_high, StateKind::door_open_embers}) {
        const auto moments = moments_of(c, kind);
        REQUIRE(moments.size() == door_moments_s.size());
        for (std::size_t i = 0; i < moments.size(); ++i) {
            CHECK(moments[i].elapsed_s == door_moments_s[i]);
            CHECK(moments[i].share_by_velocity > moments[i].share_by_mixed_box);
            if (i > 0) {
                CHECK(moments[i].share_by_velocity < moments[i - 1].share_by_velocity);
            }
        }
        // What is judged is the last of them.
        const StateResult state = solve_state(plain::burning(c), kind, Detail::totals);
        CHECK(moments.back().share_by_velocity == Approx(state.door.opening_share).epsilon(1e-4));
        CHECK(moments.back().share_by_mixed_box
              == Approx(state.door.opening_share_mixed).epsilon(1e-4));
    }
}

TEST_CASE("without mass an opened door is where it will stay, with endless mass where it was") {
    const Case usual = plain::resolved(stove());
    Case light = usual;
    set_mass(light, 0.0);
    Case heavy = usual;
    set_mass(heavy, 1e9);
    const auto between = moments_of(usual, StateKind::door_open_embers);
    const auto lasting = moments_of(light, StateKind::door_open_embers);
    const auto held = moments_of(heavy, StateKind::door_open_embers);
    for (std::size_t i = 0; i < lasting.size(); ++i) {
        CHECK(lasting[i].share_by_velocity
              == Approx(lasting.front().share_by_velocity).epsilon(1e-6));
        CHECK(held[i].share_by_velocity == Approx(held.front().share_by_velocity).epsilon(1e-6));
        CHECK(lasting[i].share_by_velocity < between[i].share_by_velocity);
        CHECK(between[i].share_by_velocity <= held[i].share_by_velocity * (1.0 + 1e-6));
    }
    // At once the usual walls have lost nothing.
    CHECK(between.front().share_by_velocity
          == Approx(held.front().share_by_velocity).epsilon(1e-3));
}

TEST_CASE("a wider door may be opened less far") {
    Installation in = stove();
    double before = 1e9;
    for (const double width_m : {0.2, 0.4, 0.8}) {
        in.appliance.door.width_m = width_m;
        const Case c = plain::resolved(in);
        const StateResult state =
            solve_state(plain::burning(c), StateKind::door_open_embers, Detail::totals);
        CHECK(state.door.opening_share < before);
        before = state.door.opening_share;
    }
}

TEST_CASE("by velocity a door may be opened to where the air comes in at 0.24 m/s") {
    const Case c = plain::resolved(stove());
    const FlueModel model = plain::burning(c);
    const StateResult state = solve_state(model, StateKind::door_open_embers, Detail::totals);
    const auto moments = open_door_moments(model, state);
    const double air_kg_s = moments.back().gas_flow_kg_s - state.burn_rate_kg_s;
    const double opened_m2 = moments.back().share_by_velocity * 0.4 * 0.3;
    CHECK(air_kg_s / (model.surroundings().density_kg_m3[0] * opened_m2) == Approx(0.24));
}

TEST_CASE("how long a door may stand wide is read between the moments") {
    std::vector<DoorMoment> moments(3);
    for (std::size_t i = 0; i < moments.size(); ++i) {
        moments[i].elapsed_s = door_moments_s[i];
    }
    const auto set = [&](double at_once, double soon, double late) {
        moments[0].share_by_velocity = at_once;
        moments[1].share_by_velocity = soon;
        moments[2].share_by_velocity = late;
        return wide_open_s(moments);
    };
    CHECK(set(0.99, 0.9, 0.8) == 0.0);
    CHECK(set(1.0, 0.9, 0.8) == 0.0);
    CHECK(set(1.1, 0.9, 0.8) == Approx(10.0));
    CHECK(set(1.4, 1.2, 0.8) == Approx(40.0));
    CHECK(std::isinf(set(1.4, 1.2, 1.0)));
}

TEST_CASE("an open front has no heat from a door that was shut") {
    Installation in = stove();
    in.appliance.type = ApplianceType::fireplace;
    in.appliance.gas_temperature_k = {350.0, 380.0};
    const Case c = plain::resolved(in);
    Case light = c;
    set_mass(light, 0.0);
    const auto share = [](const Case& made) {
        return solve_state(plain::burning(made), StateKind::door_open_high, Detail::totals)
            .door.opening_share;
    };
    CHECK(share(c) == Approx(share(light)).epsilon(1e-6));
}
