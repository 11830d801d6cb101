#include "fluewright/core/constants.hpp"
#include "random_household.hpp"
#include "random_installation.hpp"

#include <array>
#include <cmath>
#include <optional>
#include <span>

namespace fluewright::property {
namespace {

constexpr double hour_s = 3600.0;

/// Any value of a vocabulary whose last one is `last`.
template <class E>
E any_of(Random& random, E last) {
    return static_cast<E>(random.index(static_cast<std::size_t>(last) + 1));
}

void maybe(Random& random, double probability, Given& given, double low, double high) {
    if (random.chance(probability)) {
        given = random.between(low, high);
    }
}

template <class T>
void maybe_word(Random& random, double probability, std::optional<T>& given, T value) {
    if (random.chance(probability)) {
        given = value;
    }
}

void house(Random& random, Site& site) {
    House& house = site.house;
    maybe(random, 0.5, house.air_changes_50_pa_1_s, 0.5 / hour_s, 15.0 / hour_s);
    maybe(random, 0.4, house.height_m, 2.5, 9.0);
    maybe_word(random, 0.3, house.storeys, 1.0 + static_cast<double>(random.index(3)));
    maybe(random, 0.4, house.volume_m3, 120.0, 700.0);
    maybe(random, 0.2, house.appliance_level_m, 0.0, 2.6);
    maybe_word(random, 0.15, house.outdoor_air, true);
    if (!house.air_changes_50_pa_1_s) {
        maybe(random, 0.3, house.leakage_area_m2, 0.005, 0.1);
    }
    for (std::size_t i = random.index(3); i > 0; --i) {
        Fan fan;
        maybe_word(random, 0.5, fan.name, std::string{"cooker hood"});
        fan.flow_m3_s = random.between(-0.02, 0.12);
        house.fans.push_back(fan);
    }
    for (std::size_t i = random.index(3); i > 0; --i) {
        HouseOpening opening;
        opening.area_m2 = random.between(0.002, 0.1);
        maybe_word(random, 0.5, opening.side, any_of(random, HouseSide::lee));
        maybe(random, 0.5, opening.height_m, 0.1, 2.4);
        house.openings.push_back(opening);
    }
    if (!house.is_given()) {
        house.storeys = 2.0;
    }
    site.room.pressure_pa.reset();
}

void roof(Random& random, Site& site) {
    Roof& roof = site.roof;
    maybe(random, 0.7, roof.pitch_rad, 0.0, 1.0);
    maybe(random, 0.7, roof.distance_to_ridge_m, 0.0, 6.0);
    maybe(random, 0.7, roof.top_above_roof_m, 0.3, 2.5);
    maybe_word(random, 0.5, roof.covering, any_of(random, RoofCovering::shingles));
    maybe_word(random, 0.3, roof.braced, random.chance(0.5));
    for (std::size_t i = random.index(3); i > 0; --i) {
        NearThing thing;
        thing.what = any_of(random, NearThingKind::tree);
        thing.distance_m = random.between(0.5, 12.0);
        thing.below_top_m = random.between(-3.0, 3.0);
        roof.near.push_back(thing);
    }
}

void site_details(Random& random, Site& site) {
    if (random.chance(0.45)) {
        house(random, site);
    } else if (random.chance(0.3)) {
        site.room.pressure_pa.reset();
        maybe(random, 0.6, site.room.pressure_burning_pa, -8.0, 1.0);
        maybe(random, 0.6, site.room.pressure_idle_pa, -5.0, 3.0);
    }
    if (random.chance(0.5)) {
        roof(random, site);
    }
    maybe(random, 0.3, site.chase_temperature_k, 263.15, 303.15);
    maybe(random, 0.3, site.air_inlet_m2, 0.0, 0.02);
    maybe_word(random, 0.3, site.flue_shared_by, 1.0 + static_cast<double>(random.index(2)));
    maybe_word(random, 0.4, site.tight_house, random.chance(0.5));
    maybe_word(random, 0.7, site.rules, any_of(random, RuleSet::none));
    maybe_word(random, 0.6, site.top_position, any_of(random, ChimneyTopPosition::adverse));
    maybe(random, 0.3, site.room.volume_m3, 15.0, 120.0);
    maybe_word(random, 0.5, site.alarms.carbon_monoxide, random.chance(0.5));
    maybe_word(random, 0.5, site.alarms.smoke, random.chance(0.5));
    maybe(random, 0.3, site.alarms.distance_m, 0.5, 6.0);
}

void clearances(Random& random, Clearances& around) {
    maybe(random, 0.5, around.side_m, 0.1, 1.3);
    maybe(random, 0.5, around.back_m, 0.1, 1.3);
    maybe(random, 0.4, around.corner_m, 0.1, 1.3);
    maybe(random, 0.4, around.front_m, 0.4, 1.5);
    maybe(random, 0.4, around.above_m, 0.4, 1.5);
    maybe_word(random, 0.2, around.shield, any_of(random, Shield::batts_between_sheets));
    maybe(random, 0.2, around.shield_gap_m, 0.01, 0.04);
}

void appliance_details(Random& random, Appliance& a) {
    maybe_word(random, 0.6, a.listed, random.chance(0.5));
    maybe_word(random, 0.3, a.style, any_of(random, ApplianceStyle::unlined_range));
    maybe(random, 0.3, a.legs_m, 0.0, 0.3);
    maybe_word(random, 0.5, a.floor, any_of(random, FloorKind::noncombustible));
    maybe_word(random, 0.3, a.damper_allowed, random.chance(0.5));
    clearances(random, a.clearances);
    if (random.chance(0.3)) {
        clearances(random, a.listed_clearances);
    }
    maybe(random, 0.4, a.floor_protection.front_m, 0.2, 0.6);
    maybe(random, 0.4, a.floor_protection.sides_m, 0.1, 0.4);
    maybe(random, 0.4, a.floor_protection.back_m, 0.1, 0.4);
    maybe_word(random, 0.4, a.floor_protection.build, any_of(random, FloorBuild::hollow_masonry));
    maybe_word(random, 0.3, a.outlet.end, any_of(random, PipeEnd::locking));
    maybe(random, 0.2, a.draft_greatest_pa, 12.0, 60.0);
    maybe(random, 0.15, a.preheat_w, 100.0, 3000.0);
    if (a.door.height_m) {
        maybe(random, 0.3, a.door.sill_height_m, 0.1, 0.6);
    }
}

void joint_of(Random& random, Part& part) {
    if (random.chance(0.7)) {
        part.joint = any_of(random, JointFit::h1);
    } else if (random.chance(0.5)) {
        part.joint_gap_m = random.between_by_ratio(1e-6, 5e-4);
    } else {
        part.leakage_area_m2 = random.between_by_ratio(1e-6, 2e-3);
    }
}

void ends_of(Random& random, Part& part) {
    constexpr std::array ends{PipeEnd::plain,
                              PipeEnd::crimped,
                              PipeEnd::crimped,
                              PipeEnd::plain,
                              PipeEnd::socket,
                              PipeEnd::flange,
                              PipeEnd::locking};
    maybe_word(random, 0.7, part.heater_end, random.one_of(ends));
    maybe_word(random, 0.7, part.chimney_end, random.one_of(ends));
}

void part_details(Random& random, Part& part) {
    if (random.chance(0.25)) {
        joint_of(random, part);
    }
    if (random.chance(0.2)) {
        ends_of(random, part);
    }
    maybe(random, 0.25, part.clearance_m, 0.02, 0.8);
    maybe(random, 0.1, part.listed_clearance_m, 0.02, 0.4);
    if (random.chance(0.1)) {
        part.shield = any_of(random, Shield::batts_between_sheets);
        maybe(random, 0.7, part.shield_gap_m, 0.01, 0.04);
        maybe(random, 0.5, part.shield_reach_m, 0.1, 0.6);
    }
    maybe_word(random, 0.15, part.passes, any_of(random, Passage::roof));
    maybe_word(random, 0.1, part.pass_through, any_of(random, PassThrough::none));
    maybe_word(random, 0.1, part.gauge, 22.0 + 2.0 * static_cast<double>(random.index(3)));
    maybe_word(random, 0.2, part.screws, static_cast<double>(random.index(5)));
    maybe(random, 0.2, part.lap_m, 0.01, 0.06);
    maybe_word(random, 0.2, part.supports, static_cast<double>(random.index(3)));
    maybe_word(random, 0.1, part.rating, any_of(random, ChimneyRating::other));
    maybe_word(random, 0.04, part.belongs_to, any_of(random, Stretch::chimney));
    maybe(random, 0.1, part.rated_surface_temperature_k, 350.0, 900.0);
    if (part.part == PartKind::straight) {
        maybe(random, 0.15, part.expansion_allowed_m, 0.0, 0.02);
        maybe_word(random, 0.15, part.slip_joint, random.chance(0.5));
    }
    if (part.part == PartKind::cap) {
        maybe(random, 0.2, part.cap_gap_m, 0.02, 0.3);
    }
}

/// A regulator or a hood into a run that has none.
void side_openings(Random& random, Installation& made) {
    const bool gas = made.appliance.type == ApplianceType::draft_hood;
    for (const Part& part : made.run) {
        if (part.part == PartKind::draft_hood) {
            return;
        }
    }
    Part part;
    if (gas && random.chance(0.8)) {
        part.part = PartKind::draft_hood;
        maybe(random, 0.5, part.open_area_m2, 0.003, 0.03);
        made.run.insert(made.run.begin(), part);
    } else if (random.chance(0.1)) {
        part.part = PartKind::draft_regulator;
        maybe(random, 0.5, part.setting_pa, 8.0, 30.0);
        maybe(random, 0.3, part.opening_diameter_m, 0.06, 0.2);
        made.run.insert(made.run.begin() + 1, part);
    }
}

} // namespace

void add_details(Random& random, Installation& made) {
    maybe_word(random, 0.3, made.units, any_of(random, FileUnits::us));
    maybe_word(random, 0.7, made.title, std::string{"Sail loft, south gable"});
    site_details(random, made.site);
    appliance_details(random, made.appliance);
    side_openings(random, made);
    for (Part& part : made.run) {
        part_details(random, part);
    }
}

void leave_out(Random& random, Installation& made) {
    const auto forget = [&](auto& given) {
        if (random.chance(0.1)) {
            given = {};
        }
    };
    Appliance& a = made.appliance;
    forget(a.fuel.moisture);
    forget(a.outlet.height_m);
    forget(a.burn_rate_kg_s.low);
    forget(a.efficiency);
    forget(a.draft_needed_pa);
    forget(made.site.altitude_m);
    forget(made.site.room.temperature_k);
    if (random.chance(0.05)) {
        made.site.weather.clear();
    }
    for (Weather& weather : made.site.weather) {
        forget(weather.wind_m_s);
        forget(weather.relative_humidity);
    }
    for (Part& part : made.run) {
        if (part.part == PartKind::elbow || part.part == PartKind::tee) {
            forget(part.angle_rad);
            forget(part.flow);
        }
        forget(part.build);
        forget(part.blade_angle_rad);
        forget(part.taper_length_m);
        forget(part.deposit);
    }
    if (random.chance(0.1)) {
        made.run.front().wall.reset();
    }
}

} // namespace fluewright::property
