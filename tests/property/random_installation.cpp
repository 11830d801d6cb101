#include "random_installation.hpp"

#include "buildable.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <array>
#include <cmath>

namespace fluewright::property {

std::uint64_t Random::bits() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31U);
}

double Random::between(double low, double high) {
    return low + (high - low) * static_cast<double>(bits() >> 11U) * 0x1p-53;
}

double Random::between_by_ratio(double low, double high) {
    return low * std::pow(high / low, between(0.0, 1.0));
}

std::size_t Random::index(std::size_t count) {
    return static_cast<std::size_t>(bits() % count);
}

bool Random::chance(double probability) {
    return between(0.0, 1.0) < probability;
}

namespace {

constexpr double degree = constants::pi / 180.0;
constexpr double most_rise_m = 30.0;

struct RunMaker {
    Random& random;
    Installation& made;
    double diameter_m;
    double rise_m{};

    void straight();
    void elbow();
    void change_of_size();
    void other();
    void maybe_wall_and_zone(Part& part);
};

void RunMaker::maybe_wall_and_zone(Part& part) {
    constexpr std::array zones{Zone::room, Zone::attic, Zone::chase, Zone::outdoors};
    if (random.chance(0.5)) {
        part.wall = made.walls.empty() || random.chance(0.8)
                        ? std::string{random.one_of(catalog::walls()).id}
                        : random.one_of(made.walls).id;
    }
    if (random.chance(0.5)) {
        part.zone = random.one_of(zones);
    }
    if (random.chance(0.1)) {
        constexpr std::array deposits{DepositKind::soot,
                                      DepositKind::flaky_creosote,
                                      DepositKind::glazed_creosote,
                                      DepositKind::ash};
        part.deposit_m = random.between_by_ratio(0.0005, 0.012);
        part.deposit = random.one_of(deposits);
    }
}

void RunMaker::straight() {
    Part part;
    part.part = PartKind::straight;
    const double length_m = random.between_by_ratio(0.25, 9.0);
    if (random.chance(0.25)) {
        part.across_m = length_m;
        if (random.chance(0.5)) {
            part.rise_m = random.between(0.0, 1.0) * length_m;
            rise_m += *part.rise_m;
        } else {
            part.slope = random.between(0.0, 0.1);
            rise_m += *part.slope * length_m;
        }
    } else if (random.chance(0.03) && rise_m > 1.5) {
        part.down_m = 0.4;
        rise_m -= 0.4;
    } else {
        part.up_m = std::fmin(length_m, std::fmax(0.3, most_rise_m - rise_m));
        rise_m += *part.up_m;
    }
    if (random.chance(0.06)) {
        part.liner = std::string{random.one_of(catalog::clay_liners()).id};
    } else if (random.chance(0.04)) {
        part.width_m = random.between(0.1, 0.35);
        part.depth_m = random.between(0.1, 0.35);
        if (*part.width_m > 1.2 * *part.depth_m) {
            part.shape = SectionShape::oval;
        }
    } else if (random.chance(0.1)) {
        part.diameter_m = diameter_m = random.between_by_ratio(0.08, 0.40);
    }
    maybe_wall_and_zone(part);
    made.run.push_back(part);
}

void RunMaker::elbow() {
    constexpr std::array builds{Build::smooth, Build::gored, Build::mitered};
    constexpr std::array<double, 5> angles{15.0, 30.0, 45.0, 60.0, 90.0};
    Part part;
    part.part = PartKind::elbow;
    part.angle_rad = random.one_of(angles) * degree;
    part.build = random.one_of(builds);
    if (*part.build == Build::smooth && random.chance(0.5)) {
        part.radius_m = random.between(0.7, 2.0) * diameter_m;
    }
    made.run.push_back(part);
}

void RunMaker::change_of_size() {
    Part part;
    diameter_m *= random.chance(0.5) ? random.between(0.65, 0.95) : random.between(1.05, 1.5);
    diameter_m = std::fmin(std::fmax(diameter_m, 0.08), 0.40);
    part.part = random.chance(0.5) ? PartKind::reducer : PartKind::increaser;
    part.diameter_m = diameter_m;
    if (random.chance(0.5)) {
        part.taper_length_m = random.between(0.02, 0.4);
    }
    made.run.push_back(part);
}

void RunMaker::other() {
    Part part;
    switch (random.index(5)) {
    case 0:
        part.part = PartKind::tee;
        part.flow = random.chance(0.7) ? TeeFlow::side : TeeFlow::straight;
        part.cleanout = random.chance(0.5);
        break;
    case 1:
        part.part = PartKind::damper;
        part.blade_angle_rad = random.between(0.0, 90.0) * degree;
        break;
    case 2:
        part.part = PartKind::screen;
        part.free_area = random.between(0.4, 0.9);
        break;
    case 3:
        part.part = PartKind::obstruction;
        part.blocked = random.between(0.05, 0.8);
        break;
    default:
        part.part = PartKind::fitting;
        part.loss = random.between_by_ratio(0.05, 5.0);
        break;
    }
    made.run.push_back(part);
}

void run(Random& random, Installation& made) {
    RunMaker build{random, made, *made.appliance.outlet.diameter_m};
    const std::size_t parts = 1 + random.index(12);
    build.straight();
    while (made.run.size() < parts) {
        const double draw = random.between(0.0, 1.0);
        if (draw < 0.45) {
            build.straight();
        } else if (draw < 0.7) {
            build.elbow();
        } else if (draw < 0.8) {
            build.change_of_size();
        } else {
            build.other();
        }
    }
    if (build.rise_m < 0.5) {
        Part up;
        up.part = PartKind::straight;
        up.up_m = random.between(0.5, 6.0);
        made.run.push_back(up);
    }
    if (random.chance(0.7)) {
        constexpr std::array builds{Build::open, Build::plain, Build::rain};
        Part cap;
        cap.part = PartKind::cap;
        cap.build = random.one_of(builds);
        if (random.chance(0.3)) {
            cap.mesh_m = 0.012;
        }
        made.run.push_back(cap);
    }
    if (random.chance(0.8)) {
        made.run.front().wall = std::string{random.one_of(catalog::walls()).id};
    }
}

/// A wall the file defines: a resistance, or two layers.
void own_wall(Random& random, Installation& made) {
    OwnWall wall;
    wall.id = "own";
    if (random.chance(0.5)) {
        wall.thermal_resistance_m2k_w = random.between_by_ratio(0.01, 2.0);
    } else {
        OwnLayer layer;
        layer.material = "stainless steel";
        layer.thickness_m = 0.0006;
        wall.layers.push_back(layer);
        layer.material = "wool of our own";
        layer.thickness_m = random.between(0.01, 0.08);
        layer.conductivity_w_mk = random.between(0.03, 0.3);
        wall.layers.push_back(layer);
    }
    made.walls.push_back(wall);
}

void site(Random& random, Installation& made) {
    made.site.altitude_m = random.chance(0.5) ? random.between(0.0, 3000.0) : 100.0;
    if (random.chance(0.7)) {
        made.site.room.temperature_k = random.between(278.15, 300.15);
    }
    if (random.chance(0.5)) {
        made.site.room.pressure_pa = random.between(-8.0, 2.0);
    }
    const std::size_t weathers = 1 + random.index(2);
    for (std::size_t i = 0; i < weathers; ++i) {
        Weather weather;
        weather.outdoor_temperature_k = random.between(233.15, 308.15);
        weather.wind_m_s = random.chance(0.5) ? 0.0 : random.between(0.5, 20.0);
        weather.relative_humidity = random.between(0.1, 1.0);
        made.site.weather.push_back(weather);
    }
    if (random.chance(0.2)) {
        made.site.attic_temperature_k = random.between(243.15, 323.15);
    }
}

void appliance(Random& random, Installation& made) {
    Appliance& a = made.appliance;
    // The last row, the masonry heater, comes by the seed: see random_installation().
    const auto rows = catalog::appliance_defaults();
    const catalog::ApplianceDefault& kind = random.one_of(rows.first(rows.size() - 1));
    a.type = kind.type;
    const catalog::Fuel* fuel = nullptr;
    do {
        fuel = &random.one_of(catalog::fuels());
    } while (fuel->group != kind.fuel_group);
    a.fuel.name = std::string{fuel->id};
    if (kind.fuel_group == FuelGroup::wood) {
        a.fuel.moisture = random.between(0.08, 0.40);
    }
    const double diameter_m = random.between_by_ratio(0.08, 0.40);
    a.outlet.diameter_m = diameter_m;
    a.outlet.height_m = random.between(0.3, 1.8);
    // A burn rate that sends 0.1 to 2.5 kg/(s m2) of gas through an outlet of this size.
    const double flow_kg_s =
        constants::pi / 4.0 * diameter_m * diameter_m * random.between_by_ratio(0.1, 2.5);
    const double per_fuel = 7.0 * kind.air_ratio_high;
    constexpr double least_kg_s = 0.05 / 3600.0; // that a file can say
    const double high = std::fmax(least_kg_s, flow_kg_s / per_fuel);
    a.burn_rate_kg_s = {std::fmax(least_kg_s, high * random.between(0.15, 1.0)), high};
    if (random.chance(0.3)) {
        a.gas_temperature_k.high = random.between(350.0, 1150.0);
        a.gas_temperature_k.low = random.between(330.0, *a.gas_temperature_k.high);
    }
    if (random.chance(0.3) && kind.type != ApplianceType::fireplace) {
        a.oxygen = {random.between(0.12, 0.18), random.between(0.04, 0.12)};
    }
    if (random.chance(0.5)) {
        a.draft_needed_pa.high = random.between(1.0, 25.0);
    }
    if (random.chance(0.5)) {
        a.door.width_m = random.between(0.2, 1.0);
        a.door.height_m = random.between(0.2, 0.9);
    }
}

} // namespace

Installation random_installation(std::uint64_t seed) {
    Random random(seed * 0x2545f4914f6cdd1dU + 0x1234567U);
    Installation made;
    site(random, made);
    appliance(random, made);
    if (random.chance(0.3)) {
        own_wall(random, made);
    }
    run(random, made);
    Appliance& a = made.appliance;
    if (seed % 5 == 4 && a.type == ApplianceType::stove && a.fuel.moisture) {
        a.type = ApplianceType::masonry_heater; // whose charge has no low fire
        for (HighLow* pair : {&a.burn_rate_kg_s, &a.gas_temperature_k, &a.oxygen}) {
            pair->low.reset();
        }
    }
    make_buildable(made);
    return made;
}

} // namespace fluewright::property
