#include "cures.hpp"

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::diagnosis {
namespace {

// What counts as sound; judgement from the rules of the trade in docs/diagnosis.md.
constexpr double sound_rise_m = 4.5;
constexpr double sound_level_m = 1.5;
constexpr double sound_bare_in_room_m = 2.4;
constexpr double narrow_share = 0.95;
constexpr double wide_share = 1.5;
constexpr double sound_room_pa = -1.5;
constexpr double open_blade_rad = 0.35;
constexpr double clear_screen = 0.6;
constexpr double mild_k = 283.15;
constexpr double cold_day_k = 273.15;
constexpr double opening_over_flue = 10.0;
constexpr double dry_wood = 0.18;
constexpr double holding_blade_rad = 1.05;
constexpr double cool_low_fire_k = 393.15;

using Cure = std::optional<Installation>;

/// Stretches the last upright straight.
Cure higher(const Installation& written, const Case& resolved) {
    const double lacking_m = sound_rise_m - resolved.total_rise_m();
    if (lacking_m <= 0.0) {
        return std::nullopt;
    }
    Installation better = written;
    for (auto part = better.run.rbegin(); part != better.run.rend(); ++part) {
        if (part->up_m) {
            part->up_m = *part->up_m + lacking_m;
            return better;
        }
    }
    return std::nullopt;
}

void set_round(Part& part, double diameter_m) {
    part.width_m.reset();
    part.depth_m.reset();
    part.liner.reset();
    part.diameter_m = diameter_m;
}

/// As wide as the outlet wherever `wrong` finds the section to be off.
template <class Wrong>
Cure outlet_size(const Installation& written, const Case& resolved, const Wrong& wrong) {
    const double outlet_m2 = resolved.appliance.outlet_area_m2;
    bool found = false;
    Installation better = written;
    for (const Section& section : resolved.sections) {
        const auto part = static_cast<std::size_t>(std::max(section.part, 0));
        if (section.part < 0 || part >= better.run.size()) {
            continue;
        }
        if (wrong(section.area_m2 / outlet_m2)) {
            found = true;
        }
    }
    for (Part& part : better.run) {
        part.diameter_m.reset();
        part.width_m.reset();
        part.depth_m.reset();
        part.liner.reset();
    }
    if (found && !better.run.empty()) {
        set_round(better.run.front(), resolved.appliance.outlet_diameter_m);
        return better;
    }
    return std::nullopt;
}

Cure straighter(const Installation& written, const Case& resolved) {
    double turns_rad = 0.0;
    double level_m = 0.0;
    for (const Section& section : resolved.sections) {
        turns_rad += section.turn_rad;
        level_m += section.length_m > 0.0 ? std::sqrt(std::max(
                       0.0, section.length_m * section.length_m - section.rise_m * section.rise_m))
                                          : 0.0;
    }
    const double most_rad = catalog::default_of("turns_most_rad").value;
    if (turns_rad <= most_rad + 0.01 && level_m <= sound_level_m) {
        return std::nullopt;
    }
    Installation better = written;
    for (Part& part : better.run) {
        if (part.part == PartKind::elbow) {
            part.loss = 0.1;
        }
        if (part.across_m) {
            part.across_m = std::min(*part.across_m, 0.3);
        }
    }
    return better;
}

Cure warmer(const Installation& written, const Case& resolved) {
    double bare_in_room_m = 0.0;
    std::vector<bool> cold(written.run.size());
    for (const Section& section : resolved.sections) {
        const auto part = static_cast<std::size_t>(std::max(section.part, 0));
        if (section.part < 0 || part >= cold.size() || section.length_m <= 0.0) {
            continue;
        }
        const WallKind kind = resolved.walls[section.wall].kind;
        const bool bare = kind != WallKind::insulated && kind != WallKind::double_wall;
        if (section.zone == Zone::room) {
            bare_in_room_m += bare ? section.length_m : 0.0;
        } else {
            cold[part] = bare;
        }
    }
    const bool any_cold = std::find(cold.begin(), cold.end(), true) != cold.end();
    if (!any_cold && bare_in_room_m <= sound_bare_in_room_m) {
        return std::nullopt;
    }
    Installation better = written;
    for (Part& part : better.run) {
        if (part.wall) {
            part.wall = "insulated 25 mm";
        }
    }
    better.run.front().wall = "insulated 25 mm";
    return better;
}

Cure free_room(const Installation& written, const Case& /*resolved*/) {
    if (!written.site.room.pressure_pa || *written.site.room.pressure_pa > sound_room_pa) {
        return std::nullopt;
    }
    Installation better = written;
    better.site.room.pressure_pa = 0.0;
    return better;
}

Cure drier(const Installation& written, const Case& resolved) {
    if (resolved.appliance.moisture <= catalog::default_of("moisture_limit_wet").value + 0.02) {
        return std::nullopt;
    }
    Installation better = written;
    better.appliance.fuel.moisture = dry_wood;
    return better;
}

Cure cleared(const Installation& written, const Case& /*resolved*/) {
    Installation better = written;
    bool found = false;
    for (Part& part : better.run) {
        if (part.blade_angle_rad.value_or(0.0) > open_blade_rad) {
            part.blade_angle_rad = 0.0;
            found = true;
        }
        if (part.blocked.value_or(0.0) > 0.0) {
            part.blocked = 0.0;
            found = true;
        }
        if (part.deposit_m.value_or(0.0) > 0.003) {
            part.deposit_m.reset();
            part.deposit.reset();
            found = true;
        }
        if (part.free_area.value_or(1.0) < clear_screen && part.part != PartKind::damper) {
            part.free_area = clear_screen;
            found = true;
        }
    }
    return found ? Cure{better} : std::nullopt;
}

Cure colder_day(const Installation& written, const Case& resolved) {
    Installation better = written;
    bool found = false;
    for (std::size_t i = 0; i < better.site.weather.size(); ++i) {
        if (resolved.weathers[i].outdoor_temperature_k > mild_k) {
            better.site.weather[i].outdoor_temperature_k = cold_day_k;
            found = true;
        }
    }
    return found ? Cure{better} : std::nullopt;
}

Cure held_back(const Installation& written, const Case& resolved) {
    const FlueModel model(resolved, surroundings_of(resolved, 0, Fire::burning));
    const StateResult high = solve_state(model, StateKind::high_fire, Detail::totals);
    if (written.run.empty() || high.draft_pa < resolved.appliance.draft_greatest_pa - 2.0) {
        return std::nullopt;
    }
    Installation better = written;
    Part damper;
    damper.part = PartKind::damper;
    damper.blade_angle_rad = holding_blade_rad;
    better.run.insert(better.run.begin() + 1, damper);
    return better;
}

Cure smaller_opening(const Installation& written, const Case& resolved) {
    const DoorOpening& door = resolved.appliance.door;
    double flue_m2 = resolved.appliance.outlet_area_m2;
    for (const Section& section : resolved.sections) {
        flue_m2 = section.kind == PartKind::straight ? std::min(flue_m2, section.area_m2) : flue_m2;
    }
    if (!resolved.appliance.has_door
        || door.width_m * door.height_m <= opening_over_flue * flue_m2) {
        return std::nullopt;
    }
    Installation better = written;
    better.appliance.door.height_m = opening_over_flue * flue_m2 / door.width_m;
    better.appliance.door.width_m = door.width_m;
    return better;
}

Cure brighter(const Installation& written, const Case& resolved) {
    if (resolved.appliance.low.gas_temperature_k > cool_low_fire_k) {
        return std::nullopt;
    }
    Installation better = written;
    Appliance& a = better.appliance;
    for (HighLow* pair : {&a.burn_rate_kg_s, &a.heat_input_w, &a.heat_output_w, &a.gas_flow_kg_s}) {
        if (pair->low && pair->high) {
            pair->low = std::min(2.0 * *pair->low, *pair->high);
        }
    }
    return better;
}

} // namespace

std::optional<Installation>
cured(const Cause& cause, const Installation& written, const Case& resolved) {
    const std::string_view id = cause.id;
    if (id == "too-short") {
        return higher(written, resolved);
    }
    if (id == "too-narrow") {
        return outlet_size(written, resolved, [](double share) { return share < narrow_share; });
    }
    if (id == "too-wide") {
        return outlet_size(written, resolved, [](double share) { return share > wide_share; });
    }
    if (id == "too-crooked") {
        return straighter(written, resolved);
    }
    if (id == "cold-flue") {
        return warmer(written, resolved);
    }
    if (id == "low-room") {
        return free_room(written, resolved);
    }
    if (id == "wet-wood-known") {
        return drier(written, resolved);
    }
    if (id == "restricted") {
        return cleared(written, resolved);
    }
    if (id == "mild-weather") {
        return colder_day(written, resolved);
    }
    if (id == "strong-draft") {
        return held_back(written, resolved);
    }
    if (id == "wide-opening") {
        return smaller_opening(written, resolved);
    }
    return id == "low-fire-known" ? brighter(written, resolved) : std::nullopt;
}

} // namespace fluewright::diagnosis
