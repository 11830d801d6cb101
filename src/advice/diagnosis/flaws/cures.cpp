#include "cures.hpp"

#include "advice/diagnosis/seen/too_much.hpp"
#include "flaw.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
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
constexpr double cool_day_k = 15.0; ///< between room and outdoors
constexpr double sound_bare_in_room_m = 2.4;
constexpr double narrow_share = 0.95;
constexpr double wide_share = 1.5;
constexpr double sound_room_pa = -1.5;
constexpr double near_outdoors_pa = -1.0;
constexpr double shut_weight = 8.0; ///< nobody looks farther than a blade across the flue
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

// And what nobody in the trade would pass over.
constexpr double glaring_lack_m = 2.0;
constexpr double glaring_level_m = 3.0;
constexpr double glaring_narrow_share = 0.6;
constexpr double glaring_wide_share = 3.0;
constexpr double glaring_bare_in_cold_m = 2.0;
constexpr double glaring_room_pa = -6.0;
constexpr double glaring_moisture = 0.33;
constexpr double glaring_over_pa = 10.0;
constexpr double cold_low_fire_k = 353.15;
constexpr double light_wind_m_s = 2.0;
constexpr double glaring_wind_m_s = 8.0;

Flaw higher(const Installation& /*written*/, const Case& c) {
    const double lacking_m = sound_rise_m - c.total_rise_m();
    return lacking_m <= 0.0
               ? Flaw{}
               : flaw(grade(lacking_m, 0.0, glaring_lack_m),
                      cure_of(remedy(RemedyKind::raise_top, lacking_m, wall_of_raised_top(c))));
}

struct Widths {
    double least{1.0}; ///< section over that of the outlet
    double most{1.0};
};

/// Over the parts whose size can be chosen, or those where it cannot.
Widths widths(const Case& c, bool choice_of_size) {
    Widths found;
    for (const Section& section : c.sections) {
        const RunPart* part = c.run.part(section.part);
        if (part != nullptr && part->has_choice_of_size() == choice_of_size) {
            const double share = section.area_m2 / c.appliance.outlet_area_m2;
            found.least = std::min(found.least, share);
            found.most = std::max(found.most, share);
        }
    }
    return found;
}

Flaw wider(const Installation& /*written*/, const Case& c) {
    // Pipe is changed; the section of a masonry flue can only be thought away.
    const double masonry = widths(c, false).least;
    const double pipe = widths(c, true).least;
    const double how_far = grade(-std::min(masonry, pipe), -narrow_share, -glaring_narrow_share);
    if (masonry < narrow_share) {
        return flaw(how_far, cure_of(FlawGone{CauseId::too_narrow}));
    }
    if (pipe < narrow_share) {
        return flaw(how_far, cure_of(remedy(RemedyKind::pipe_size, c.appliance.outlet_diameter_m)));
    }
    return {};
}

Flaw narrower(const Installation& /*written*/, const Case& c) {
    const double masonry = widths(c, false).most;
    const double pipe = widths(c, true).most;
    Cure cure;
    if (pipe > wide_share) {
        cure.emplace_back(remedy(RemedyKind::pipe_size, c.appliance.outlet_diameter_m));
    }
    if (masonry > wide_share) {
        cure.emplace_back(
            remedy(RemedyKind::line_flue, c.appliance.outlet_diameter_m, "flexible liner"));
    }
    return cure.empty()
               ? Flaw{}
               : flaw(grade(std::max(masonry, pipe), wide_share, glaring_wide_share), cure);
}

Flaw straighter(const Installation& written, const Case& c) {
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
    const double how_far = std::max(grade(turns_rad, most_rad, most_rad + constants::pi),
                                    grade(level_m, sound_level_m, glaring_level_m));
    const double shorter = shortest_level_m / longest_m;
    const Remedy none_left = remedy(RemedyKind::remove_level);
    if (apply(none_left, written)) {
        return flaw(how_far, cure_of(none_left));
    }
    return flaw(how_far,
                cure_of(remedy(RemedyKind::straighten_level),
                        remedy(RemedyKind::shorten_level, shorter),
                        remedy(RemedyKind::smooth_elbows)));
}

Flaw warmer(const Installation& /*written*/, const Case& c) {
    double bare_in_room_m = 0.0;
    double bare_in_cold_m = 0.0;
    for (const RunPart& part : c.run.parts) {
        if (part.has_length() && part.wall_kind != WallKind::insulated
            && part.wall_kind != WallKind::double_wall) {
            (part.zone.value == Zone::room ? bare_in_room_m : bare_in_cold_m) += part.length_m;
        }
    }
    if (bare_in_cold_m <= 0.0 && bare_in_room_m <= sound_bare_in_room_m) {
        return {};
    }
    Cure cure = cure_of(remedy(RemedyKind::double_wall_connector, 0.0, double_wall),
                        remedy(RemedyKind::insulate_outside, 0.0, insulated));
    // A liner that changes the width as well would cure another flaw.
    const Widths masonry = widths(c, false);
    if (masonry.least >= narrow_share && masonry.most <= wide_share) {
        cure.emplace_back(
            remedy(RemedyKind::line_flue, c.appliance.outlet_diameter_m, insulated_liner));
    }
    const double in_room = grade(bare_in_room_m, sound_bare_in_room_m, 2.0 * sound_bare_in_room_m);
    return flaw(std::max(in_room, grade(bare_in_cold_m, 0.0, glaring_bare_in_cold_m)), cure);
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

StateResult high_fire(const Case& c) {
    const FlueModel model(c, surroundings_of(c, 0, Fire::burning));
    return solve_state(model, StateKind::high_fire, Detail::totals);
}

/// Whether the room was measured about level with outdoors while it burned: what is computed of the
/// house says nothing against that.
bool is_measured_level(const std::vector<Observation>& seen) {
    return std::any_of(seen.begin(), seen.end(), [](const Observation& each) {
        return each.room_pressure_pa.value_or(sound_room_pa) >= near_outdoors_pa
               && each.state != StateKind::idle;
    });
}

Flaw free_room(const Installation& written, const Case& c) {
    if (is_measured_level(written.observed)) {
        return {};
    }
    const Given& stated_pa = written.site.room.pressure_pa;
    const double room_pa = stated_pa ? *stated_pa : high_fire(c).room.pressure_pa;
    if (room_pa > sound_room_pa) {
        return {};
    }
    Flaw found{.grade = grade(-room_pa, -sound_room_pa, -glaring_room_pa), .cures = {}};
    if (stated_pa) {
        found.cures.push_back(cure_of(remedy(RemedyKind::air_inlet)));
        return found;
    }
    const bool any_fan =
        std::any_of(written.site.house.fans.begin(),
                    written.site.house.fans.end(),
                    [](const Fan& fan) { return fan.flow_m3_s.value_or(0.0) > 0.0; });
    if (any_fan) {
        found.cures.push_back(cure_of(remedy(RemedyKind::stop_fans)));
    }
    if (const double area_m2 = inlet_m2(c); area_m2 > 0.0) {
        found.cures.push_back(cure_of(remedy(RemedyKind::air_inlet, near_outdoors_pa, area_m2)));
    }
    return found;
}

Flaw drier(const Installation& /*written*/, const Case& c) {
    const double wet = catalog::default_of(DefaultId::moisture_limit_wet).value + 0.02;
    return c.appliance.moisture <= wet ? Flaw{}
                                       : flaw(grade(c.appliance.moisture, wet, glaring_moisture),
                                              cure_of(remedy(RemedyKind::dry_fuel, dry_wood)));
}

/// Whether the file shows a damper across the flue.
bool has_shut_damper(const Installation& written) {
    return std::any_of(written.run.begin(), written.run.end(), [](const Part& part) {
        return part.part == PartKind::damper
               && part.blade_angle_rad.value_or(0.0) >= shut_blade_rad;
    });
}

Flaw cleared(const Installation& written, const Case& /*c*/) {
    double how_far = -1.0;
    const auto found = [&](double value, double sound, double glaring) {
        if (value > sound) {
            how_far = std::max(how_far, grade(value, sound, glaring));
        }
    };
    for (const Part& part : written.run) {
        found(part.blade_angle_rad.value_or(0.0), turned_blade_rad, 1.0);
        found(part.blocked.value_or(0.0), 0.0, 0.5);
        found(part.deposit_m.value_or(0.0), thin_deposit_m, 4.0 * thin_deposit_m);
        if (part.part != PartKind::damper) {
            found(-part.free_area.value_or(1.0), -clear_screen, -0.5 * clear_screen);
        }
    }
    if (how_far < 0.0) {
        return {};
    }
    Flaw made = flaw(how_far,
                     cure_of(remedy(RemedyKind::open_damper),
                             remedy(RemedyKind::sweep),
                             remedy(RemedyKind::clean_screen)));
    made.weight = has_shut_damper(written) ? shut_weight : 1.0;
    return made;
}

Flaw colder_day(const Installation& /*written*/, const Case& c) {
    double least_k = cool_day_k;
    for (const WeatherCase& weather : c.weathers) {
        least_k = std::min(least_k, c.room_temperature_k - weather.outdoor_temperature_k);
    }
    return flaw(grade(-least_k, -cool_day_k, 0.0), cure_of(FlawGone{CauseId::mild_weather}));
}

/// A draft that was measured counts, whatever is computed.
Flaw held_back(const Installation& written, const Case& c) {
    const double draft_pa = std::max(high_fire(c).draft_pa, measured_draft_pa(written));
    const double over_pa = draft_pa - c.appliance.draft_greatest_pa;
    return over_pa < -2.0
               ? Flaw{}
               : flaw(grade(over_pa, 0.0, glaring_over_pa),
                      cure_of(remedy(RemedyKind::fit_damper, holding_blade_rad)),
                      cure_of(remedy(RemedyKind::fit_regulator, c.appliance.high.draft_needed_pa)));
}

Flaw smaller_opening(const Installation& /*written*/, const Case& c) {
    if (!c.appliance.has_door) {
        return {};
    }
    const DoorOpening& door = c.appliance.door;
    const double most = has_open_front(c.appliance) ? front_over_flue : door_over_flue;
    const double height_m = most * c.appliance.outlet_area_m2 / door.width_m;
    return door.height_m <= height_m
               ? Flaw{}
               : flaw(grade(door.height_m, height_m, 2.0 * height_m),
                      cure_of(remedy(RemedyKind::lower_door_opening, height_m)),
                      cure_of(remedy(RemedyKind::lower_door_opening, small_opening * height_m)));
}

Flaw brighter(const Installation& /*written*/, const Case& c) {
    const double high_kg_s = c.appliance.high.burn_rate_kg_s;
    const double low_kg_s = std::min(2.0 * c.appliance.low.burn_rate_kg_s, high_kg_s);
    const double gas_k = c.appliance.low.gas_temperature_k;
    return gas_k > cool_low_fire_k
               ? Flaw{}
               : flaw(grade(-gas_k, -cool_low_fire_k, -cold_low_fire_k),
                      cure_of(remedy(RemedyKind::brisk_low_fire, high_kg_s, low_kg_s)));
}

/// A top that the file puts into bad wind, and a weather that brings it.
Flaw in_clear_wind(const Installation& written, const Case& c) {
    if (written.site.top_position != ChimneyTopPosition::adverse) {
        return {};
    }
    double strongest_m_s = 0.0;
    for (const WeatherCase& weather : c.weathers) {
        strongest_m_s = std::max(strongest_m_s, weather.wind_m_s);
    }
    return strongest_m_s <= light_wind_m_s
               ? Flaw{}
               : flaw(grade(strongest_m_s, light_wind_m_s, glaring_wind_m_s),
                      cure_of(FlawGone{CauseId::windy_top}));
}

/// A pipe whose file states that its crimped end points up: one is enough for water to run out.
Flaw turned_round(const Installation& written, const Case& /*c*/) {
    const FlawGone turned{CauseId::crimps_up};
    return changed(Change{turned}, written) ? flaw(1.0, cure_of(turned)) : Flaw{};
}

struct FlawRow {
    CauseId cause;
    Flaw (*flaw)(const Installation& written, const Case& c);
};

constexpr std::array rows{FlawRow{CauseId::too_short, higher},
                          FlawRow{CauseId::too_narrow, wider},
                          FlawRow{CauseId::too_wide, narrower},
                          FlawRow{CauseId::too_crooked, straighter},
                          FlawRow{CauseId::cold_flue, warmer},
                          FlawRow{CauseId::low_room, free_room},
                          FlawRow{CauseId::wet_wood_known, drier},
                          FlawRow{CauseId::restricted, cleared},
                          FlawRow{CauseId::mild_weather, colder_day},
                          FlawRow{CauseId::strong_draft, held_back},
                          FlawRow{CauseId::wide_opening, smaller_opening},
                          FlawRow{CauseId::low_fire_known, brighter},
                          FlawRow{CauseId::windy_top, in_clear_wind},
                          FlawRow{CauseId::crimps_up, turned_round}};

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

std::vector<FoundFlaw> flaws_of(const Installation& written, const Case& resolved) {
    std::vector<FoundFlaw> found;
    for (const FlawRow& row : rows) {
        const Cause& cause = cause_of(row.cause);
        if (!applies_to(cause.kinds, kind_of(resolved.appliance))) {
            continue;
        }
        const Flaw flaw = row.flaw(written, resolved);
        if (!flaw.cures.empty()) {
            found.push_back({&cause, flaw.grade, flaw.weight});
        }
    }
    return found;
}

bool is_no_fault_of_the_run(const Cause& flaw) {
    return id_of(flaw) == CauseId::mild_weather || id_of(flaw) == CauseId::low_fire_known;
}

std::vector<Trial> cured(const Cause& cause, const Installation& written, const Case& resolved) {
    std::vector<Trial> trials;
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const FlawRow& entry) {
        return entry.cause == id_of(cause);
    });
    if (row == rows.end()) {
        return trials;
    }
    for (const Cure& cure : row->flaw(written, resolved).cures) {
        if (auto trial = with(cure, written)) {
            trials.push_back(std::move(*trial));
        }
    }
    return trials;
}

} // namespace fluewright::diagnosis
