#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/own_names.hpp"
#include "resolving.hpp"
#include "usual_fuel.hpp"

#include <cmath>

namespace fluewright::resolving {
namespace {

/// A fuel the file defines.
void fuel_from_file(const CaseWork& work, const OwnFuel& own) {
    ApplianceCase& a = work.made.appliance;
    const std::string pointer = "/fuels/" + pointer_step(own.id);
    a.analysis = {.carbon = own.carbon.value_or(0.0),
                  .hydrogen = own.hydrogen.value_or(0.0),
                  .oxygen = own.oxygen.value_or(0.0),
                  .nitrogen = own.nitrogen.value_or(0.0),
                  .sulphur = own.sulphur.value_or(0.0),
                  .gross_heating_value_dry_j_kg = 0.0};
    const double ash = own.ash.value_or(0.0);
    const double sum = a.analysis.carbon + a.analysis.hydrogen + a.analysis.oxygen
                       + a.analysis.nitrogen + a.analysis.sulphur + ash;
    if (std::abs(sum - 1.0) > 0.03) {
        work.fault(pointer,
                   "the shares of carbon, hydrogen, oxygen, nitrogen, sulfur and ash of this fuel "
                   "do not add up to 100 % within 3 %",
                   "give the analysis of the dry fuel in mass per cent");
    }
    double& gross = a.analysis.gross_heating_value_dry_j_kg;
    if (own.gross_heating_value_dry_j_kg) {
        gross = *own.gross_heating_value_dry_j_kg;
    } else if (own.net_heating_value_dry_j_kg) {
        const double latent = -combustion::net_heating_value_j_kg(a.analysis, 0.0);
        gross = *own.net_heating_value_dry_j_kg + latent;
    } else {
        gross = combustion::gross_heating_value_channiwala_2002_j_kg(a.analysis, ash);
        work.assume(pointer + "/gross_heating_value",
                    "gross heating value of the dry fuel, from its analysis",
                    Kind::heating_value,
                    gross,
                    "channiwala-parikh-2002",
                    "computed");
    }
    a.fuel_group = *own.group;
}

combustion::FuelAnalysis analysis_of(const catalog::Fuel& row) {
    return {.carbon = row.carbon,
            .hydrogen = row.hydrogen,
            .oxygen = row.oxygen,
            .nitrogen = row.nitrogen,
            .sulphur = row.sulphur,
            .gross_heating_value_dry_j_kg = row.gross_heating_value_dry_j_kg};
}

/// The leanest of what burns by itself: gas of a blast furnace takes 0.6 to 0.7 kg of air per kg
/// (from memory).
constexpr double least_air_kg_kg = 0.5;

/// A fuel of one's own that does not burn is at fault; the rest is then worked out with wood, so
/// that nothing else seems to be wrong.
void hold_to_burning(const CaseWork& work, const OwnFuel& own) {
    ApplianceCase& a = work.made.appliance;
    const std::string pointer = "/fuels/" + pointer_step(own.id);
    const double least_heat_j_kg = find_field<OwnFuel>("net_heating_value")->info.lowest;
    const double air_kg_kg = combustion::stoichiometric_air_kg_kg(a.analysis, 0.0);
    const double heat_j_kg = combustion::net_heating_value_j_kg(a.analysis, a.moisture);
    const auto shown = [&](double value, Kind kind) {
        return format_quantity(value, kind, work.made.units);
    };
    if (air_kg_kg < least_air_kg_kg) {
        work.fault(pointer,
                   "this fuel cannot burn: by its analysis a kilogram of it takes "
                       + format_number(air_kg_kg, 2) + " kg of air, and what burns takes "
                       + format_number(least_air_kg_kg, 2) + " kg or more",
                   "check carbon, hydrogen and oxygen, in mass per cent of the dry fuel");
    } else if (heat_j_kg < least_heat_j_kg) {
        work.fault(pointer,
                   "this fuel cannot burn: with its moisture it has a net heating value of "
                       + shown(heat_j_kg, Kind::heating_value) + ", and what burns has "
                       + shown(least_heat_j_kg, Kind::heating_value) + " or more",
                   "check its heating value, its ash and its moisture");
    } else {
        return;
    }
    const catalog::Fuel& wood = *catalog::find_fuel("wood");
    a.analysis = analysis_of(wood);
    a.moisture = wood.default_moisture;
}

} // namespace

void fuel(const CaseWork& work) {
    ApplianceCase& a = work.made.appliance;
    const FuelChoice& choice = work.written.appliance.fuel;
    a.fuel = choice.name.value_or(std::string{usual_fuel(a.type)});
    if (!choice.name) {
        work.assume_word("/appliance/fuel/name", "fuel", a.fuel, "judgement", "judgement");
    }
    Given moisture = choice.moisture;
    double default_moisture = catalog::find_fuel("wood")->default_moisture;
    std::string_view source = "judgement";
    std::string_view mark = "judgement";
    if (const OwnFuel* own = find_own(work.written.fuels, a.fuel)) {
        a.fuel = own->id;
        fuel_from_file(work, *own);
        if (!moisture) {
            moisture = own->moisture;
        }
    } else {
        const catalog::Fuel& row = *catalog::find_fuel(a.fuel);
        a.fuel = row.id;
        a.fuel_group = row.group;
        a.analysis = analysis_of(row);
        default_moisture = row.default_moisture;
        source = row.source;
        mark = row.mark;
    }
    a.moisture = moisture.value_or(default_moisture);
    if (!moisture && default_moisture > 0.0) {
        work.assume("/appliance/fuel/moisture",
                    "moisture of the fuel, wet basis",
                    Kind::moisture,
                    default_moisture,
                    source,
                    mark);
    }
    if (const OwnFuel* own = find_own(work.written.fuels, a.fuel)) {
        hold_to_burning(work, *own);
    }
    a.net_heating_value_j_kg = combustion::net_heating_value_j_kg(a.analysis, a.moisture);
}

} // namespace fluewright::resolving
