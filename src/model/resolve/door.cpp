#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "resolving.hpp"

#include <algorithm>

namespace fluewright::resolving {
namespace {

/// Lower edge of the door over the floor; left out, so that its upper edge lies as usual.
double sill_height_m(const CaseWork& work) {
    const ApplianceCase& a = work.made.appliance;
    if (const Given& written = work.written.appliance.door.sill_height_m) {
        return *written;
    }
    const catalog::Default& below = catalog::default_of(DefaultId::door_top_below_outlet_m);
    const double sill_m = std::max(0.0, a.outlet_height_m - a.door.height_m - below.value);
    work.assume("/appliance/door/sill",
                (has_open_front(work.made.appliance) ? "lower edge of the opening"
                                                     : "lower edge of the door")
                    + std::string{" above the floor: its upper edge "}
                    + format_quantity(below.value, Kind::length, work.made.units)
                    + " below the outlet",
                Kind::length,
                sill_m,
                below.source,
                below.mark);
    return sill_m;
}

/// What the lining and body of the heater hold when the door is opened.
void lining(const CaseWork& work, const catalog::ApplianceDefault& defaults) {
    const Firebox& written = work.written.appliance.firebox;
    const auto figure = [&](const Given& given,
                            std::string_view pointer,
                            std::string_view what,
                            Kind kind,
                            double usual) {
        if (!given && !has_open_front(work.made.appliance)) { // of no account in the open
            work.assume(pointer, what, kind, usual, "judgement", "judgement");
        }
        return given.value_or(usual);
    };
    const double area_m2 = figure(written.lining_area_m2,
                                  "/appliance/firebox/lining_area",
                                  "hot surface the air from an open door passes",
                                  Kind::area,
                                  defaults.lining_area_m2);
    const double mass_kg = figure(written.lining_mass_kg,
                                  "/appliance/firebox/lining_mass",
                                  "lining and body of the heater that hold heat behind it",
                                  Kind::mass,
                                  defaults.lining_mass_kg);
    ApplianceCase& a = work.made.appliance;
    a.lining.transfer_w_k =
        area_m2 * catalog::default_of(DefaultId::lining_coefficient_w_m2k).value;
    a.lining.heat_j_k = mass_kg * catalog::default_of(DefaultId::lining_specific_heat_j_kgk).value;
}

/// What the way into the flue of an open hearth loses, by how it is built.   [theory eq. 77]
void smoke_chamber(const CaseWork& work) {
    const Choice<SmokeChamber>& written = work.written.appliance.door.smoke_chamber;
    DoorOpening& door = work.made.appliance.door;
    const double sharp = catalog::find_fitting("entry flush")->loss;
    const double smooth = catalog::find_fitting("entry rounded")->loss;
    switch (written.value_or(SmokeChamber::none)) {
    case SmokeChamber::tapered:
        door.entry_loss = smooth;
        break;
    case SmokeChamber::corbelled:
        door.entry_loss = 0.5 * (sharp + smooth); // between the two; judgement
        break;
    case SmokeChamber::none:
        door.entry_loss = sharp;
        break;
    }
    if (!written) {
        work.assume_word("/appliance/door/smoke_chamber",
                         "smoke chamber between the throat and the flue",
                         "none",
                         "judgement",
                         "judgement");
    }
}

} // namespace

void door(const CaseWork& work, const catalog::ApplianceDefault& defaults) {
    ApplianceCase& a = work.made.appliance;
    const Door& written = work.written.appliance.door;
    const bool is_loaded_by_hand =
        a.fuel_group == FuelGroup::wood || a.fuel_group == FuelGroup::coal;
    a.has_door = (written.width_m && written.height_m)
                 || (is_loaded_by_hand && a.type != ApplianceType::draft_hood);
    if (!a.has_door) {
        return;
    }
    a.door.width_m = work.value_or_default(written.width_m,
                                           "/appliance/door/width",
                                           has_open_front(a) ? "clear width of the opening"
                                                             : "clear width of the loading door",
                                           Kind::length,
                                           DefaultId::door_width_m);
    a.door.width_m = written.open_width_m.value_or(a.door.width_m);
    a.door.throat_m2 = written.throat_m2.value_or(0.0);
    a.door.height_m = work.value_or_default(written.height_m,
                                            "/appliance/door/height",
                                            has_open_front(a) ? "clear height of the opening"
                                                              : "clear height of the loading door",
                                            Kind::length,
                                            DefaultId::door_height_m);
    a.door.top_below_outlet_m = a.outlet_height_m - sill_height_m(work) - a.door.height_m;
    const auto share = [&](std::string_view what, DefaultId id) {
        return work.value_or_default(std::nullopt, "/appliance/door", what, Kind::fraction, id);
    };
    a.door_passage_share =
        has_open_front(a)
            ? 1.0 // there is nothing to open
            : share("share of the appliance's resistance that stays with the door open",
                    DefaultId::door_passage_share);
    if (has_open_front(a)) {
        smoke_chamber(work);
        // Nobody shuts a hearth on its embers: they glow down to the least that is plausible.
        const catalog::Default& row = catalog::default_of(DefaultId::embers_burn_share);
        a.embers_share = row.low;
        work.assume("/appliance/door",
                    "burn rate over embers of an open hearth, of that at high fire",
                    Kind::fraction,
                    row.low,
                    row.source,
                    row.mark);
    } else {
        a.embers_share =
            share("burn rate over embers, of that at high fire", DefaultId::embers_burn_share);
    }
    lining(work, defaults);
}

} // namespace fluewright::resolving
