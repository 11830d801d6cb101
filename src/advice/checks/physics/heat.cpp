#include "advice/checks/same_trade_size.hpp"
#include "advice/checks/subject.hpp"
#include "fluewright/advice/upkeep/hot_surfaces.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/tar.hpp"
#include "fluewright/model/states/cold_wall.hpp"
#include "fluewright/model/warmup/warmup.hpp"
#include "fluewright/physics/expansion.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::checking {
namespace {

/// What is left to do for a wet wall: not what has been done for it already. Empty where the
/// general words hold.
std::string for_the_wet_wall(const Subject& s, const Section& section) {
    const bool wide = is_narrower(s.resolved.appliance.outlet_area_m2, section.built_area_m2);
    if (s.resolved.walls[section.wall].insulation_m() <= 0.0) {
        return wide ? std::string{} : "Insulate the flue.";
    }
    if (wide) {
        return "It is insulated already: bring it nearer the outlet's size.";
    }
    return is_fed_by_hand(s.resolved.appliance)
               ? "It is insulated already and of the outlet's size: burn drier fuel in brisker "
                 "fires."
               : "It is insulated already and of the outlet's size: use a vent made to run wet, "
                 "with a drain at its foot.";
}

/// What settles on the coldest wall. Where water runs down it, acid and tar are the lesser matter.
void cold_wall(Subject& s, const StateResult& state) {
    const Station* coldest = coldest_wall(state, s.resolved);
    if (coldest == nullptr) {
        return;
    }
    const Section& section = s.resolved.sections[coldest->section];
    const DewPoints dew = dew_points_of(state, s.resolved);
    const bool wet = coldest->inner_wall_k < dew.water_k;
    const auto hold = [&](std::size_t row, double limit_k, std::string_view what) {
        CheckResult* f = s.hold(row,
                                coldest->inner_wall_k >= limit_k,
                                {.kind = Kind::temperature,
                                 .figure = coldest->inner_wall_k,
                                 .limit = limit_k,
                                 .weight = (limit_k - coldest->inner_wall_k) / 100.0},
                                {.section = &section, .place = {}, .state = &state});
        if (f != nullptr && s.with_words()) {
            f->message = "The inner wall is at " + s.show(coldest->inner_wall_k, Kind::temperature)
                         + " at the end of " + f->place + "; " + std::string{what} + " below "
                         + s.show(limit_k, Kind::temperature) + ".";
            if (wet) {
                f->remedy = for_the_wet_wall(s, section);
            }
        }
    };
    hold(own("wall-below-dew-point"), dew.water_k, "water condenses");
    if (!wet && dew.acid_k > 0.0) {
        hold(own("wall-below-acid-dew-point"), dew.acid_k, "acid condenses");
    }
    if (!wet && makes_tar(s.resolved.appliance)) {
        hold(own("wall-below-creosote-threshold"),
             catalog::default_of(DefaultId::creosote_threshold_k).value,
             "creosote forms");
    }
}

/// A heater that burns one charge at a time warms its flue from cold, and is out before the flue is
/// as warm as it would get: whether the wall has dried by then.
void wall_after_one_charge(Subject& s, const StateResult& state) {
    const Case& c = s.resolved;
    double lit_s = 0.0;
    for (const BurnPhase& phase : c.burn) {
        if (phase.out) {
            break;
        }
        lit_s += phase.duration_s;
    }
    // Within 0.3 K of steps fifty times shorter: walls that store heat move slowly.
    constexpr double step_s = 900.0;
    constexpr double shortest_s = 100.0;
    const Warmup course = warm_up(c,
                                  {.weather = state.weather,
                                   .total_s = lit_s,
                                   .step_s = step_s,
                                   .shortest_s = shortest_s,
                                   .record_s = lit_s});
    if (course.parts.empty()) {
        return;
    }
    const WarmupMoment& end = course.moments.back();
    const Section& section = c.sections[course.parts[course.last_dry].section];
    CheckResult* f = s.hold(own("wall-below-dew-point"),
                            end.coldest_wall_k >= end.dew_point_k,
                            {.kind = Kind::temperature,
                             .figure = end.coldest_wall_k,
                             .limit = end.dew_point_k,
                             .weight = (end.dew_point_k - end.coldest_wall_k) / 100.0},
                            {.section = &section, .place = {}, .state = &state});
    if (f != nullptr && s.with_words()) {
        f->message = "When the load has burned down, the coldest inner wall is at "
                     + s.show(end.coldest_wall_k, Kind::temperature) + ", of " + f->place
                     + "; water condenses below " + s.show(end.dew_point_k, Kind::temperature)
                     + ".";
    }
}

/// Ice grows where the wall at the top of the last part with a length is wet and below freezing.
void ice(Subject& s, const StateResult& state) {
    const auto top =
        std::find_if(state.stations.rbegin(), state.stations.rend(), [&](const Station& station) {
            return s.resolved.sections[station.section].length_m > 0.0;
        });
    if (top == state.stations.rend()) {
        return;
    }
    const bool wet = top->inner_wall_k < dew_points_of(state, s.resolved).water_k;
    CheckResult* f =
        s.hold(own("ice-at-top"),
               !wet || top->inner_wall_k >= constants::celsius_zero_k,
               {.kind = Kind::temperature,
                .figure = top->inner_wall_k,
                .limit = constants::celsius_zero_k,
                .weight = (constants::celsius_zero_k - top->inner_wall_k) / 100.0},
               {.section = &s.resolved.sections[top->section], .place = {}, .state = &state});
    if (f != nullptr && s.with_words()) {
        f->message = "The inner wall is at " + s.show(top->inner_wall_k, Kind::temperature)
                     + " and wet at the upper end of " + f->place + "; ice builds up below "
                     + s.show(constants::celsius_zero_k, Kind::temperature) + ".";
    }
}

void ratings(Subject& s, const StateResult& state) {
    for (std::size_t i = 1; i < state.stations.size(); ++i) {
        const Station& station = state.stations[i];
        const Section& section = s.resolved.sections[station.section];
        const Station& before = state.stations[i - 1];
        if (section.length_m <= 0.0) {
            continue;
        }
        const double rating = s.resolved.walls[section.wall].rated_gas_temperature_k;
        const Where here{.section = &section, .place = {}, .state = &state};
        if (rating > 0.0) {
            CheckResult* f = s.hold(own("gas-over-wall-rating"),
                                    before.gas_temperature_k <= rating,
                                    {.kind = Kind::temperature,
                                     .figure = before.gas_temperature_k,
                                     .limit = rating,
                                     .weight = (before.gas_temperature_k - rating) / 100.0},
                                    here);
            if (f != nullptr && s.with_words()) {
                f->message = "Gas of " + s.show(before.gas_temperature_k, Kind::temperature)
                             + " enters " + f->place + "; its wall is rated for "
                             + s.show(rating, Kind::temperature) + ".";
            }
        }
        // The hottest place of a part is near its lower end; the wall there follows the gas.
        const double share =
            (station.outer_wall_k - s.resolved.room_temperature_k)
            / std::max(1.0, station.gas_temperature_k - s.resolved.room_temperature_k);
        const double hottest_k =
            s.resolved.room_temperature_k
            + share * (before.gas_temperature_k - s.resolved.room_temperature_k);
        if (section.rated_surface_k > 0.0) {
            CheckResult* f = s.hold(own("surface-over-rating"),
                                    hottest_k <= section.rated_surface_k,
                                    {.kind = Kind::temperature,
                                     .figure = hottest_k,
                                     .limit = section.rated_surface_k,
                                     .weight = (hottest_k - section.rated_surface_k) / 100.0},
                                    here);
            if (f != nullptr && s.with_words()) {
                f->message = "The outside of " + f->place + " reaches about "
                             + s.show(hottest_k, Kind::temperature) + "; it is rated for "
                             + s.show(section.rated_surface_k, Kind::temperature) + ".";
            }
        }
    }
}

/// Whether nothing after a section turns: what ends at the chimney top grows upwards freely.
bool ends_at_top(const Case& c, std::size_t section) {
    for (std::size_t i = section + 1; i < c.sections.size(); ++i) {
        if (c.sections[i].turn_rad > 0.1) {
            return false;
        }
    }
    return c.sections.back().zone == Zone::outdoors;
}

/// Lengthening of an unbroken stretch of straights, taken at its mean inner-wall temperature.
void lengthening(Subject& s, const StateResult& state) {
    const catalog::Default& play = catalog::default_of(DefaultId::joint_play_m);
    for (std::size_t i = 1; i < state.stations.size(); ++i) {
        const Station& station = state.stations[i];
        const Section& section = s.resolved.sections[station.section];
        const WallBuild& wall = s.resolved.walls[section.wall];
        const bool metal = wall.kind != WallKind::masonry && !wall.inner_material.empty();
        const bool stated = section.expansion_allowed_m >= 0.0;
        if (section.length_m <= 0.0 || !metal
            || (!stated && ends_at_top(s.resolved, station.section))) {
            continue;
        }
        const bool stainless = wall.inner_material.find("stainless") != std::string::npos;
        const double wall_k = mean_wall_k(s.resolved, state, i);
        const double grows_m = section.length_m
                               * std::max(0.0,
                                          stainless ? expansion::stainless_steel(wall_k)
                                                    : expansion::carbon_steel(wall_k));
        const double allowed_m = stated ? section.expansion_allowed_m : play.value;
        CheckResult* f = s.hold(own("straight-grows-past-its-joint"),
                                grows_m <= allowed_m,
                                {.kind = Kind::length,
                                 .figure = grows_m,
                                 .limit = allowed_m,
                                 .weight = allowed_m > 0.0 ? grows_m / allowed_m - 1.0 : 1.0},
                                {.section = &section, .place = {}, .state = &state});
        if (f == nullptr || !s.with_words()) {
            continue;
        }
        f->message = "Hot, " + f->place + " expands by " + s.show(grows_m, Kind::length)
                     + "; its joint takes " + s.show(allowed_m, Kind::length)
                     + (stated ? "." : " (assumed).");
    }
}

/// Over the scale of a flue probe it is a danger whatever burns, over its band of sound wood fires
/// a warning: a wall that the gas is too hot for has its own rating.
void overfired(Subject& s, const StateResult& state) {
    const double hot_k = catalog::default_of(DefaultId::gas_temperature_hot_k).value;
    const double off_scale_k = catalog::default_of(DefaultId::gas_temperature_off_scale_k).value;
    const auto hold = [&](std::size_t row, double limit_k) {
        CheckResult* f = s.hold(row,
                                state.gas_temperature_k <= limit_k,
                                {.kind = Kind::temperature,
                                 .figure = state.gas_temperature_k,
                                 .limit = limit_k,
                                 .weight = (state.gas_temperature_k - limit_k) / 100.0},
                                {.section = nullptr, .place = "the outlet", .state = &state});
        if (f != nullptr && s.with_words()) {
            f->message = "Gas leaves the appliance at "
                         + s.show(state.gas_temperature_k, Kind::temperature) + "; above "
                         + s.show(limit_k, Kind::temperature)
                         + (is_fed_by_hand(s.resolved.appliance) ? " it is overfired."
                                                                 : " its burner is out of order.");
        }
    };
    hold(own("gas-too-hot"), off_scale_k);
    const bool is_wood = s.resolved.appliance.fuel_group == FuelGroup::wood;
    if (is_wood && state.gas_temperature_k <= off_scale_k) {
        hold(own("heater-overfired"), hot_k);
    }
}

} // namespace

void heat(Subject& s) {
    for (const StateResult& state : s.view.states()) {
        if (!is_held_fire(state.kind) || state.stations.empty()) {
            continue;
        }
        // A fire that the run cannot vent is solved at a lower flow, whose walls are not its own.
        if (state.status != Status::cannot_vent) {
            if (s.resolved.appliance.type != ApplianceType::masonry_heater) {
                cold_wall(s, state);
            } else if (s.view.one_charge) {
                wall_after_one_charge(s, state);
            }
            ice(s, state);
        }
        if (state.kind == StateKind::high_fire) {
            overfired(s, state);
            ratings(s, state);
            lengthening(s, state);
        }
    }
}

} // namespace fluewright::checking
