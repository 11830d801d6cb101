// Joints, regulators and hoods: mass, energy and pressure close; closed forms; nothing diverges.
#include "../outdoor_top.hpp"
#include "catch.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "fluewright/physics/openings.hpp"
#include "written_parts.hpp"

#include <cmath>
#include <random>

using namespace fluewright;

namespace {

/// A stove under five metres of flue in calm cool weather, joints sealed.
Installation plain() {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.fuel.moisture = 0.18;
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.burn_rate_kg_s.high = 3.0 / 3600.0;
    in.site.room.temperature_k = 293.15;
    in.site.room.pressure_pa = 0.0;
    Weather cool;
    cool.outdoor_temperature_k = 278.15;
    in.site.weather = {cool};
    Part cap = named(PartKind::cap);
    cap.build = Build::open;
    in.run = {straight_up(2.0, "insulated 25 mm", Zone::room),
              straight_up(2.0, "insulated 25 mm", Zone::room),
              straight_up(1.0, "insulated 25 mm", Zone::room),
              cap};
    return in;
}

Case made(const Installation& in) {
    const Result<Case, Faults> resolved = resolve(with_outdoor_top(in));
    REQUIRE(resolved.has_value());
    return *resolved;
}

StateResult solved(const Case& c, StateKind kind = StateKind::high_fire) {
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    return solve_state(model, kind, Detail::stations);
}

/// The station behind the first section of a part.
const Station& station_of(const Case& c, const StateResult& state, int part) {
    for (const Station& station : state.stations) {
        if (c.sections[station.section].part == part) {
            return station;
        }
    }
    FAIL("no such part");
    return state.stations.front();
}

/// Mass, energy and pressure over the whole run, to round-off.
void check_sums(const Case& c, const StateResult& state) {
    const MarchResult& f = state.flow;
    const double flow = state.gas_flow_kg_s;
    CHECK(f.top_flow_kg_s
          == Approx(flow + f.leak_in_kg_s - f.leak_out_kg_s).epsilon(1e-12).margin(1e-15));
    const double scale = std::abs(f.enthalpy_in_w) + std::abs(f.heat_loss_w)
                         + 1e6 * (f.leak_in_kg_s + f.leak_out_kg_s);
    CHECK(std::abs(f.enthalpy_in_w + f.enthalpy_leak_w - f.heat_loss_w - f.enthalpy_out_w)
          < 1e-9 * scale);
    CHECK(f.outlet_pressure_pa + f.buoyancy_pa - f.friction_pa - f.fittings_pa - f.acceleration_pa
          == Approx(f.top_pressure_pa).margin(1e-9 * (1.0 + f.friction_pa + f.fittings_pa)));
    double here = flow;
    for (const Station& station : state.stations) {
        here += station.leak_kg_s;
        CHECK(station.flow_kg_s == Approx(here).epsilon(1e-12).margin(1e-15));
        // The last step of the search moves all pressures by less than this.
        const bool is_told = std::abs(station.joint_pressure_pa) > 2e-5;
        if (c.sections[station.section].leaks() && station.leak_kg_s != 0.0 && is_told) {
            CHECK((station.leak_kg_s > 0.0) == (station.joint_pressure_pa < 0.0));
        }
    }
}

} // namespace

TEST_CASE("an opening passes what Bernoulli says", "[leaks]") {
    const double law = 0.6 * 0.005 * std::sqrt(2.0 * 1.2 * 26.7);
    CHECK(openings::flow_kg_s(0.005, 26.7, 1.2) == Approx(law).epsilon(1e-6));
    CHECK(openings::flow_kg_s(0.005, -26.7, 1.2) == Approx(-law).epsilon(1e-6));
    CHECK(openings::flow_kg_s(0.005, 0.0, 1.2) == 0.0);
    CHECK(openings::area_m2(law, 26.7, 1.2) == Approx(0.005));
}

TEST_CASE("one leak draws what the orifice law gives at its own pressure", "[leaks]") {
    Installation in = plain();
    in.run[1].leakage_area_m2 = 2e-4;
    const Case c = made(in);
    const StateResult state = solved(c);
    const Station& at = station_of(c, state, 1);
    REQUIRE(at.joint_pressure_pa < -1.0);
    const double room_density = surroundings_of(c, 0, Fire::burning).density_kg_m3[0];
    CHECK(at.leak_kg_s
          == Approx(0.6 * 2e-4 * std::sqrt(2.0 * room_density * -at.joint_pressure_pa))
                 .epsilon(1e-6));
    CHECK(state.flow.leak_in_kg_s == at.leak_kg_s);
    CHECK(state.flow.leak_from_room_kg_s == at.leak_kg_s);
    CHECK(state.flow.top_air_share > 0.0);
    check_sums(c, state);
    const StateResult tight = solved(made(plain()));
    CHECK(state.flow.top_temperature_k < tight.flow.top_temperature_k);
    CHECK(state.draft_pa < tight.draft_pa);
}

TEST_CASE("joints that leak nothing change nothing", "[leaks]") {
    Installation in = plain();
    in.run[0].joint_gap_m = 1e-12;
    const StateResult nearly = solved(made(in));
    const StateResult tight = solved(made(plain()));
    CHECK(nearly.draft_pa == Approx(tight.draft_pa).epsilon(1e-6));
    const Case sealed = made(plain());
    CHECK_FALSE(FlueModel(sealed, surroundings_of(sealed, 0, Fire::burning)).has_leaks());
}

TEST_CASE("a fit carries on, an area does not, a class goes by the wall", "[leaks]") {
    Installation in = plain();
    in.run[0].joint = JointFit::ordinary;
    in.run[1].leakage_area_m2 = 3e-4;
    in.run[2].joint = JointFit::n1;
    const Case c = made(in);
    const double slit = catalog::default_of(DefaultId::joint_gap_ordinary_m).value;
    CHECK(c.sections[0].joint_leak_m2 == 0.0);
    CHECK(c.sections[1].joint_leak_m2 == Approx(slit * constants::pi * 0.15));
    CHECK(c.sections[2].joint_leak_m2 == 3e-4);
    // Class N1: 2 L/s through each square metre at 40 Pa, air of 1.2 kg/m3.
    const double per_wall = 0.002 / (0.6 * std::sqrt(2.0 * 40.0 / 1.2));
    CHECK(c.sections[3].joint_leak_m2 == Approx(per_wall * constants::pi * 0.15 * 1.0));
    CHECK(c.sections[4].joint_leak_m2 == 0.0);
}

TEST_CASE("above the neutral point of a blocked flue leaks blow out, below they draw", "[leaks]") {
    Installation in = plain();
    for (Part& part : in.run) {
        part.joint_gap_m = 2e-5;
    }
    Part blocked = named(PartKind::obstruction);
    blocked.blocked = 0.83;
    in.run.insert(in.run.begin() + 3, blocked);
    const Case c = made(in);
    const StateResult state = solved(c);
    REQUIRE(state.draft_pa > 0.0);
    const Station& low = station_of(c, state, 0);
    const Station& high = station_of(c, state, 3);
    CHECK(low.joint_pressure_pa < 0.0);
    CHECK(low.leak_kg_s > 0.0);
    CHECK(high.joint_pressure_pa > 0.0);
    CHECK(high.leak_kg_s < 0.0);
    check_sums(c, state);
}

TEST_CASE("a run that blows at every joint converges as surely as one that draws", "[leaks]") {
    for (const double gap_m : {1e-5, 1e-4, 1e-3, 1e-2}) {
        for (const double blocked : {0.0, 0.5, 0.9, 0.98}) {
            for (const double outdoor_k : {253.15, 293.15, 308.15}) {
                CAPTURE(gap_m, blocked, outdoor_k);
                Installation in = plain();
                in.site.weather[0].outdoor_temperature_k = outdoor_k;
                in.run[0].joint_gap_m = gap_m;
                Part plug = named(PartKind::obstruction);
                plug.blocked = blocked;
                in.run.insert(in.run.begin() + 3, plug);
                const Case c = made(in);
                for (const StateKind kind : states_of(c)) {
                    if (kind == StateKind::idle) {
                        continue;
                    }
                    CAPTURE(name(kind));
                    const StateResult state = solved(c, kind);
                    CHECK(state.status != Status::no_answer);
                    CHECK(state.flow.meets_top);
                    if (state.status == Status::solved) {
                        check_sums(c, state);
                    }
                }
            }
        }
    }
}

TEST_CASE("mass, energy and pressure close over leaky runs of any kind", "[leaks]") {
    std::mt19937_64 bits(7);
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(bits() >> 11U) * 0x1p-53;
    };
    const auto zones = std::array{Zone::room, Zone::attic, Zone::chase, Zone::outdoors};
    for (int trial = 0; trial < 150; ++trial) {
        CAPTURE(trial);
        Installation in = plain();
        in.site.weather[0].outdoor_temperature_k = between(243.0, 305.0);
        in.site.room.pressure_pa = between(-8.0, 2.0);
        in.run.clear();
        const int parts = 2 + static_cast<int>(bits() % 8U);
        for (int i = 0; i < parts; ++i) {
            Part part =
                straight_up(between(0.2, 2.0), "single-wall steel", zones[bits() % zones.size()]);
            switch (bits() % 6U) {
            case 0:
                part = named(PartKind::draft_hood);
                break;
            case 1:
                part = named(PartKind::draft_regulator);
                break;
            case 2:
                part = named(PartKind::obstruction);
                part.blocked = between(0.1, 0.9);
                break;
            default:
                part.joint_gap_m = std::pow(10.0, between(-6.0, -2.5));
                break;
            }
            in.run.push_back(part);
        }
        const Case c = made(in);
        for (const StateKind kind : {StateKind::high_fire, StateKind::low_fire}) {
            CAPTURE(name(kind));
            const StateResult state = solved(c, kind);
            CHECK(state.status == Status::solved);
            check_sums(c, state);
        }
    }
}

TEST_CASE("a regulator holds the draft near its setting", "[leaks]") {
    Installation in = plain();
    in.site.weather[0].outdoor_temperature_k = 258.15;
    in.run.insert(in.run.begin() + 2, straight_up(5.0, "insulated 25 mm", Zone::room));
    const double without = solved(made(in)).draft_pa;
    REQUIRE(without > 30.0);
    Part regulator = named(PartKind::draft_regulator);
    regulator.setting_pa = 15.0;
    in.run.insert(in.run.begin(), regulator);
    const Case c = made(in);
    const StateResult state = solved(c);
    const Station& at = station_of(c, state, 0);
    CHECK(at.joint_pressure_pa < -15.0);
    CHECK(at.joint_pressure_pa > -17.5);
    CHECK(state.draft_pa < 18.0);
    CHECK(at.leak_kg_s > 0.0);
    check_sums(c, state);

    in.run[0].setting_pa = 90.0;
    const StateResult shut = solved(made(in));
    CHECK(station_of(c, shut, 0).leak_kg_s == 0.0);
}

TEST_CASE("a hood takes room air in and keeps the outlet near room pressure", "[leaks]") {
    Installation in = plain();
    Part hood = named(PartKind::draft_hood);
    hood.open_area_m2 = 0.02;
    in.run.insert(in.run.begin(), hood);
    const Case c = made(in);
    const StateResult state = solved(c);
    const Station& at = station_of(c, state, 0);
    CHECK(at.leak_kg_s > 0.3 * state.gas_flow_kg_s);
    CHECK(std::abs(at.joint_pressure_pa) < 3.0);
    check_sums(c, state);
    // The cap shut tight: all of the gas comes out of the hood.
    in.run.back().loss = 1000.0;
    in.site.room.pressure_pa = -30.0;
    const StateResult spilling = solved(made(in));
    CHECK(spilling.status == Status::solved);
    CHECK(spilling.flow.leak_out_kg_s > 0.9 * spilling.gas_flow_kg_s);
}
