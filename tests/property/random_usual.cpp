#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "random_household.hpp"
#include "random_installation.hpp"

#include <array>
#include <cmath>
#include <string>
#include <string_view>

namespace fluewright::property {
namespace {

constexpr double per_hour = 1.0 / 3600.0;
constexpr std::array trade_sizes_m{0.100, 0.120, 0.125, 0.130, 0.150, 0.1524, 0.180, 0.200, 0.2032};

Part straight_up(double up_m) {
    Part part;
    part.part = PartKind::straight;
    part.up_m = up_m;
    return part;
}

Part part_of(PartKind kind) {
    Part part;
    part.part = kind;
    return part;
}

void gas_heater(Random& random, Appliance& a) {
    a.type = ApplianceType::draft_hood;
    a.fuel.name = "natural gas";
    a.heat_input_w.high = random.between(6e3, 30e3);
}

void solid_heater(Random& random, Appliance& a) {
    constexpr std::array<std::string_view, 6> fuels{
        "beech", "oak", "birch", "spruce", "wood", "ash"};
    const bool front = random.chance(0.15);
    a.type = front ? ApplianceType::fireplace : ApplianceType::stove;
    a.fuel.name = std::string{random.one_of(fuels)};
    a.fuel.moisture = random.between(0.12, 0.30);
    const double high_kg_s = random.between(1.5, 6.0) * per_hour;
    a.burn_rate_kg_s = {high_kg_s * random.between(0.25, 0.6), high_kg_s};
    if (random.chance(0.6)) {
        a.efficiency.high = random.between(0.6, 0.82);
    }
    if (random.chance(0.6)) {
        a.draft_needed_pa.high = random.between(6.0, 15.0);
    }
    if (front || random.chance(0.6)) {
        a.door.width_m = random.between(0.25, front ? 0.8 : 0.5);
        a.door.height_m = random.between(0.2, front ? 0.7 : 0.4);
    }
}

std::string chimney_wall(Random& random, const Appliance& a) {
    if (a.type == ApplianceType::draft_hood) {
        return random.chance(0.7) ? "type b vent" : "clay-lined masonry";
    }
    constexpr std::array<std::string_view, 6> walls{"insulated 25 mm",
                                                    "insulated 50 mm",
                                                    "clay-lined masonry",
                                                    "unlined masonry",
                                                    "flexible liner",
                                                    "single-wall steel"};
    return std::string{random.one_of(walls)};
}

void chimney_parts(Random& random, Installation& made, bool base_tee) {
    const bool through_house = random.chance(0.5);
    std::string wall = chimney_wall(random, made.appliance);
    const double diameter_m = random.chance(0.3) ? random.one_of(trade_sizes_m) : 0.0;
    if (base_tee) {
        Part tee = part_of(PartKind::tee);
        tee.cleanout = random.chance(0.7);
        made.run.push_back(tee);
    }
    Part up = straight_up(random.between(1.5, 7.0));
    up.wall = std::move(wall);
    if (diameter_m > 0.0) {
        up.diameter_m = diameter_m;
    }
    if (through_house) {
        constexpr std::array zones{Zone::attic, Zone::chase, Zone::room};
        up.zone = random.one_of(zones);
        made.run.push_back(up);
        up = straight_up(random.between(0.6, 2.5));
    }
    up.zone = Zone::outdoors;
    made.run.push_back(up);
    if (random.chance(0.8)) {
        constexpr std::array builds{Build::open, Build::plain, Build::rain};
        Part cap = part_of(PartKind::cap);
        cap.build = random.one_of(builds);
        if (random.chance(0.3)) {
            cap.mesh_m = 0.012;
        }
        if (random.chance(0.1)) {
            cap.blocked = random.between(0.1, 0.8);
        }
        made.run.push_back(cap);
    }
}

void connector_parts(Random& random, Installation& made, bool across) {
    Part first = straight_up(random.between(0.3, 1.8));
    first.wall = random.chance(0.75) ? "single-wall steel" : "double-wall connector";
    first.zone = Zone::room;
    if (random.chance(0.3)) {
        first.diameter_m = random.one_of(trade_sizes_m);
    }
    made.run.push_back(first);
    if (random.chance(0.2)) {
        Part damper = part_of(PartKind::damper);
        damper.blade_angle_rad = random.between(0.0, 1.2);
        made.run.push_back(damper);
    }
    if (random.chance(0.15)) {
        made.run.push_back(part_of(PartKind::draft_regulator));
    }
    if (!across) {
        return;
    }
    Part elbow = part_of(PartKind::elbow);
    elbow.angle_rad = constants::pi / 2.0;
    constexpr std::array builds{Build::smooth, Build::gored, Build::mitered};
    elbow.build = random.one_of(builds);
    made.run.push_back(elbow);
    Part level = part_of(PartKind::straight);
    level.across_m = random.between(0.3, 2.5);
    if (random.chance(0.6)) {
        level.slope = random.between(0.0, 0.06);
    }
    if (random.chance(0.2)) {
        level.deposit_m = random.between(0.001, 0.01);
    }
    made.run.push_back(level);
}

} // namespace

Installation usual_heater(Random& random) {
    Installation made;
    Appliance& a = made.appliance;
    random.chance(0.2) ? gas_heater(random, a) : solid_heater(random, a);
    a.outlet.diameter_m = random.one_of(trade_sizes_m);
    a.outlet.height_m = random.between(0.4, 1.4);
    const bool across = random.chance(0.6);
    connector_parts(random, made, across);
    if (a.type == ApplianceType::draft_hood) {
        made.run.insert(made.run.begin(), part_of(PartKind::draft_hood));
    }
    chimney_parts(random, made, across);
    made.site.altitude_m = random.between(0.0, 1200.0);
    Weather weather;
    weather.name = "frost";
    weather.outdoor_temperature_k = random.between(248.15, 273.15);
    made.site.weather.push_back(weather);
    if (random.chance(0.5)) {
        weather.name = "mild";
        weather.outdoor_temperature_k = random.between(280.15, 291.15);
        weather.wind_m_s = random.chance(0.5) ? 0.0 : random.between(1.0, 8.0);
        made.site.weather.push_back(weather);
    }
    return made;
}

} // namespace fluewright::property
