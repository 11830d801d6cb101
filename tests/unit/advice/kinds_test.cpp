// Every kind of heater by its own measure: what parts them.
#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/checks/told.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/advice/remedies/remedy.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/model/catalog/trade_equivalents.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "fluewright/model/standards/listing_basis.hpp"
#include "plain_run.hpp"

#include <algorithm>
#include <string>
#include <utility>

using namespace fluewright;

namespace {

Part pipe(double up_m, std::string_view wall, Zone zone) {
    Part part;
    part.part = PartKind::straight;
    part.up_m = up_m;
    part.wall = std::string{wall};
    part.zone = zone;
    return part;
}

/// 0.8 x 0.65 m under a round flue of that share of the opening.
Installation hearth(double opening_over_flue, double room_pa = 0.0) {
    Installation in = plain::stack(5.0, 0.15, 0.3);
    in.site.room.pressure_pa = room_pa;
    in.appliance = {};
    in.appliance.type = ApplianceType::fireplace;
    in.appliance.fuel.name = "oak";
    in.appliance.door.width_m = 0.8;
    in.appliance.door.height_m = 0.65;
    in.appliance.door.sill_height_m = 0.0;
    in.appliance.outlet.height_m = 0.95;
    in.appliance.outlet.diameter_m = std::sqrt(4.0 / 3.14159265 * 0.52 / opening_over_flue);
    in.run = {pipe(4.6, "clay-lined masonry", Zone::room),
              pipe(0.5, "clay-lined masonry", Zone::outdoors)};
    in.run.front().diameter_m = in.appliance.outlet.diameter_m;
    return in;
}

Assessment answer(const Installation& in) {
    auto made = assess(in, {.size_search = false});
    REQUIRE(made.has_value());
    return std::move(made).value();
}

bool finds(const Assessment& a, std::string_view id) {
    return std::any_of(
        a.findings.begin(), a.findings.end(), [&](const Finding& f) { return f.matter->id == id; });
}

std::vector<RemedyKind> offered(const Installation& in) {
    std::vector<RemedyKind> kinds;
    for (const Remedy& remedy : possible_remedies(in, plain::resolved(in))) {
        kinds.push_back(remedy.kind);
    }
    return kinds;
}

bool has(const std::vector<RemedyKind>& kinds, RemedyKind kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

} // namespace

TEST_CASE("a column of kinds holds names, a group or nothing") {
    CHECK(applies_to("", HeaterKind::gas));
    CHECK(applies_to("oil|gas", HeaterKind::gas));
    CHECK_FALSE(applies_to("oil|gas with a hood", HeaterKind::gas));
    CHECK(applies_to("fed by hand", HeaterKind::masonry_heater));
    CHECK_FALSE(applies_to("fed by hand", HeaterKind::pellets));
    CHECK(every_kind.has(HeaterKind::gas_hood));
    CHECK_FALSE(burners.others().has(HeaterKind::oil));
    CHECK(kind_of(ApplianceType::stove, FuelGroup::pellets) == HeaterKind::pellets);
    CHECK(kind_of(ApplianceType::draft_hood, FuelGroup::gas) == HeaterKind::gas_hood);
    CHECK(kind_of(ApplianceType::fireplace, FuelGroup::coal) == HeaterKind::open_fire);
}

TEST_CASE("sizes of two markets stand for each other") {
    CHECK(catalog::are_trade_equivalents(0.150, 0.1524));
    CHECK(catalog::are_trade_equivalents(0.2032, 0.2));
    CHECK_FALSE(catalog::are_trade_equivalents(0.150, 0.150));
    CHECK_FALSE(catalog::are_trade_equivalents(0.130, 0.127));
    CHECK_FALSE(catalog::are_trade_equivalents(0.160, 0.1524));
}

TEST_CASE("a hotter fire takes no more air through an open front") {
    Installation in = hearth(10.0);
    in.appliance.burn_rate_kg_s.high = 4.0 / 3600.0;
    const Case small = plain::resolved(in);
    in.appliance.burn_rate_kg_s.high = 12.0 / 3600.0;
    const Case large = plain::resolved(in);
    CHECK(large.appliance.high.gas_flow_kg_s
          == Approx(small.appliance.high.gas_flow_kg_s).epsilon(0.03));
    CHECK(large.appliance.high.gas_temperature_k > small.appliance.high.gas_temperature_k + 80.0);
    const Solution cool = solve(small, Detail::totals);
    const Solution hot = solve(large, Detail::totals);
    const auto share = [](const Solution& s) {
        return std::find_if(
                   s.states.begin(),
                   s.states.end(),
                   [](const StateResult& r) { return r.kind == StateKind::door_open_high; })
            ->door.opening_share;
    };
    CHECK(share(hot) > share(cool));
}

TEST_CASE("high fire and open front say the same of a hearth") {
    for (const double ratio : {8.0, 12.0, 16.0, 20.0, 25.0}) {
        const Case c = plain::resolved(hearth(ratio));
        const Solution solved = solve(c, Detail::totals);
        for (const StateResult& front : solved.states) {
            if (front.kind != StateKind::door_open_high) {
                continue;
            }
            const auto fire =
                std::find_if(solved.states.begin(), solved.states.end(), [&](const StateResult& s) {
                    return s.kind == StateKind::high_fire && s.weather == front.weather;
                });
            CAPTURE(ratio, front.door.opening_share, fire->margin_pa());
            CHECK((front.door.opening_share >= 1.0) == (fire->margin_pa() >= 0.0));
        }
    }
}

TEST_CASE("a hearth that smokes on embers does not pass") {
    const Assessment a = answer(hearth(10.0, -12.0));
    bool embers_count = false;
    for (std::size_t i = 0; i < a.verdicts.size(); ++i) {
        if (a.solution.states[i].kind == StateKind::door_open_embers) {
            embers_count = a.verdicts[i].counts && !a.verdicts[i].passes;
        }
    }
    CHECK(embers_count);
    CHECK_FALSE(a.works());
    CHECK(finds(a, "smoke-at-front"));
    CHECK(a.verdict.of(Harm::fire).outcome == HarmOutcome::falls_short);
    CHECK(condition_word(a.installation, StateKind::door_open_embers) == "open front, embers");
}

TEST_CASE("a throat and a second open side take from a hearth") {
    const Installation whole = hearth(10.0);
    const auto share = [](const Installation& in) {
        const Solution s = solve(plain::resolved(in), Detail::totals);
        return std::find_if(
                   s.states.begin(),
                   s.states.end(),
                   [](const StateResult& r) { return r.kind == StateKind::door_open_high; })
            ->door.opening_share;
    };
    Installation narrow = whole;
    narrow.appliance.door.throat_m2 = 0.02;
    CHECK(share(narrow) < 0.8 * share(whole));
    Installation wide_throat = whole;
    wide_throat.appliance.door.throat_m2 = 0.2;
    CHECK(share(wide_throat) == Approx(share(whole)));
    Installation corner = whole;
    corner.appliance.door.open_width_m = 1.6;
    CHECK(share(corner) < 0.7 * share(whole));
    CHECK(flue_over_opening(plain::resolved(corner))
          == Approx(0.5 * flue_over_opening(plain::resolved(whole))));
}

TEST_CASE("masons and burners are offered what is theirs") {
    const auto masons = offered(hearth(20.0));
    CHECK(has(masons, RemedyKind::lower_door_opening));
    CHECK(has(masons, RemedyKind::raise_hearth));
    CHECK(has(masons, RemedyKind::fit_insert));
    CHECK_FALSE(has(masons, RemedyKind::fit_damper));
    CHECK_FALSE(has(masons, RemedyKind::fit_regulator));
    CHECK_FALSE(has(masons, RemedyKind::brisk_low_fire));
    Installation gas = plain::stack(5.0, 0.15, 0.3);
    gas.appliance = {};
    gas.appliance.type = ApplianceType::draft_hood;
    gas.appliance.heat_input_w.high = 2e4;
    gas.appliance.outlet.diameter_m = 0.15;
    const auto fitter = offered(gas);
    CHECK_FALSE(has(fitter, RemedyKind::fit_damper));
    CHECK_FALSE(has(fitter, RemedyKind::fit_regulator));
    CHECK_FALSE(has(fitter, RemedyKind::smaller_fire));
    CHECK(has(fitter, RemedyKind::raise_top));
}

TEST_CASE("a fan gives what natural draft would have to") {
    Installation in = plain::stack(1.0, 0.08, 0.3);
    in.appliance = {};
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "pellets";
    in.appliance.outlet.diameter_m = 0.08;
    in.appliance.burn_rate_kg_s.high = 1.5 / 3600.0;
    in.appliance.gas_temperature_k.high = 423.15;
    CHECK_FALSE(plain::resolved(in).appliance.has_low_fire);
    in.appliance.fan_pressure_pa.high = 25.0;
    const Case c = plain::resolved(in);
    CHECK(c.appliance.high.draft_needed_pa == Approx(-25.0));
    CHECK(c.appliance.pushed_by_fan);
    in.appliance.draft_needed_pa.high = 10.0;
    CHECK_FALSE(resolve(in).has_value()); // one or the other
}

TEST_CASE("a charge burns at one rate") {
    Installation in = plain::stack(6.0, 0.2, 0.3);
    in.appliance = {};
    in.appliance.type = ApplianceType::masonry_heater;
    in.appliance.fuel.name = "birch";
    in.appliance.outlet.diameter_m = 0.2;
    in.appliance.charge_kg = 15.0;
    in.appliance.burn_time_s = 5400.0;
    const Case c = plain::resolved(in);
    CHECK(c.appliance.high.burn_rate_kg_s == Approx(15.0 / 5400.0));
    CHECK_FALSE(c.appliance.has_low_fire);
    CHECK(std::none_of(c.assumptions.begin(), c.assumptions.end(), [](const Assumption& a) {
        return a.what.find("low fire") != std::string::npos;
    }));
    in.appliance.burn_rate_kg_s.low = 1e-3;
    CHECK_FALSE(resolve(in).has_value());
}

TEST_CASE("the listing basis is for gas") {
    Installation in = plain::stack(5.0, 0.15, 0.3);
    CHECK_FALSE(listing_basis::of(in).has_value());
    in.appliance.fuel.name = "natural gas";
    in.appliance.fuel.moisture.reset();
    in.appliance.type = ApplianceType::furnace;
    in.appliance.heat_input_w.high = 2e4;
    const auto listed = listing_basis::of(in);
    REQUIRE(listed.has_value());
    CHECK(listed->appliance.heat_input_w.high == in.appliance.heat_input_w.high);
    CHECK(listed->site.weather.size() == 1);
    CHECK(listed->site.room.pressure_pa == 0.0);
    Installation liner = in;
    liner.run.front().wall = "flexible liner";
    CHECK(*listing_basis::of(liner)->appliance.heat_input_w.high
          == Approx(2e4 / listing_basis::corrugated_share));
}

TEST_CASE("walls serve the fuels they are made for") {
    Installation in = plain::stack(5.0, 0.15, 0.3);
    in.walls.clear();
    for (const auto& [wall, wrong] : {std::pair{"type b vent", true},
                                      std::pair{"single-wall galvanized", true},
                                      std::pair{"aluminum liner", true},
                                      std::pair{"insulated 25 mm", false}}) {
        CAPTURE(wall);
        in.run = {pipe(4.0, wall, Zone::room), pipe(1.0, wall, Zone::outdoors)};
        in.run.front().diameter_m = 0.15;
        CHECK(finds(answer(in), "chimney-class-too-low") == wrong);
    }
}

TEST_CASE("a tapered smoke chamber lets more in than a sharp edge") {
    Installation in = hearth(10.0);
    const auto heads = [&](std::optional<SmokeChamber> chamber) {
        in.appliance.door.smoke_chamber = chamber;
        return front_heads(plain::resolved(in).appliance);
    };
    CHECK(heads(std::nullopt) == Approx(1.5));
    CHECK(heads(SmokeChamber::none) == Approx(1.5));
    CHECK(heads(SmokeChamber::corbelled) == Approx(1.3));
    CHECK(heads(SmokeChamber::tapered) == Approx(1.1));
}

TEST_CASE("an insert makes a closed heater of a fireplace") {
    Installation in = hearth(10.0);
    in.appliance.insert = true;
    in.appliance.burn_rate_kg_s.high = 3.0 / 3600.0;
    CHECK(kind_of(in) == HeaterKind::closed_fire);
    const Case closed = plain::resolved(in);
    CHECK_FALSE(has_open_front(closed.appliance));
    CHECK(kind_of(closed.appliance) == HeaterKind::closed_fire);
    // Its flue is that of the collar, and then of twice its area: masonry wants a liner.
    CHECK_FALSE(finds(answer(in), "flue-far-larger-than-outlet"));
    in.run.front().diameter_m = 1.41 * *in.appliance.outlet.diameter_m;
    CHECK(finds(answer(in), "flue-far-larger-than-outlet"));
    in.run.front().diameter_m = in.appliance.outlet.diameter_m;
    in.appliance.insert = false;
    CHECK(has_open_front(plain::resolved(in).appliance));
    in.appliance.insert = true;
    in.appliance.type = ApplianceType::stove;
    const auto fault = resolve(in);
    REQUIRE_FALSE(fault.has_value());
    CHECK(fault.error().front().pointer == "/appliance/insert");
}

TEST_CASE("a flue of masonry is sized by clay liners, or by a round liner in it") {
    const Result<SizeTable, Faults> table = tabulate_sizes(hearth(16.0), {});
    REQUIRE(table.has_value());
    CHECK(table->varies_masonry);
    REQUIRE(table->suggested);
    const SizeRow& taken = table->rows[*table->suggested];
    CHECK_FALSE(taken.clay_liner.empty());
    CHECK(taken.area_over_outlet > 1.0);
    double narrower = 0.0;
    for (const SizeRow& row : table->rows) {
        REQUIRE(row.score);
        if (!row.clay_liner.empty()) {
            CHECK(row.area_over_outlet >= narrower);
            narrower = row.area_over_outlet;
            CHECK((row.score->passes || row.area_over_outlet < taken.area_over_outlet));
        }
        CHECK((!row.lines_masonry() || row.area_over_outlet < 0.9));
    }
    CHECK(table->rows.front().present);
    CHECK_FALSE(table->rows.front().score->passes);
}

TEST_CASE("on the listing basis a sea-level input counts at any altitude") {
    // Mechanical code of California 2013, 803.1.5: the tables take the input at sea level.
    Installation in = plain::stack(5.0, 0.1016, 0.1);
    in.appliance = {};
    in.appliance.type = ApplianceType::draft_hood;
    in.appliance.fuel.name = "natural gas";
    in.appliance.heat_input_w.high = 18000.0;
    in.appliance.outlet.diameter_m = 0.1016;
    const auto margin_pa = [&](double altitude_m, bool listed) {
        in.site.altitude_m = altitude_m;
        const Installation asked = listed ? listing_basis::of(in).value() : in;
        return solve(plain::resolved(asked), Detail::totals).states.front().margin_pa();
    };
    CHECK(margin_pa(2000.0, true) == Approx(margin_pa(0.0, true)));
    CHECK(margin_pa(2000.0, false) < margin_pa(0.0, false) - 0.1);
}
