#include "en13384_run.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/states/states.hpp"
#include "fluewright/physics/european_chimney.hpp"
#include "left_out.hpp"

#include <utility>

namespace fluewright::european {
namespace {

/// As the method has it, whatever the units of the report.
std::string pascals(double pressure_pa) {
    return format_quantity(pressure_pa, Kind::pressure, UnitSystem::metric);
}

} // namespace

std::vector<std::string> notes_on(const Case& c) {
    std::vector<std::string> notes{
        "The standard was not seen as a whole: marks tell which terms rest on looked-up pages and "
        "which on memory. Do not use this in place of the standard where it is binding.",
        c.top_is_adverse
            ? "PL is " + pascals(adverse_zone_inland_pa)
                  + ", as the file says `top_position` "
                    "adverse: the standard takes so much inland. Near the coast it takes "
                  + pascals(adverse_zone_coast_pa)
                  + ": take the difference off PZ there (from "
                    "memory)."
            : "PL is 0: the chimney top is taken to stand clear of the roof. In an adverse zone "
              "the "
              "standard takes "
                  + pascals(adverse_zone_inland_pa) + " inland and "
                  + pascals(adverse_zone_coast_pa) + " near the coast (from memory).",
        "cp, R, water vapor and the flow factors come from the fuel's composition, since the "
        "standard's own table of fuels was not seen.",
        "Bends, tees and sudden steps have the standard's zeta (from memory); other parts, and "
        "losses the file gives, keep theirs.",
        "The wall's resistance is taken at 200 degC from its layers.",
        "PZmax: 258.15 K outdoors, SH 1 and no factor on resistance are judgement; if it fails, "
        "the standard lets a draft regulator in. It does not count in the verdict."};
    if (surroundings_of(c, 0, Fire::burning).house.known()) {
        notes.emplace_back("House and fans of the file are left out: PB is what the method takes "
                           "for the air of the fire. The full physics has them.");
    }
    if (tells_of_wind(c)) {
        notes.emplace_back("No wind of the file is computed: PL alone stands for it. The full "
                           "physics has it.");
    }
    for (std::string& note : left_out_of_methods(c)) {
        notes.push_back(std::move(note));
    }
    const std::size_t start = chimney_section(c);
    if (start == 0) {
        notes.emplace_back("No tee turns the gas and no wall is one of a chimney: the whole run is "
                           "taken as the chimney, with no connector.");
    } else {
        notes.push_back("The chimney begins at part " + std::to_string(c.sections[start].part + 1)
                        + (c.sections[start].kind == PartKind::tee
                               ? ", the tee in which the gas turns."
                               : ", the first with the wall of a chimney."));
    }
    if (c.appliance.fuel_group == FuelGroup::coal || c.appliance.fuel_group == FuelGroup::oil) {
        notes.emplace_back("The acid allowance on Tg is by Verhoff and Banchero 1974; the "
                           "standard's own coefficients are not known here.");
    }
    return notes;
}

} // namespace fluewright::european
