// Why a fire starves, and what shortens a warm-up.
#include "catch.hpp"
#include "fluewright/advice/upkeep/warmup_hints.hpp"
#include "fluewright/io/report/report_warmup.hpp"
#include "warm_stove.hpp"

#include <algorithm>
#include <span>

using namespace fluewright;
using namespace fluewright::warm_stove;

TEST_CASE("Why a fire starves follows from the figures of the moment") {
    const Starving cold{.lift_pa = -1.0, .room_pa = -3.0, .heater_pa = 12.0, .run_pa = 2.0};
    CHECK(cold.why() == Starved::by_the_flue);
    Starving s = cold;
    s.lift_pa = 2.0; // the room takes all of it
    CHECK(s.why() == Starved::by_the_room);
    s.lift_pa = 10.0;
    CHECK(s.why() == Starved::by_the_heater);
    s.run_pa = 12.5;
    CHECK(s.why() == Starved::by_the_run);
    s.lift_pa = 24.5; // enough but for the room
    CHECK(s.why() == Starved::by_the_room);
    s.room_pa = 0.0;
    CHECK(s.why() != Starved::by_the_room);
}

TEST_CASE("A starved fire has a worst moment, and its balance explains it") {
    Installation written = stove_on("single-wall steel", "insulated 25 mm");
    written.site.room.pressure_pa = -30.0;
    const Warmup weak = warm(written, 30.0);
    REQUIRE(weak.worst_starved);
    const Starving& worst = *weak.worst_starved;
    CHECK(worst.flow_kg_s < worst.asked_kg_s);
    CHECK(worst.room_pa == Approx(-30.0));
    CHECK(worst.why() == Starved::by_the_room);
    // Less than a trickle would need: what the flue lifts, the room takes.
    CHECK(worst.lift_pa + worst.room_pa < worst.heater_pa + worst.run_pa);
    for (const WarmupMoment& m : weak.moments) {
        CHECK((!m.starved || m.gas_flow_kg_s >= worst.flow_kg_s * (1.0 - 1e-9)));
    }
}

TEST_CASE("The heats of the parts are those of the run while the fire burns") {
    Installation written = stove_on("single-wall steel", "clay-lined masonry");
    written.burn = {burn(60.0, 2.5)};
    const Warmup w = warm(written, 30.0);
    double taken_j = 0.0;
    double lost_j = 0.0;
    for (const WarmupPart& part : w.parts) {
        taken_j += part.taken_j;
        lost_j += part.lost_j;
    }
    CHECK(taken_j == Approx(taken_while_lit_j(w)));
    if (!w.fire_out_s) {
        CHECK(taken_j == Approx(w.balance.given_j).epsilon(1e-6));
        CHECK(lost_j == Approx(w.balance.lost_j).epsilon(1e-6));
    }
    CHECK(taken_j > lost_j);
}

TEST_CASE("What shortens a warm-up follows from where its heat goes") {
    const auto hints = [](const Installation& written) {
        const Case made = *resolve(written);
        std::vector<Quicker> list;
        for (const WarmupHint& hint : warmup_hints(made, 0, warm_up(made, {.step_s = 60.0}))) {
            list.push_back(hint.what);
        }
        return list;
    };
    const auto has = [](const std::vector<Quicker>& list, Quicker what) {
        return std::find(list.begin(), list.end(), what) != list.end();
    };
    const auto heavy = hints(stove_on("single-wall steel", "clay-lined masonry"));
    CHECK(has(heavy, Quicker::lighter_wall));
    CHECK_FALSE(has(heavy, Quicker::liner_to_size));
    CHECK_FALSE(has(heavy, Quicker::preheat));

    Installation bare = stove_on("single-wall steel", "single-wall steel");
    const auto losing = hints(bare);
    CHECK(has(losing, Quicker::insulate));
    CHECK_FALSE(has(losing, Quicker::lighter_wall));

    Installation wide = stove_on("single-wall steel", "clay-lined masonry");
    for (std::size_t i : {2U, 3U}) {
        wide.run[i].diameter_m = 0.25;
    }
    CHECK(has(hints(wide), Quicker::liner_to_size));

    Installation sucked = stove_on("single-wall steel", "insulated 25 mm");
    sucked.site.room.pressure_pa = -8.0;
    const auto turned = hints(sucked);
    REQUIRE_FALSE(turned.empty());
    CHECK(turned.front() == Quicker::preheat);
}

TEST_CASE("A cool wall is slow only where the smoke makes creosote") {
    Case made = *resolve(stove_on("single-wall steel", "insulated 25 mm"));
    Warmup course;
    course.parts.resize(1);
    course.draft_met.from_s = 60.0;
    course.dry_s = 900.0;
    CHECK(is_slow(made, course)); // never clean
    course.clean_s = 900.0;
    CHECK_FALSE(is_slow(made, course));
    course.dry_s = 901.0;
    CHECK(is_slow(made, course));
    course.dry_s = 900.0;
    course.clean_s.reset();
    made.appliance.fuel_group = FuelGroup::gas;
    CHECK_FALSE(is_slow(made, course));
}

TEST_CASE("The report says why a fire starves and what to do about it") {
    using Catch::Matchers::Contains;
    Installation written = stove_on("single-wall steel", "insulated 25 mm");
    written.site.room.pressure_pa = -30.0;
    const Case made = *resolve(written);
    const WarmupInWeather in{.weather = 0, .course = warm_up(made, {.step_s = 60.0})};
    WarmupReportOptions options;
    options.style.width = 10000;
    const std::string text = warmup_text(made, std::span{&in, 1}, options);
    CHECK_THAT(text, Contains("but the room is 30 Pa below outdoors"));
    CHECK_THAT(text, Contains("Let air into the room."));
    CHECK_THAT(text, Contains("warm it and open a window before lighting."));
}

TEST_CASE("A fan pushes while it runs, and stands in the way when it is off") {
    Installation written = stove_on("insulated 25 mm", "insulated 25 mm");
    written.appliance.fuel = {};
    written.appliance.fuel.name = "pellets";
    written.appliance.draft_needed_pa = {};
    written.appliance.fan_pressure_pa.high = 20.0;
    written.site.room.pressure_pa = -5.0; // more than the cold flue lifts
    const Warmup course = warm(written, 300.0);
    REQUIRE(course.fire_out_s);
    for (const WarmupMoment& m : course.moments) {
        const bool out = m.time_s > *course.fire_out_s;
        CHECK((out || !m.starved));
        if (out) {
            CHECK(m.gas_flow_kg_s < 2.0 * course.moments.front().gas_flow_kg_s); // the flue is hot
        }
    }
}

TEST_CASE("A burner keeps its rate whatever the flue draws") {
    Installation written = stove_on("single-wall steel", "insulated 25 mm");
    written.site.room.pressure_pa = -2.0;
    written.appliance = {};
    written.appliance.type = ApplianceType::boiler;
    written.appliance.fuel.name = "heating oil";
    written.appliance.heat_input_w.high = 25000.0;
    written.appliance.outlet.diameter_m = 0.15;
    written.burn.clear();
    const Warmup oil = warm(written, 30.0);
    const double rate_kg_s = oil.phases.front().start_kg_s;
    const double flow_kg_s = oil.moments.front().gas_flow_kg_s;
    bool wanted_more = false;
    for (const WarmupMoment& m : oil.moments) {
        if (oil.phases[m.phase].out) {
            break;
        }
        CHECK(m.burn_rate_kg_s == Approx(rate_kg_s));
        CHECK(m.gas_flow_kg_s == Approx(flow_kg_s));
        wanted_more = wanted_more || m.starved;
    }
    CHECK(wanted_more); // while the flue is cold it draws less than the burner asks

    written.appliance = {};
    written.appliance.type = ApplianceType::draft_hood;
    written.appliance.fuel.name = "natural gas";
    written.appliance.heat_input_w.high = 25000.0;
    written.appliance.outlet.diameter_m = 0.15;
    written.site.room.pressure_pa = -20.0;
    const Warmup hood = warm(written, 30.0);
    for (const WarmupMoment& m : hood.moments) {
        if (hood.phases[m.phase].out) {
            break;
        }
        CHECK(m.burn_rate_kg_s == Approx(hood.phases.front().start_kg_s));
        CHECK(m.starved); // all of it comes out of the hood
    }
    CHECK(hood.moments.back().gas_flow_kg_s < 0.1 * hood.worst_starved->asked_kg_s);
}
