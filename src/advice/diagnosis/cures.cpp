#include "cures.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "fluewright/model/states/states.hpp"

#include <algorithm>
#include <array>

namespace fluewright::diagnosis {
namespace {

// What counts as sound; judgement from the rules of the trade in docs/diagnosis.md.
constexpr double sound_rise_m = 4.5;
constexpr double sound_level_m = 1.5;
constexpr double shortest_level_m = 0.3;
constexpr double sound_bare_in_room_m = 2.4;
constexpr double narrow_share = 0.95;
constexpr double wide_share = 1.5;
constexpr double sound_room_pa = -1.5;
constexpr double near_outdoors_pa = -1.0;
constexpr double open_blade_rad = 0.35;
constexpr double clear_screen = 0.6;
constexpr double thin_deposit_m = 0.003;
constexpr double front_over_flue = 10.0;
constexpr double door_over_flue = 6.0;
constexpr double small_opening = 0.75; ///< of the largest that is sound
constexpr double dry_wood = 0.18;
constexpr double holding_blade_rad = 1.05;
constexpr double cool_low_fire_k = 393.15;
constexpr std::string_view insulated = "insulated 25 mm";
constexpr std::string_view double_wall = "double-wall connector";
constexpr std::string_view insulated_liner = "rigid liner insulated";

/// One way to take a flaw away. Of the changes those that do something here are made, in this
/// order.
using Cure = std::vector<Change>;

/// The ways there are; none: the installation does not have the flaw.
using Cures = std::vector<Cure>;

template <class... Changes>
Cure cure_of(Changes... changes) {
    Cure cure;
    (cure.emplace_back(std::move(changes)), ...);
    return cure;
}

template <class... Ways>
Cures ways(Ways... made) {
    Cures cures;
    (cures.push_back(std::move(made)), ...);
    return cures;
}

Remedy remedy(RemedyKind kind, double amount = 0.0, double other = 0.0) {
    return {.kind = kind, .amount = amount, .other = other};
}

Remedy remedy(RemedyKind kind, double amount, std::string_view word) {
    return {.kind = kind, .amount = amount, .word = std::string{word}};
}

Cures higher(const Installation& /*written*/, const Case& c) {
    const double lacking_m = sound_rise_m - c.total_rise_m();
    return lacking_m <= 0.0 ? Cures{} : ways(cure_of(remedy(RemedyKind::raise_top, lacking_m)));
}

/// Whether a part whose size can be chosen, or one where it cannot, has a section over the outlet's
/// that `wrong` finds.
template <class Wrong>
bool any_part(const Case& c, bool choice_of_size, const Wrong& wrong) {
    return std::any_of(c.sections.begin(), c.sections.end(), [&](const Section& section) {
        const RunPart* part = c.run.part(section.part);
        return part != nullptr && part->has_choice_of_size() == choice_of_size
               && wrong(section.area_m2 / c.appliance.outlet_area_m2);
    });
}

Cures wider(const Installation& /*written*/, const Case& c) {
    const auto narrow = [](double share) { return share < narrow_share; };
    // Pipe is changed; the section of a masonry flue can only be thought away.
    if (any_part(c, false, narrow)) {
        return ways(cure_of(FlawGone{CauseId::too_narrow}));
    }
    if (any_part(c, true, narrow)) {
        return ways(cure_of(remedy(RemedyKind::pipe_size, c.appliance.outlet_diameter_m)));
    }
    return {};
}

Cures narrower(const Installation& /*written*/, const Case& c) {
    const auto wide = [](double share) { return share > wide_share; };
    Cure cure;
    if (any_part(c, true, wide)) {
        cure.emplace_back(remedy(RemedyKind::pipe_size, c.appliance.outlet_diameter_m));
    }
    if (any_part(c, false, wide)) {
        cure.emplace_back(
            remedy(RemedyKind::line_flue, c.appliance.outlet_diameter_m, "flexible liner"));
    }
    return cure.empty() ? Cures{} : ways(std::move(cure));
}

Cures straighter(const Installation& written, const Case& c) {
    double turns_rad = 0.0;
    double level_m = 0.0;
    double longest_m = shortest_level_m;
    for (const RunPart& part : c.run.parts) {
        turns_rad += part.turn_rad;
        level_m += part.plan_m;
        longest_m = std::max(longest_m, part.plan_m);
    }
    const double most_rad = catalog::default_of(DefaultId::turns_most_rad).value;
    if (turns_rad <= most_rad + 0.01 && level_m <= sound_level_m) {
        return {};
    }
    const double shorter = shortest_level_m / longest_m;
    const Remedy none_left = remedy(RemedyKind::remove_level);
    if (apply(none_left, written)) {
        return ways(cure_of(none_left));
    }
    return ways(cure_of(remedy(RemedyKind::straighten_level),
                        remedy(RemedyKind::shorten_level, shorter),
                        remedy(RemedyKind::smooth_elbows)));
}

Cures warmer(const Installation& /*written*/, const Case& c) {
    double bare_in_room_m = 0.0;
    bool any_cold = false;
    for (const RunPart& part : c.run.parts) {
        if (!part.has_length()) {
            continue;
        }
        const bool bare =
            part.wall_kind != WallKind::insulated && part.wall_kind != WallKind::double_wall;
        if (part.zone.value == Zone::room) {
            bare_in_room_m += bare ? part.length_m : 0.0;
        } else {
            any_cold = any_cold || bare;
        }
    }
    if (!any_cold && bare_in_room_m <= sound_bare_in_room_m) {
        return {};
    }
    Cure cure = cure_of(remedy(RemedyKind::double_wall_connector, 0.0, double_wall),
                        remedy(RemedyKind::insulate_outside, 0.0, insulated));
    // A liner that changes the width as well would cure another flaw.
    const auto other_width = [](double share) {
        return share < narrow_share || share > wide_share;
    };
    if (!any_part(c, false, other_width)) {
        cure.emplace_back(
            remedy(RemedyKind::line_flue, c.appliance.outlet_diameter_m, insulated_liner));
    }
    return ways(std::move(cure));
}

/// The inlet that brings the room of a house near outdoors while the fire burns high [m2].
double inlet_m2(const Case& c) {
    double area_m2 = 0.0;
    for (std::size_t weather = 0; weather < c.weathers.size(); ++weather) {
        const Surroundings around = surroundings_of(c, weather, Fire::burning);
        area_m2 = std::max(
            area_m2, around.house.inlet_area_m2(near_outdoors_pa, c.appliance.high.gas_flow_kg_s));
    }
    return area_m2;
}

Cures free_room(const Installation& written, const Case& c) {
    if (const Given& pressure_pa = written.site.room.pressure_pa) {
        return *pressure_pa > sound_room_pa ? Cures{}
                                            : ways(cure_of(remedy(RemedyKind::air_inlet)));
    }
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    if (solve_state(model, StateKind::high_fire, Detail::totals).room.pressure_pa > sound_room_pa) {
        return {};
    }
    Cures cures;
    const bool any_fan =
        std::any_of(written.site.house.fans.begin(),
                    written.site.house.fans.end(),
                    [](const Fan& fan) { return fan.flow_m3_s.value_or(0.0) > 0.0; });
    if (any_fan) {
        cures.push_back(cure_of(remedy(RemedyKind::stop_fans)));
    }
    if (const double area_m2 = inlet_m2(c); area_m2 > 0.0) {
        cures.push_back(cure_of(remedy(RemedyKind::air_inlet, near_outdoors_pa, area_m2)));
    }
    return cures;
}

Cures drier(const Installation& /*written*/, const Case& c) {
    return c.appliance.moisture <= catalog::default_of(DefaultId::moisture_limit_wet).value + 0.02
               ? Cures{}
               : ways(cure_of(remedy(RemedyKind::dry_fuel, dry_wood)));
}

Cures cleared(const Installation& written, const Case& /*c*/) {
    const bool found = std::any_of(written.run.begin(), written.run.end(), [](const Part& part) {
        return part.blade_angle_rad.value_or(0.0) > open_blade_rad
               || part.blocked.value_or(0.0) > 0.0 || part.deposit_m.value_or(0.0) > thin_deposit_m
               || (part.free_area.value_or(1.0) < clear_screen && part.part != PartKind::damper);
    });
    return !found ? Cures{}
                  : ways(cure_of(remedy(RemedyKind::open_damper),
                                 remedy(RemedyKind::sweep),
                                 remedy(RemedyKind::clean_screen)));
}

Cures colder_day(const Installation& /*written*/, const Case& /*c*/) {
    return ways(cure_of(FlawGone{CauseId::mild_weather}));
}

Cures held_back(const Installation& /*written*/, const Case& c) {
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    const StateResult high = solve_state(model, StateKind::high_fire, Detail::totals);
    return high.draft_pa < c.appliance.draft_greatest_pa - 2.0
               ? Cures{}
               : ways(cure_of(remedy(RemedyKind::fit_damper, holding_blade_rad)),
                      cure_of(remedy(RemedyKind::fit_regulator, c.appliance.high.draft_needed_pa)));
}

Cures smaller_opening(const Installation& /*written*/, const Case& c) {
    if (!c.appliance.has_door) {
        return {};
    }
    const DoorOpening& door = c.appliance.door;
    const double most = has_open_front(c.appliance) ? front_over_flue : door_over_flue;
    const double height_m = most * c.appliance.outlet_area_m2 / door.width_m;
    return door.height_m <= height_m
               ? Cures{}
               : ways(cure_of(remedy(RemedyKind::lower_door_opening, height_m)),
                      cure_of(remedy(RemedyKind::lower_door_opening, small_opening * height_m)));
}

Cures brighter(const Installation& /*written*/, const Case& c) {
    const double high_kg_s = c.appliance.high.burn_rate_kg_s;
    const double low_kg_s = std::min(2.0 * c.appliance.low.burn_rate_kg_s, high_kg_s);
    return c.appliance.low.gas_temperature_k > cool_low_fire_k
               ? Cures{}
               : ways(cure_of(remedy(RemedyKind::brisk_low_fire, high_kg_s, low_kg_s)));
}

struct Row {
    CauseId cause;
    Cures (*cures)(const Installation& written, const Case& c);
};

constexpr std::array rows{Row{CauseId::too_short, higher},
                          Row{CauseId::too_narrow, wider},
                          Row{CauseId::too_wide, narrower},
                          Row{CauseId::too_crooked, straighter},
                          Row{CauseId::cold_flue, warmer},
                          Row{CauseId::low_room, free_room},
                          Row{CauseId::wet_wood_known, drier},
                          Row{CauseId::restricted, cleared},
                          Row{CauseId::mild_weather, colder_day},
                          Row{CauseId::strong_draft, held_back},
                          Row{CauseId::wide_opening, smaller_opening},
                          Row{CauseId::low_fire_known, brighter}};

/// The installation with the changes that do something here; nothing where none does.
std::optional<Trial> with(const Cure& cure, const Installation& written) {
    std::optional<Installation> better;
    for (const Change& change : cure) {
        Result<Installation, std::string> made = changed(change, better ? *better : written);
        if (made) {
            better = std::move(made).value();
        }
    }
    if (!better) {
        return std::nullopt;
    }
    better->observed.clear(); // asked of the run, not of what was heard there
    Result<Trial, Faults> trial = try_out(std::move(*better));
    return trial ? std::optional{std::move(trial).value()} : std::nullopt;
}

} // namespace

std::vector<Trial> cured(const Cause& cause, const Installation& written, const Case& resolved) {
    std::vector<Trial> trials;
    const auto row = std::find_if(
        rows.begin(), rows.end(), [&](const Row& entry) { return entry.cause == id_of(cause); });
    if (row == rows.end()) {
        return trials;
    }
    for (const Cure& cure : row->cures(written, resolved)) {
        if (auto trial = with(cure, written)) {
            trials.push_back(std::move(*trial));
        }
    }
    return trials;
}

} // namespace fluewright::diagnosis
