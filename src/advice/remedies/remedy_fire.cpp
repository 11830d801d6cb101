#include "remedy_changes.hpp"

#include <algorithm>
#include <utility>

namespace fluewright::changes {

namespace {

/// With other air in the room its pressure has to be measured again.
void forget_room_pressure(Installation& in) {
    for (Observation& seen : in.observed) {
        seen.room_pressure_pa.reset();
    }
}

} // namespace

void air_inlet(Installation& in, double pressure_pa) {
    forget_room_pressure(in);
    Room& room = in.site.room;
    const auto raise = [&](Given& pressure) { pressure = std::max(*pressure, pressure_pa); };
    if (room.pressure_pa) {
        raise(room.pressure_pa);
        return;
    }
    room.pressure_burning_pa =
        std::max(room.pressure_burning_pa.value_or(pressure_pa), pressure_pa);
    if (room.pressure_idle_pa) {
        raise(room.pressure_idle_pa);
    }
}

void house_inlet(Installation& in, double area_m2) {
    forget_room_pressure(in);
    in.site.house.openings.push_back({.name = "new air inlet",
                                      .area_m2 = area_m2,
                                      .side = HouseSide::lee,
                                      .height_m = std::nullopt});
}

void stop_fans(Installation& in) {
    forget_room_pressure(in);
    auto& fans = in.site.house.fans;
    fans.erase(std::remove_if(fans.begin(),
                              fans.end(),
                              [](const Fan& fan) { return fan.flow_m3_s.value_or(0.0) > 0.0; }),
               fans.end());
}

void dry_fuel(Installation& in, double moisture) {
    in.appliance.fuel.moisture = moisture;
}

void set_burn_rates(Installation& in, double high_kg_s, double low_kg_s) {
    Appliance& a = in.appliance;
    const bool dry = a.burn_rate_basis == BurnRateBasis::dry;
    const double share = dry ? 1.0 - a.fuel.moisture.value_or(0.0) : 1.0;
    a.burn_rate_kg_s = {std::min(low_kg_s, high_kg_s) * share, high_kg_s * share};
    if (a.type == ApplianceType::masonry_heater) { // a charge burns at one rate
        a.burn_rate_kg_s.low.reset();
        a.charge_kg.reset();
    }
    // One figure for the fire: the others would speak of the old one.
    a.heat_input_w = {};
    a.heat_output_w = {};
    a.gas_flow_kg_s = {};
}

void lower_door_opening(Installation& in, double height_m) {
    Door& door = in.appliance.door;
    if (door.height_m.value_or(catalog::default_of(DefaultId::door_height_m).value) > height_m) {
        door.height_m = height_m;
    }
}

void raise_hearth(Installation& in, double up_m) {
    Door& door = in.appliance.door;
    if (door.height_m && *door.height_m > up_m) {
        door.height_m = *door.height_m - up_m;
        door.sill_height_m = door.sill_height_m.value_or(0.0) + up_m;
    }
}

void fit_insert(Installation& in, double liner_m, const std::string& liner) {
    Appliance insert;
    insert.type = ApplianceType::stove;
    insert.listed = true;
    insert.fuel = in.appliance.fuel;
    insert.outlet.diameter_m = liner_m;
    insert.outlet.height_m = in.appliance.outlet.height_m;
    insert.clearances = in.appliance.clearances;
    insert.floor_protection = in.appliance.floor_protection;
    Installation lined = in;
    lined.appliance = insert;
    line_flue(lined, liner_m, liner);
    if (!(lined.run == in.run)) {
        in = std::move(lined);
    }
}

} // namespace fluewright::changes
