#include "../plain_run.hpp"

#include <algorithm>

using namespace fluewright;

namespace {

Installation in_the_open(Shelter shelter) {
    Installation in = plain::stack(4.0, 0.15, 0.01);
    in.site.room = {};
    in.site.shelter = shelter;
    return in;
}

/// The same stove with nothing said of its room.
Installation in_a_house() {
    Installation in = plain::stack(6.0, 0.15, 0.05);
    in.site.room = {};
    in.site.room.temperature_k = 293.15;
    return in;
}

Faults faults_of(const Installation& in) {
    const auto made = resolve(with_outdoor_top(in));
    return made ? Faults{} : made.error();
}

bool names(const Faults& faults, std::string_view pointer) {
    return std::any_of(
        faults.begin(), faults.end(), [&](const Fault& fault) { return fault.pointer == pointer; });
}

bool is_assumed(const Case& c, std::string_view pointer) {
    return std::any_of(c.assumptions.begin(), c.assumptions.end(), [&](const Assumption& a) {
        return a.pointer == pointer;
    });
}

double room_pa(const Case& c, StateKind kind) {
    const Solution solution = solve(c, Detail::totals);
    const auto found = std::find_if(solution.states.begin(),
                                    solution.states.end(),
                                    [&](const StateResult& s) { return s.kind == kind; });
    REQUIRE(found != solution.states.end());
    return found->room.pressure_pa;
}

} // namespace

TEST_CASE("in the open the air round the heater is that of the weather") {
    for (const Shelter shelter : {Shelter::open_shed, Shelter::outdoors}) {
        const Case c = plain::resolved(in_the_open(shelter));
        const Surroundings air = surroundings_of(c, 0, Fire::burning);
        CHECK(air.temperature_k[static_cast<std::size_t>(Zone::room)] == 273.15);
        CHECK(air.density_kg_m3[static_cast<std::size_t>(Zone::room)] == air.outdoor_density_kg_m3);
        CHECK(air.room_pressure_pa == 0.0);
        CHECK_FALSE(air.house.known());
        // The idle column is as cold as the air beside it.
        CHECK(solve_state(
                  FlueModel(c, surroundings_of(c, 0, Fire::out)), StateKind::idle, Detail::totals)
                  .draft_pa
              == Approx(0.0).margin(1e-12));
        CHECK_FALSE(is_assumed(c, "/site/room/temperature"));
        CHECK_FALSE(is_assumed(c, "/site/house/volume"));
    }
}

TEST_CASE("what is said of a room that is not there is refused where it stands") {
    Installation in = in_the_open(Shelter::outdoors);
    in.site.room.pressure_pa = -2.0;
    CHECK(names(faults_of(in), "/site/room"));
    in = in_the_open(Shelter::open_shed);
    in.site.room.temperature_k = 293.15;
    CHECK(names(faults_of(in), "/site/room"));
    in = in_the_open(Shelter::open_shed);
    in.site.house.volume_m3 = 200.0;
    CHECK(names(faults_of(in), "/site/house"));
    in = in_the_open(Shelter::outdoors);
    in.site.weather[0].room_temperature_k = 290.0;
    CHECK(names(faults_of(in), "/site/weather/0/room_temperature"));
}

TEST_CASE("nothing said of the room makes a house, and says so") {
    const Case c = plain::resolved(in_a_house());
    for (const std::string_view pointer : {"/site/shelter",
                                           "/site/house/height",
                                           "/site/house/volume",
                                           "/site/house/air_changes_at_50_pa",
                                           "/site/house/appliance_level"}) {
        CAPTURE(pointer);
        CHECK(is_assumed(c, pointer));
    }
    // 20 K of warmth over the upper half of 5 m, less the outlet's height: two pascals and more.
    const double idle = room_pa(c, StateKind::idle);
    CHECK(idle < -1.0);
    CHECK(idle > -3.0);
    CHECK(room_pa(c, StateKind::high_fire) < idle);
    CHECK(room_pa(c, StateKind::door_open_high) < room_pa(c, StateKind::high_fire));
}

TEST_CASE("a workshop of one room is that room, and no house is smaller than its room") {
    const auto volume = [](const Installation& in) {
        const Case c = plain::resolved(in);
        for (const Assumption& a : c.assumptions) {
            if (a.pointer == "/site/house/volume") {
                return a.value;
            }
        }
        return 0.0;
    };
    Installation in = in_a_house();
    in.site.room.volume_m3 = 70.0;
    const auto by_fire_pa = [](const Installation& of) {
        const Case c = plain::resolved(of);
        return room_pa(c, StateKind::high_fire) - room_pa(c, StateKind::idle);
    };
    const double in_house_pa = by_fire_pa(in);
    CHECK(volume(in) == 300.0); // a room of a house
    in.site.room.volume_m3 = 700.0;
    CHECK(volume(in) == 700.0); // a hall
    in.site.shelter = Shelter::one_room;
    in.site.room.volume_m3 = 70.0;
    CHECK(volume(in) == 70.0);
    CHECK(plain::resolved(in).house.height_m == Approx(2.7));
    // A tighter shell holds back the air that the fire takes; a low one draws less by itself.
    CHECK(by_fire_pa(in) < in_house_pa);
    CHECK(room_pa(plain::resolved(in), StateKind::idle) > -1.0);
    in.site.room.volume_m3.reset();
    CHECK(volume(in) == 80.0);
    in.site.house.volume_m3 = 120.0;
    in.site.house.height_m = 4.0;
    CHECK(volume(in) == 0.0); // given
    CHECK(plain::resolved(in).house.height_m == 4.0);
}

TEST_CASE("the house draws less the warmer it is outdoors, and not at all at equal warmth") {
    Installation in = in_a_house();
    double before = -100.0;
    for (const double outdoor_k : {253.15, 273.15, 283.15}) {
        in.site.weather[0].outdoor_temperature_k = outdoor_k;
        const double idle = room_pa(plain::resolved(in), StateKind::idle);
        CHECK(idle > before);
        before = idle;
    }
    in.site.weather[0].outdoor_temperature_k = 293.15;
    in.site.weather[0].relative_humidity = 0.5;
    in.site.room.relative_humidity = 0.5;
    CHECK(room_pa(plain::resolved(in), StateKind::idle) == Approx(0.0).margin(1e-6));
}

TEST_CASE("one of two pressures leaves the other to the house") {
    Installation in = in_a_house();
    in.site.room.pressure_burning_pa = -4.0;
    Case c = plain::resolved(in);
    CHECK(room_pa(c, StateKind::high_fire) == -4.0);
    CHECK(room_pa(c, StateKind::idle) < -1.0);
    CHECK(room_pa(c, StateKind::idle) > -3.0);
    in.site.room.pressure_burning_pa.reset();
    in.site.room.pressure_idle_pa = 0.5;
    c = plain::resolved(in);
    CHECK(room_pa(c, StateKind::idle) == 0.5);
    CHECK(room_pa(c, StateKind::high_fire) < -1.0);
    // One figure is both, with fans and fire as they are.
    in.site.room.pressure_idle_pa.reset();
    in.site.room.pressure_pa = -2.0;
    c = plain::resolved(in);
    CHECK(room_pa(c, StateKind::high_fire) == -2.0);
    CHECK(room_pa(c, StateKind::idle) == -2.0);
    CHECK_FALSE(is_assumed(c, "/site/house/volume"));
}

TEST_CASE("a tight house is pulled lower by the same fire") {
    Installation loose = in_a_house();
    loose.site.weather[0].outdoor_temperature_k = 288.15;
    Installation tight = loose;
    tight.site.tight_house = true;
    CHECK(room_pa(plain::resolved(tight), StateKind::high_fire)
          < room_pa(plain::resolved(loose), StateKind::high_fire));
}

TEST_CASE("a room may be colder in one weather, and the gas of a balance with it") {
    Installation in = in_a_house();
    in.appliance.gas_temperature_k = {};
    in.appliance.efficiency.high = 0.7;
    Weather cold = in.site.weather[0];
    cold.name = "cold shop";
    cold.room_temperature_k = 278.15;
    in.site.weather.push_back(cold);
    const Case c = plain::resolved(in);
    const FlueModel warm(c, surroundings_of(c, 0, Fire::burning));
    const FlueModel chilled(c, surroundings_of(c, 1, Fire::burning));
    CHECK(gas_temperature_k(warm, c.appliance.high) == c.appliance.high.gas_temperature_k);
    CHECK(gas_temperature_k(chilled, c.appliance.high)
          == Approx(c.appliance.high.gas_temperature_k - 15.0));
    // A measured temperature is itself.
    in.appliance.efficiency = {};
    in.appliance.gas_temperature_k = {450.0, 600.0};
    const Case measured = plain::resolved(in);
    const FlueModel model(measured, surroundings_of(measured, 1, Fire::burning));
    CHECK(gas_temperature_k(model, measured.appliance.high) == 600.0);
}

TEST_CASE("two weathers of one name are refused where the second is named") {
    Installation in = plain::stack(4.0, 0.15, 0.5);
    in.site.weather.assign(2, Weather{});
    in.site.weather[0].name = "frost";
    in.site.weather[1].name = "frost";
    const auto refused = resolve(with_outdoor_top(in));
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().front().pointer == "/site/weather/1/name");
    CHECK(refused.error().front().message.find("weather 1 is called \"frost\" too")
          != std::string::npos);
    // A name that the program would give counts as well.
    in.site.weather[0].name = "weather 2";
    in.site.weather[1].name = {};
    CHECK_FALSE(resolve(with_outdoor_top(in)).has_value());
    in.site.weather[0].name = {};
    CHECK(resolve(with_outdoor_top(in)).has_value());
}
