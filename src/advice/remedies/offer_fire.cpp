#include "fluewright/advice/score.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/march/surroundings.hpp"
#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "offer.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright {

void Offer::fire() {
    const ApplianceCase& a = case_.appliance;
    constexpr double near_outdoors_pa = -1.0;
    if (!case_.room_pressure_burning_pa) {
        house();
    } else if (*case_.room_pressure_burning_pa < near_outdoors_pa - 0.05) {
        room_at(near_outdoors_pa);
    }
    const double wet = catalog::default_of(DefaultId::moisture_limit_wet).value;
    constexpr double dry_moisture = 0.16;
    if (a.fuel_group == FuelGroup::wood && a.moisture > wet) {
        add({.kind = RemedyKind::dry_fuel,
             .amount = dry_moisture,
             .place = "the fuel",
             .what = "Burn wood of " + show(dry_moisture, Kind::moisture) + " moisture, not "
                     + show(a.moisture, Kind::moisture)});
    }
    if (!is_fed_by_hand(a)) {
        return;
    }
    constexpr double brisker = 1.5;
    constexpr double smaller = 0.75;
    const double low_kg_s = std::min(a.low.burn_rate_kg_s * brisker, a.high.burn_rate_kg_s);
    add({.kind = RemedyKind::brisk_low_fire,
         .amount = a.high.burn_rate_kg_s,
         .other = low_kg_s,
         .place = "the fire",
         .what = "Do not turn down below " + show(low_kg_s, Kind::mass_rate)
                 + ": smaller loads, burned briskly"});
    no_more_than(smaller);
    if (a.has_door) {
        for (const double share : {0.85, 0.7}) {
            open_up_to(share * a.door.height_m);
        }
    }
    if (has_open_front(a)) {
        hearth();
    }
}

void Offer::room_at(double pressure_pa) {
    add({.kind = RemedyKind::air_inlet,
         .amount = pressure_pa,
         .place = "the room",
         .what = "Let air in near the heater, or run fewer fans, until the room is no more than "
                 + show(-pressure_pa, Kind::pressure) + " below outdoors"});
}

void Offer::no_more_than(double share) {
    const ApplianceCase& a = case_.appliance;
    const double high_kg_s = a.high.burn_rate_kg_s * share;
    add({.kind = RemedyKind::smaller_fire,
         .amount = high_kg_s,
         .other = std::min(a.low.burn_rate_kg_s, high_kg_s),
         .place = "the fire",
         .what = "Burn no more than " + show(high_kg_s, Kind::mass_rate)
                 + ": smaller loads, or bricks that make the firebox smaller"});
}

/// A listed heater is not altered: its listing would be void.
void Offer::open_up_to(double height_m) {
    const bool front = has_open_front(case_.appliance);
    if (!front && before_.appliance.listed == Flag{true}) {
        return;
    }
    add({.kind = RemedyKind::lower_door_opening,
         .amount = height_m,
         .place = front ? "the lintel" : "the door",
         .what = front ? "Lower the lintel to " + show(height_m, Kind::length)
                             + " over the hearth with a smoke guard or a hood"
                       : "Lower the opening to " + show(height_m, Kind::length)
                             + " with a fixed strip at its top",
         .caution = front || before_.appliance.listed
                        ? ""
                        : "the file does not say whether the heater is listed: a strip on a listed "
                          "heater voids its listing, so ask its maker first"});
}

/// What masons do to an opening that is too large for its flue.
void Offer::hearth() {
    const ApplianceCase& a = case_.appliance;
    for (const double share : {0.15, 0.3}) {
        const double up_m = share * a.door.height_m;
        add({.kind = RemedyKind::raise_hearth,
             .amount = up_m,
             .place = "the hearth",
             .what = "Raise the hearth by " + show(up_m, Kind::length)
                     + " of firebrick, so that the opening is as much lower"});
    }
    const double insert_m = us() ? 6.0 * constants::inch_m : 0.15;
    const std::string_view liner = run_ ? liner_that_goes_in(*run_, insert_m) : "";
    if (liner.empty()) {
        return;
    }
    add({.kind = RemedyKind::fit_insert,
         .amount = insert_m,
         .word = std::string{liner},
         .place = "the hearth",
         .what = "Set an insert with a door into the hearth, on "
                 + std::string{liner.ends_with("insulated") ? "an insulated" : "a flexible"}
                 + " liner of " + show(insert_m, Kind::length) + " up to the top"});
}

/// Inlets that bring the room near outdoors in the state that takes most of its air, and fans off.
void Offer::house() {
    std::string fans;
    for (const Fan& fan : before_.site.house.fans) {
        if (fan.flow_m3_s.value_or(0.0) > 0.0) {
            fans += (fans.empty() ? "" : ", ") + fan.name.value_or("the fan");
        }
    }
    if (!fans.empty()) {
        add({.kind = RemedyKind::stop_fans,
             .place = fans,
             .what = "Run no fan that takes air out while the fire burns, or let a window contact "
                     "switch it"});
    }
    std::vector<double> taken_kg_s(case_.weathers.size());
    for (const StateResult& state : score(case_).states) {
        double& most = taken_kg_s[state.weather];
        most = std::max(most, state.room.taken_kg_s);
    }
    for (const double target_pa : {-4.0, -2.0, -1.0}) {
        double area_m2 = 0.0;
        for (std::size_t weather = 0; weather < case_.weathers.size(); ++weather) {
            const Surroundings around = surroundings_of(case_, weather, Fire::burning);
            area_m2 = std::max(area_m2, around.house.inlet_area_m2(target_pa, taken_kg_s[weather]));
        }
        constexpr double step_m2 = 0.001;
        if (area_m2 > 0.0) {
            area_m2 = std::ceil(area_m2 / step_m2) * step_m2;
            inlet_of(area_m2, target_pa);
        }
    }
}

void Offer::inlet_of(double area_m2, double target_pa) {
    add({.kind = RemedyKind::air_inlet,
         .amount = target_pa,
         .other = area_m2,
         .place = "the room",
         .what =
             "Open an air inlet of " + show(area_m2, Kind::area) + " clear area near the heater"});
}

} // namespace fluewright
