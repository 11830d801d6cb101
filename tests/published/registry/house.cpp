#include "fluewright/core/constants.hpp"
#include "fluewright/core/numeric/root.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/cold_start.hpp"
#include "fluewright/physics/atmosphere.hpp"
#include "fluewright/physics/openings.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

namespace published {
namespace {

using namespace fluewright;

constexpr double zero_celsius_k = 273.15;
constexpr double hour_s = 3600.0;
constexpr double litres = 1000.0;
constexpr double test_density_kg_m3 = 1.2;

/// A house alone, level with its appliance, in air that is even or not.
HouseCase house_of(double leak_m3_s, double exponent) {
    HouseCase house;
    house.known = true;
    house.height_m = 1.0;
    house.leak_m3_s = leak_m3_s;
    house.leak_exponent = exponent;
    return house;
}

double house_pressure(const Inputs& in) {
    constexpr double exponent = 0.65;
    HouseCase house = house_of(
        openings::coefficient_m3_s({.volume_m3 = in.number("volume_m3"),
                                    .air_changes_1_s = in.number("changes_50_pa_1_h") / hour_s},
                                   exponent),
        exponent);
    house.exhaust_m3_s = in.number("fan_l_s") / litres;
    return HouseAir(house,
                    {.outdoor_density_kg_m3 = test_density_kg_m3,
                     .room_density_kg_m3 = test_density_kg_m3,
                     .wind_m_s = 0.0})
        .room_pressure_pa(0.0);
}

double dry_density(double celsius) {
    return atmosphere::density_kg_m3(
        constants::standard_pressure_pa, celsius + zero_celsius_k, 0.0);
}

double neutral_share(const Inputs& in) {
    const HouseAir air(house_of(0.05, 0.5),
                       {.outdoor_density_kg_m3 = dry_density(in.number("outdoor_c")),
                        .room_density_kg_m3 = dry_density(in.number("room_c")),
                        .wind_m_s = 0.0});
    return air.neutral_height_m(air.room_pressure_pa(0.0));
}

/// A flue whose house has its neutral level so far over the hearth.
double turning_temperature(const Inputs& in) {
    Installation written;
    Weather weather;
    weather.outdoor_temperature_k = in.number("outdoor_c") + zero_celsius_k;
    weather.relative_humidity = 0.0;
    weather.wind_m_s = 0.0;
    written.site.weather.push_back(weather);
    written.site.room.temperature_k = 293.15;
    written.site.room.relative_humidity = 0.0;
    written.site.air_pressure_pa = constants::standard_pressure_pa;
    written.site.house.height_m = 12.0;
    written.site.house.neutral_level_m = in.number("neutral_m");
    written.appliance.type = ApplianceType::stove;
    written.appliance.fuel.name = "wood";
    written.appliance.burn_rate_kg_s.high = 3.0 / hour_s;
    written.appliance.outlet.diameter_m = 0.15;
    written.appliance.outlet.height_m = 0.0;
    written.run.push_back(rebuilt::up(in.number("flue_height_m"), "clay-lined masonry"));
    const Case c = rebuilt::resolved(written);
    return cold_start(c, surroundings_of(c, 0, Fire::out)).turning_k - zero_celsius_k;
}

double opening_pressure(const Inputs& in) {
    const double flow_kg_s = in.number("flow_l_s") / litres * test_density_kg_m3;
    const double area_m2 = in.number("area_cm2") * 1e-4;
    const auto miss = [&](double pa) {
        return openings::flow_kg_s(area_m2, pa, test_density_kg_m3) - flow_kg_s;
    };
    return find_root(miss, 0.0, 1000.0, {.x_tolerance = 1e-9, .residual_tolerance = 0.0}).x;
}

/// Leak through the wall of a chimney made to leak as its class allows [L/(s m2)].
double tightness_class(const Inputs& in) {
    const std::string id = "tightness_" + in.text("class");
    const double test_pa = in.number("test_pa");
    const double area = openings::area_per_wall(catalog::find_default(id + "_rate_m_s")->value,
                                                catalog::find_default(id + "_test_pa")->value);
    return openings::flow_kg_s(area, test_pa, test_density_kg_m3) / test_density_kg_m3 * litres;
}

} // namespace

void add_house_checks(Registry& registry) {
    registry["house_pressure"] = {"room pressure", "Pa", house_pressure};
    registry["neutral_share"] = {"neutral level over height", "-", neutral_share};
    registry["turning_temperature"] = {"mean temperature of the flue", "degC", turning_temperature};
    registry["opening_pressure"] = {"pressure difference", "Pa", opening_pressure};
    registry["tightness_class"] = {"leak per wall area", "L/(s m2)", tightness_class};
}

} // namespace published
