#pragma once

#include "../catch.hpp"
#include "../outdoor_top.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"

/// Runs so plain that their answer can be written down.
namespace fluewright::plain {

/// A stove with measured gas under one upright pipe whose wall has this resistance.
inline Installation stack(double height_m, double diameter_m, double resistance_m2k_w) {
    Installation in;
    in.appliance.type = ApplianceType::stove;
    in.appliance.fuel.name = "beech";
    in.appliance.fuel.moisture = 0.15;
    in.appliance.outlet.diameter_m = diameter_m;
    in.appliance.burn_rate_kg_s = {0.3e-3, 1.0e-3};
    in.appliance.gas_temperature_k = {450.0, 600.0};
    in.appliance.draft_needed_pa = {6.0, 12.0};
    in.appliance.warmed_pipe_share = 0.0;
    in.site.altitude_m = 0.0;
    in.site.room.temperature_k = 293.15;
    in.site.room.pressure_pa = 0.0;
    Weather calm;
    calm.name = "calm";
    calm.outdoor_temperature_k = 273.15;
    calm.wind_m_s = 0.0;
    calm.relative_humidity = 0.5;
    in.site.weather.push_back(calm);
    OwnWall wall;
    wall.id = "plain";
    wall.thermal_resistance_m2k_w = resistance_m2k_w;
    in.walls.push_back(wall);
    Part pipe;
    pipe.part = PartKind::straight;
    pipe.up_m = height_m;
    pipe.diameter_m = diameter_m;
    pipe.wall = "plain";
    pipe.zone = Zone::room;
    in.run.push_back(pipe);
    return in;
}

/// The greatest resistance a file can give. resolved() takes it for a wall that no heat passes.
inline constexpr double adiabatic_m2k_w = 10.0;

/// Gives the walls known by their resistance another one than a file can say.
inline void set_resistance(Case& c, double resistance_m2k_w) {
    for (WallBuild& wall : c.walls) {
        if (wall.fixed_resistance_m2k_w > 0.0) {
            wall.fixed_resistance_m2k_w = resistance_m2k_w;
        }
    }
}

inline Case resolved(const Installation& in) {
    auto made = resolve(with_outdoor_top(in));
    REQUIRE(made);
    if (!in.walls.empty() && in.walls.front().thermal_resistance_m2k_w == adiabatic_m2k_w) {
        set_resistance(*made, 1e9);
    }
    return std::move(made).value();
}

inline FlueModel burning(const Case& c, std::size_t weather = 0) {
    return {c, surroundings_of(c, weather, Fire::burning)};
}

inline GasStream gas(double flow_kg_s, double temperature_k) {
    return {.gas = GasChoice::high_fire,
            .air_share = 0.0,
            .flow_kg_s = flow_kg_s,
            .temperature_k = temperature_k};
}

/// The tolerance of every closed form.
inline constexpr double closed_form = 1e-3;

} // namespace fluewright::plain
