#include "fluewright/model/march/probe_reading.hpp"
#include "plain_run.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <string>

using namespace fluewright;

namespace {

bool assumes(const Case& c, std::string_view pointer) {
    return std::any_of(c.assumptions.begin(), c.assumptions.end(), [&](const Assumption& a) {
        return a.pointer == pointer;
    });
}

} // namespace

TEST_CASE("every assumption names where to say it, what it is and where it is from") {
    Installation bare;
    bare.appliance.type = ApplianceType::stove;
    bare.appliance.outlet.diameter_m = 0.15;
    Part pipe;
    pipe.part = PartKind::straight;
    pipe.up_m = 4.0;
    bare.run.push_back(pipe);
    const Case c = plain::resolved(bare);
    CHECK(c.assumptions.size() > 10);
    for (const Assumption& a : c.assumptions) {
        INFO(a.pointer);
        CHECK(a.pointer.front() == '/');
        CHECK_FALSE(a.what.empty());
        CHECK_FALSE(a.source.empty());
        CHECK_FALSE(a.mark.empty());
        CHECK(std::isfinite(a.value));
    }
    CHECK(assumes(c, "/appliance/fuel/name"));
    CHECK(assumes(c, "/site/altitude"));
    CHECK(c.weathers.size() == 2);
}

TEST_CASE("what is written is taken, and not assumed") {
    const Case c = plain::resolved(plain::stack(4.0, 0.15, 0.5));
    CHECK(c.appliance.high.burn_rate_kg_s == 1.0e-3);
    CHECK(c.appliance.low.gas_temperature_k == 450.0);
    CHECK(c.appliance.high.draft_needed_pa == 12.0);
    CHECK(c.total_rise_m() == Approx(4.0));
    CHECK_FALSE(assumes(c, "/appliance/burn_rate/high"));
    CHECK_FALSE(assumes(c, "/appliance/draft_needed/high"));
    CHECK_FALSE(assumes(c, "/site/altitude"));
}

TEST_CASE("a low fire gives no hotter gas than the high fire of which the file tells") {
    Installation in = plain::stack(4.0, 0.15, 0.5);
    in.appliance.gas_temperature_k = {};
    in.appliance.gas_temperature_k.high = 420.0;
    const Case c = plain::resolved(in);
    CHECK(c.appliance.low.gas_temperature_k < c.appliance.high.gas_temperature_k);
    CHECK(assumes(c, "/appliance/gas_temperature/low"));
    in.appliance.gas_temperature_k.low = 410.0;
    const Case told = plain::resolved(in);
    CHECK(told.appliance.low.gas_temperature_k == 410.0);
    CHECK_FALSE(assumes(told, "/appliance/gas_temperature/low"));
}

TEST_CASE("what a bare probe has shown is less than the gas") {
    Installation in = plain::stack(4.0, 0.15, 0.01);
    const Case taken = plain::resolved(in);
    CHECK(assumes(taken, "/appliance/gas_temperature_kind"));
    in.appliance.gas_temperature_kind = GasReading::true_gas;
    const Case stated = plain::resolved(in);
    CHECK_FALSE(assumes(stated, "/appliance/gas_temperature_kind"));
    CHECK(stated.appliance.high.gas_temperature_k == 600.0);
    in.appliance.gas_temperature_kind = GasReading::bare_probe;
    const Case c = plain::resolved(in);
    const Firing& high = c.appliance.high;
    const Firing& low = c.appliance.low;
    CHECK(high.gas_temperature_k - 600.0 > low.gas_temperature_k - 450.0);
    CHECK(low.gas_temperature_k > 453.0);
    CHECK(high.gas_temperature_k < 690.0);
    CHECK(high.heat_to_flue_w > stated.appliance.high.heat_to_flue_w);
    CHECK(assumes(c, "/appliance"));
    // The march with that gas shows the probe what the file says.
    const FlueModel model = plain::burning(c);
    std::vector<Station> stations(model.station_count());
    model.solve(plain::gas(high.gas_flow_kg_s, high.gas_temperature_k), stations);
    CHECK(probe_reading_k(c.gas_high().products(),
                          high.gas_temperature_k,
                          wall_at_outlet_k(stations),
                          stations.front().velocity_m_s,
                          c.air_pressure_pa)
          == Approx(600.0).margin(0.1));
    // Where no heat passes the wall, wall and gas are one and the probe is right.
    const Case warm = [&] {
        Installation insulated = plain::stack(4.0, 0.15, 9.9);
        insulated.appliance.gas_temperature_kind = GasReading::bare_probe;
        return plain::resolved(insulated);
    }();
    CHECK(warm.appliance.high.gas_temperature_k == Approx(600.0).margin(2.0));
}

TEST_CASE("the gas at the outlet carries off what efficiency leaves") {
    Installation in = plain::stack(4.0, 0.15, 0.5);
    in.appliance.gas_temperature_k = {};
    in.appliance.efficiency.high = 0.70;
    const Case c = plain::resolved(in);
    const Firing& high = c.appliance.high;
    CHECK(high.heat_output_w == Approx(0.70 * high.heat_in_fuel_w));
    CHECK(high.heat_to_flue_w + high.heat_output_w < high.heat_in_fuel_w);
    CHECK(high.heat_to_flue_w > 0.2 * high.heat_in_fuel_w);
    CHECK(high.gas_flow_kg_s
          == Approx(high.burn_rate_kg_s * high.gas_per_fuel_kg_kg).epsilon(1e-12));
}

TEST_CASE("the heats of a fire close whatever the file states of it") {
    Installation in = plain::stack(4.0, 0.15, 0.5);
    in.appliance.gas_temperature_k = {};
    in.appliance.efficiency = {};
    in.appliance.gas_flow_kg_s = {};
    const auto missed = [](const Installation& written) {
        const Firing& f = plain::resolved(written).appliance.high;
        return (f.heat_output_w + f.heat_to_flue_w + f.heat_unburned_w) / f.heat_in_fuel_w - 1.0;
    };
    CHECK(missed(in) == Approx(0.0).margin(1e-6));
    in.appliance.gas_temperature_k.high = 550.0; // measured: the useful heat is the rest
    CHECK(missed(in) == Approx(0.0).margin(1e-6));
    const Case rest = plain::resolved(in);
    CHECK_FALSE(assumes(rest, "/appliance/efficiency/high"));
    in.appliance.gas_flow_kg_s.high = 1.2 * rest.appliance.high.gas_flow_kg_s;
    CHECK(missed(in) == Approx(0.0).margin(1e-6));
    // A flow measured beside the burn rate tells the air, unless the file does.
    in.appliance.air_ratio = {};
    const Case flowing = plain::resolved(in);
    CHECK(
        flowing.appliance.high.gas_flow_kg_s
        == Approx(flowing.appliance.high.burn_rate_kg_s * flowing.appliance.high.gas_per_fuel_kg_kg)
               .epsilon(0.01));
    in.appliance.gas_flow_kg_s = {};
    in.appliance.gas_temperature_k = {};
    in.appliance.heat_output_w.high = 0.6 * rest.appliance.high.heat_in_fuel_w;
    CHECK(missed(in) == Approx(0.0).margin(1e-6));
    CHECK(plain::resolved(in).appliance.high.heat_output_w
          == Approx(*in.appliance.heat_output_w.high));
}

TEST_CASE("properties carry on, and a change of size becomes a step") {
    Installation in = plain::stack(2.0, 0.15, 0.5);
    Part upper;
    upper.part = PartKind::straight;
    upper.up_m = 3.0;
    in.run.push_back(upper);
    upper.diameter_m = 0.20;
    in.run.push_back(upper);
    const Case c = plain::resolved(in);
    std::vector<PartKind> kinds;
    for (const Section& s : c.sections) {
        kinds.push_back(s.kind);
    }
    CHECK(kinds
          == std::vector<PartKind>{PartKind::collar,
                                   PartKind::straight,
                                   PartKind::straight,
                                   PartKind::increaser,
                                   PartKind::straight,
                                   PartKind::cap});
    CHECK(c.sections[2].wall == c.sections[1].wall);
    CHECK(c.sections[2].diameter_m == c.sections[1].diameter_m);
    CHECK(c.sections[3].length_m == 0.0);
    CHECK(c.sections[3].loss > 0.0);
    CHECK(c.sections[4].diameter_m == Approx(0.20));
}

TEST_CASE("a sloping straight has its length along the slope") {
    Installation in = plain::stack(2.0, 0.15, 0.5);
    Part level;
    level.part = PartKind::straight;
    level.across_m = 4.0;
    level.rise_m = 3.0;
    Part elbow;
    elbow.part = PartKind::elbow;
    in.run.push_back(elbow);
    in.run.push_back(level);
    level.rise_m.reset();
    level.slope = 0.02;
    elbow.angle_rad = 0.6;
    in.run.push_back(elbow);
    in.run.push_back(level);
    const Case c = plain::resolved(in);
    CHECK(c.sections[3].length_m == Approx(5.0));
    CHECK(c.sections[3].rise_m == 3.0);
    CHECK(c.sections[5].rise_m == Approx(0.08));
}

TEST_CASE("a deposit narrows and insulates") {
    Installation in = plain::stack(2.0, 0.15, 0.5);
    in.run.front().deposit_m = 0.005;
    in.run.front().deposit = DepositKind::flaky_creosote;
    const Case c = plain::resolved(in);
    const auto pipe = std::find_if(c.sections.begin(), c.sections.end(), [](const Section& s) {
        return s.kind == PartKind::straight;
    });
    CHECK(pipe->diameter_m == Approx(0.14));
    CHECK(pipe->area_m2 == Approx(std::numbers::pi / 4.0 * 0.14 * 0.14));
    CHECK(c.walls[pipe->wall].layer_count == 1);
    CHECK(c.walls[pipe->wall].layers[0].thickness_m == 0.005);
}

TEST_CASE("turns that follow each other closely lose more") {
    Installation apart = plain::stack(2.0, 0.15, 0.5);
    Part elbow;
    elbow.part = PartKind::elbow;
    elbow.angle_rad = std::numbers::pi / 4.0;
    elbow.build = Build::gored;
    Part between;
    between.part = PartKind::straight;
    between.across_m = between.rise_m = 4.0;
    Part behind;
    behind.part = PartKind::straight;
    behind.up_m = 6.0;
    apart.run.insert(apart.run.end(), {elbow, between, elbow, behind});
    Installation close = apart;
    close.run[2].across_m = close.run[2].rise_m = 0.15;
    const auto first_elbow = [](const Case& c) {
        return *std::find_if(c.sections.begin(), c.sections.end(), [](const Section& s) {
            return s.kind == PartKind::elbow;
        });
    };
    CHECK(first_elbow(plain::resolved(close)).loss > first_elbow(plain::resolved(apart)).loss);
}

TEST_CASE("contradictions are faults, all in one go, and never a case") {
    Installation in = plain::stack(2.0, 0.15, 0.5);
    in.appliance.gas_temperature_k = {};
    in.appliance.efficiency.high = 0.999;
    in.appliance.carbon_dioxide.high = 0.208;
    in.run.front().deposit_m = 0.09;
    const auto result = resolve(in);
    REQUIRE_FALSE(result);
    CHECK(result.error().size() >= 3);
    for (const Fault& fault : result.error()) {
        CHECK(fault.pointer.front() == '/');
        CHECK_FALSE(fault.message.empty());
        CHECK_FALSE(fault.help.empty());
    }
}

TEST_CASE("own names are found whatever the case of their letters") {
    Installation in = plain::stack(4.0, 0.15, 0.5);
    OwnFuel fuel;
    fuel.id = "briquettes";
    fuel.group = FuelGroup::wood;
    fuel.carbon = 0.50;
    fuel.hydrogen = 0.06;
    fuel.oxygen = 0.43;
    fuel.ash = 0.01;
    in.fuels.push_back(fuel);
    OwnWall wall;
    wall.id = "mine";
    wall.kind = WallKind::insulated;
    OwnLayer gap;
    gap.material = "air gap";
    gap.thickness_m = 0.02;
    OwnLayer sheet;
    sheet.material = "carbon steel";
    sheet.thickness_m = 0.001;
    wall.layers = {sheet, gap, sheet};
    in.walls.push_back(wall);
    OwnFitting fitting;
    fitting.id = "spark trap";
    fitting.loss = 1.7;
    in.fittings.push_back(fitting);
    Part trap;
    trap.part = PartKind::fitting;
    trap.fitting = "spark trap";
    in.run.push_back(trap);
    in.run.front().wall = "mine";
    in.appliance.fuel.name = "briquettes";
    const Case exact = plain::resolved(in);
    in.run.front().wall = " MINE";
    in.run.back().fitting = "Spark Trap";
    in.appliance.fuel.name = "Briquettes ";
    in.walls.back().layers[1].material = "Air Gap";
    const Case typed = plain::resolved(in);
    CHECK(typed.appliance.fuel == exact.appliance.fuel);
    CHECK(typed.appliance.net_heating_value_j_kg == exact.appliance.net_heating_value_j_kg);
    REQUIRE(typed.sections.size() == exact.sections.size());
    for (std::size_t i = 0; i < exact.sections.size(); ++i) {
        CHECK(typed.sections[i].loss == exact.sections[i].loss);
        CHECK(typed.walls[typed.sections[i].wall].id == exact.walls[exact.sections[i].wall].id);
    }
    in.walls.push_back(in.walls.back());
    in.walls.back().id = "Mine";
    const auto twice = resolve(in);
    REQUIRE_FALSE(twice);
    CHECK(twice.error().front().pointer == "/walls/Mine");
}

TEST_CASE("what a file cannot say is a fault in code, too") {
    const auto pointer_of = [](const Installation& in) {
        const auto made = resolve(in);
        return made ? std::string{} : made.error().front().pointer;
    };
    const Installation sound = plain::stack(4.0, 0.15, 0.5);
    Installation in = sound;
    in.run.front().part = PartKind::elbow; // and keeps its length
    CHECK(pointer_of(in) == "/run/0/up");
    in = sound;
    in.run.front().part.reset();
    CHECK(pointer_of(in) == "/run/0");
    in = sound;
    in.run.front().part = PartKind::collar;
    CHECK(pointer_of(in) == "/run/0/part");
    in = sound;
    in.run.clear();
    CHECK(pointer_of(in) == "/run");
    in = sound;
    in.appliance.outlet.end = PipeEnd::open;
    CHECK(pointer_of(in) == "/appliance/outlet/end");
    in = sound;
    in.run.front().zone = static_cast<Zone>(9);
    CHECK(pointer_of(in) == "/run/0/zone");
    in = sound;
    in.appliance.burn_rate_kg_s.low = std::numeric_limits<double>::quiet_NaN();
    CHECK(pointer_of(in) == "/appliance/burn_rate/low");
    in = sound;
    in.tolerances.push_back({"/run/0/diameter", -0.01});
    CHECK(pointer_of(in) == "/run/0/diameter");
    in = sound;
    in.walls.front().thermal_resistance_m2k_w.reset();
    in.walls.front().layers.resize(8, OwnLayer{"carbon steel", 0.001, {}});
    CHECK(pointer_of(in) == "/walls/plain/layers");
}

TEST_CASE("a fuel of one's own that cannot burn is refused at its place, and nothing else is") {
    const auto fault_of = [](OwnFuel fuel) {
        fuel.id = "odd";
        fuel.group = FuelGroup::wood;
        Installation in = plain::stack(5.0, 0.15, 0.3);
        in.appliance.fuel.name = "odd";
        in.fuels.push_back(fuel);
        const auto made = resolve(with_outdoor_top(in));
        REQUIRE_FALSE(made);
        REQUIRE(made.error().size() == 1);
        CHECK(made.error().front().pointer == "/fuels/odd");
        return made.error().front().message;
    };
    OwnFuel ash;
    ash.ash = 1.0;
    CHECK(fault_of(ash).find("takes 0 kg of air") != std::string::npos);
    OwnFuel oxygen;
    oxygen.oxygen = 1.0;
    CHECK(fault_of(oxygen).find("cannot burn") != std::string::npos);
    // Carbon burned already: 27.3 % of carbon dioxide is carbon (molar masses, IUPAC).
    OwnFuel burned;
    burned.carbon = 0.273;
    burned.oxygen = 0.727;
    CHECK(fault_of(burned).find("cannot burn") != std::string::npos);
    OwnFuel wet;
    wet.carbon = 0.08;
    wet.ash = 0.92;
    wet.moisture = 0.7;
    CHECK(fault_of(wet).find("net heating value") != std::string::npos);
}

TEST_CASE("a burn rate that follows from another figure keeps the limits of one that is written") {
    const auto fault_of = [](const std::function<void(Appliance&)>& set) {
        Installation in = plain::stack(5.0, 0.15, 0.3);
        in.appliance.burn_rate_kg_s = {};
        set(in.appliance);
        const auto made = resolve(with_outdoor_top(in));
        REQUIRE_FALSE(made);
        CHECK(made.error().front().message.find("burn rate of") != std::string::npos);
        return made.error().front().pointer;
    };
    // 1 MW of wood with 15 MJ/kg is 240 kg/h; with 70 % of water some four times that.
    CHECK(fault_of([](Appliance& a) {
              a.heat_input_w.high = 1e6;
              a.fuel.moisture = 0.7;
          })
          == "/appliance/heat_input/high");
    CHECK(fault_of([](Appliance& a) { a.heat_input_w.high = 100.0; })
          == "/appliance/heat_input/high");
    CHECK(fault_of([](Appliance& a) {
              a.burn_rate_kg_s.high = 500.0 / 3600.0;
              a.burn_rate_basis = BurnRateBasis::dry;
          })
          == "/appliance/burn_rate/high");
}
