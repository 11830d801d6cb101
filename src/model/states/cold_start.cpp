#include "fluewright/model/states/cold_start.hpp"

#include "fluewright/core/constants.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {
namespace {

constexpr double air_heat_j_kgk = 1006.0;

/// Heat to bring the column and as much of its inner wall as warms in `duration_s` to `goal_k`.
double heat_j(const Case& c, const Surroundings& around, double goal_k, double duration_s) {
    double sum = 0.0;
    for (const Section& section : c.sections) {
        const auto zone = static_cast<std::size_t>(section.zone);
        const double rise_k = goal_k - around.temperature_k[zone];
        if (section.length_m <= 0.0 || rise_k <= 0.0) {
            continue;
        }
        const WallLayer& inner = c.walls[section.wall].layers[0];
        const double stored = inner.density_kg_m3 * inner.specific_heat_j_kgk;
        double depth_m = inner.thickness_m;
        if (stored > 0.0) {
            depth_m = std::min(depth_m, std::sqrt(inner.conductivity_w_mk / stored * duration_s));
        }
        sum += rise_k * section.length_m
               * (section.area_m2 * around.density_kg_m3[zone] * air_heat_j_kgk
                  + section.perimeter_m * depth_m * stored);
    }
    return sum;
}

} // namespace

ColdStart cold_start(const Case& c, const Surroundings& around) {
    ColdStart cold;
    double height_m = 0.0;
    double column_kg_m2 = 0.0;
    double column_k_m = 0.0;
    for (const Section& section : c.sections) {
        const auto zone = static_cast<std::size_t>(section.zone);
        height_m += section.rise_m;
        column_kg_m2 += around.density_kg_m3[zone] * section.rise_m;
        column_k_m += around.temperature_k[zone] * section.rise_m;
    }
    const double buoyancy_pa =
        (around.outdoor_density_kg_m3 * height_m - column_kg_m2) * constants::gravity_m_s2;
    cold.idle_draft_pa = around.room_pressure_pa - around.top_pressure_pa + buoyancy_pa;
    if (height_m <= 0.0) {
        cold.duration_s = cold.idle_draft_pa > 0.0 ? 0.0 : -1.0;
        return cold;
    }
    cold.idle_mean_k = column_k_m / height_m;
    const auto room = static_cast<std::size_t>(Zone::room);
    const double turning_density =
        around.outdoor_density_kg_m3
        - (around.top_pressure_pa - around.room_pressure_pa) / (constants::gravity_m_s2 * height_m);
    if (turning_density <= 0.0) {
        cold.duration_s = -1.0;
        return cold;
    }
    cold.turning_k = around.temperature_k[room] * around.density_kg_m3[room] / turning_density;
    if (cold.idle_draft_pa > 0.0) {
        return cold;
    }
    // The deeper the heat has got, the more is needed: E ~ a + b sqrt(t), so that t <- E(t) / P
    // halves its miss at least.
    constexpr double first_guess_s = 600.0;
    constexpr double settled_share = 1e-12;
    constexpr int most_steps = 60;
    double before_s = 0.0;
    cold.duration_s = first_guess_s;
    for (int step = 0; step < most_steps
                       && std::abs(cold.duration_s - before_s) > settled_share * cold.duration_s;
         ++step) {
        before_s = cold.duration_s;
        cold.heat_j = heat_j(c, around, cold.turning_k, before_s);
        cold.duration_s = cold.heat_j / c.kindling.preheat_w;
    }
    return cold;
}

} // namespace fluewright
