// A run that lets in air, with its room: the slopes of the march are those of its differences, the
// quick search and the nested one agree, and a hood that can draw draws.
#include "catch.hpp"
#include "model/march/run_in_room.hpp"
#include "plain_run.hpp"

#include <cmath>

using namespace fluewright;

namespace {

/// Six metres in three lengths, half of it outdoors, with joints that leak this much a metre.
Installation leaking(double gap_m) {
    Installation in = plain::stack(2.0, 0.15, 0.1);
    in.run.push_back(in.run.front());
    in.run.push_back(in.run.front());
    in.run.back().zone = Zone::outdoors;
    for (Part& part : in.run) {
        part.joint_gap_m = gap_m;
    }
    return in;
}

GasStream high_fire(const Case& c) {
    const Firing& high = c.appliance.high;
    return {.gas = GasChoice::high_fire,
            .air_share = 0.0,
            .flow_kg_s = high.gas_flow_kg_s,
            .temperature_k = high.gas_temperature_k};
}

FlueModel burning(const Case& c) {
    return {c, surroundings_of(c, 0, Fire::burning)};
}

/// A gas boiler with a hood on its collar in a house of this tightness.
Installation with_hood(double room_pa) {
    Installation in = plain::stack(4.0, 0.2, 0.2);
    in.appliance.type = ApplianceType::boiler;
    in.appliance.fuel.name = "natural gas";
    in.appliance.fuel.moisture = {};
    in.appliance.burn_rate_kg_s = {{}, 0.25e-3};
    in.appliance.gas_temperature_k = {{}, 460.0};
    in.appliance.draft_needed_pa = {{}, 3.0};
    in.site.room.pressure_pa = room_pa;
    in.run.front().zone = Zone::outdoors;
    Part hood;
    hood.part = PartKind::draft_hood;
    in.run.insert(in.run.begin(), hood);
    return in;
}

} // namespace

TEST_CASE("the slopes of a march are those of its differences", "[leaks]") {
    for (const double gap_m : {1e-5, 1e-4, 5e-4}) {
        for (const double outlet_pa : {-25.0, -12.0, -3.0, 4.0}) {
            CAPTURE(gap_m, outlet_pa);
            const Case c = plain::resolved(leaking(gap_m));
            const FlueModel model = burning(c);
            constexpr double step_pa = 1e-3;
            MarchSlopes slopes;
            (void)model.march(high_fire(c), {.outlet_pa = outlet_pa, .room_pa = -1.0}, {}, &slopes);
            const auto at = [&](double by_outlet_pa, double by_room_pa) {
                return model.march(
                    high_fire(c),
                    {.outlet_pa = outlet_pa + by_outlet_pa, .room_pa = -1.0 + by_room_pa});
            };
            const auto slope = [&](double MarchResult::*figure, double outlet, double room) {
                return (at(outlet, room).*figure - at(-outlet, -room).*figure) / (2.0 * step_pa);
            };
            const double top = slope(&MarchResult::top_pressure_pa, step_pa, 0.0);
            // What the leaks add is known to a third.
            const double near = 0.34 * std::abs(top - 1.0) + 1e-6;
            CHECK(slopes.top_per_outlet == Approx(top).margin(near));
            CHECK(slopes.top_per_room
                  == Approx(slope(&MarchResult::top_pressure_pa, 0.0, step_pa)).margin(near));
            CHECK(slopes.leak_per_outlet_kg_s_pa
                  == Approx(slope(&MarchResult::leak_from_room_kg_s, step_pa, 0.0)).epsilon(0.02));
            CHECK(slopes.leak_per_room_kg_s_pa
                  == Approx(slope(&MarchResult::leak_from_room_kg_s, 0.0, step_pa)).epsilon(0.02));
        }
    }
}

TEST_CASE("the quick search and the nested one find the same run", "[leaks]") {
    for (const double gap_m : {1e-5, 1e-4, 1e-3}) {
        for (const bool in_house : {false, true}) {
            CAPTURE(gap_m, in_house);
            Installation in = leaking(gap_m);
            if (in_house) {
                in.site.room.pressure_pa.reset();
                in.site.house.storeys = 1.0;
                in.site.house.air_changes_50_pa_1_s = 1.0 / 3600.0;
            }
            const Case c = plain::resolved(in);
            const FlueModel model = burning(c);
            const double air_kg_s =
                c.appliance.high.gas_flow_kg_s - c.appliance.high.burn_rate_kg_s;
            const auto answer = [&](Search search) {
                return RunInRoom::in_house(model, true, search).solve(high_fire(c), air_kg_s);
            };
            const RunInRoom::Answer quick = answer(Search::coupled);
            const RunInRoom::Answer slow = answer(Search::nested);
            CHECK(quick.flow.meets_top);
            CHECK(slow.flow.meets_top);
            CHECK(quick.draft_pa() == Approx(slow.draft_pa()).margin(1e-5));
            CHECK(quick.room_pa == Approx(slow.room_pa).margin(1e-5));
            CHECK(quick.flow.top_pressure_pa == Approx(0.0).margin(1e-9));
            if (in_house) {
                CHECK(model.surroundings().house.surplus_kg_s(
                          quick.room_pa, air_kg_s + quick.flow.leak_from_room_kg_s)
                      == Approx(0.0).margin(1e-8));
            }
        }
    }
}

TEST_CASE("of two answers behind a draft hood the drawing one is given", "[leaks]") {
    int with_two = 0;
    for (double room_pa = 0.0; room_pa > -12.0; room_pa -= 0.25) {
        CAPTURE(room_pa);
        const Case c = plain::resolved(with_hood(room_pa));
        const FlueModel model = burning(c);
        const auto chimney_top_pa = [&](double outlet_pa) {
            return model.march(high_fire(c), {.outlet_pa = outlet_pa, .room_pa = room_pa})
                .top_pressure_pa;
        };
        // Where the chimney top comes up to what is outdoors, from far below upwards.
        std::vector<double> answers;
        double before_pa = chimney_top_pa(-60.0);
        for (double outlet_pa = -60.0; outlet_pa < 20.0; outlet_pa += 0.01) {
            const double here_pa = chimney_top_pa(outlet_pa);
            if (before_pa < 0.0 && here_pa >= 0.0) {
                answers.push_back(outlet_pa);
            }
            before_pa = here_pa;
        }
        REQUIRE_FALSE(answers.empty());
        with_two += answers.size() > 1 ? 1 : 0;
        const RunInRoom::Answer answer = RunInRoom(model).solve(high_fire(c), 0.0);
        CHECK(answer.flow.meets_top);
        CHECK(answer.flow.outlet_pressure_pa == Approx(answers.front()).margin(0.02));
    }
    CHECK(with_two > 3);
}
