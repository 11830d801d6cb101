#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "written_parts.hpp"

/// An installation that nothing is wrong with.
namespace fluewright {

/// A sound installation with nothing to find: moderate weather, an inside flue, a small door.
inline Installation sound() {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.fuel.moisture = 0.16;
    in.appliance.outlet.diameter_m = 0.15;
    in.appliance.outlet.height_m = 0.8;
    in.appliance.burn_rate_kg_s = {2.2 / 3600.0, 3.0 / 3600.0};
    in.appliance.efficiency = {0.62, 0.68};
    in.appliance.air_ratio = {2.0, 1.8};
    in.appliance.draft_needed_pa = {8.0, 12.0};
    in.appliance.draft_greatest_pa = 40.0;
    in.appliance.door = {0.22, 0.18, std::nullopt, std::nullopt, std::nullopt};
    in.site.room.temperature_k = 293.15;
    in.site.room.pressure_pa = 0.0;
    Weather cool;
    cool.name = "cool";
    cool.outdoor_temperature_k = 278.15;
    in.site.weather = {cool};
    Part first = straight_up(1.2, "insulated 25 mm", Zone::room);
    first.diameter_m = 0.15;
    first.expansion_allowed_m = 0.05;
    Part second = straight_up(3.4, "insulated 25 mm", Zone::room);
    second.expansion_allowed_m = 0.05;
    Part third = straight_up(0.6, "insulated 25 mm", Zone::outdoors);
    Part cap = named(PartKind::cap);
    cap.build = Build::open;
    in.run = {first, second, third, cap};
    return in;
}

} // namespace fluewright
