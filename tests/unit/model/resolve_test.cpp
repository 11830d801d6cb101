#include "plain_run.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

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
    in.appliance.carbon_dioxide.high = 0.30;
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
