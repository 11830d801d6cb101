#include "resolving.hpp"

#include <cmath>

namespace fluewright::resolving {
namespace {

const OwnFuel* own_fuel(const Installation& written, std::string_view id) {
    for (const OwnFuel& fuel : written.fuels) {
        if (fuel.id == id) {
            return &fuel;
        }
    }
    return nullptr;
}

/// A fuel the file defines.
void fuel_from_file(const Draft& draft, const OwnFuel& own) {
    ApplianceCase& a = draft.made.appliance;
    const std::string pointer = "/fuels/" + own.id;
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
        draft.fault(
            pointer,
            "the shares of carbon, hydrogen, oxygen, nitrogen, sulphur and ash of this fuel "
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
        draft.assume(pointer + "/gross_heating_value",
                     "gross heating value of the dry fuel, from its analysis",
                     Kind::heating_value,
                     gross,
                     "channiwala-parikh-2002",
                     "computed");
    }
    a.fuel_group = own.group.value_or(FuelGroup::wood);
    if (!own.group) {
        draft.assume_word(
            pointer + "/group", "kind of fuel", name(a.fuel_group), "judgement", "judgement");
    }
}

} // namespace

void fuel(const Draft& draft) {
    ApplianceCase& a = draft.made.appliance;
    const FuelChoice& choice = draft.written.appliance.fuel;
    a.fuel = choice.name.value_or(a.type == ApplianceType::draft_hood ? "natural gas" : "wood");
    if (!choice.name) {
        draft.assume_word("/appliance/fuel/name", "fuel", a.fuel, "judgement", "judgement");
    }
    Given moisture = choice.moisture;
    double default_moisture = catalog::find_fuel("wood")->default_moisture;
    std::string_view source = "judgement";
    std::string_view mark = "judgement";
    if (const OwnFuel* own = own_fuel(draft.written, a.fuel)) {
        fuel_from_file(draft, *own);
        if (!moisture) {
            moisture = own->moisture;
        }
    } else {
        const catalog::Fuel& row = *catalog::find_fuel(a.fuel);
        a.fuel = row.id;
        a.fuel_group = row.group;
        a.analysis = {.carbon = row.carbon,
                      .hydrogen = row.hydrogen,
                      .oxygen = row.oxygen,
                      .nitrogen = row.nitrogen,
                      .sulphur = row.sulphur,
                      .gross_heating_value_dry_j_kg = row.gross_heating_value_dry_j_kg};
        default_moisture = row.default_moisture;
        source = row.source;
        mark = row.mark;
    }
    a.moisture = moisture.value_or(default_moisture);
    if (!moisture && default_moisture > 0.0) {
        draft.assume("/appliance/fuel/moisture",
                     "moisture of the fuel, wet basis",
                     Kind::moisture,
                     default_moisture,
                     source,
                     mark);
    }
    a.net_heating_value_j_kg = combustion::net_heating_value_j_kg(a.analysis, a.moisture);
}

} // namespace fluewright::resolving
