#include "fluewright/model/run/heater_kind.hpp"
#include "fluewright/physics/openings.hpp"
#include "resolving.hpp"

#include <algorithm>

namespace fluewright::resolving {
namespace {

double figure(DefaultId id) {
    return catalog::default_of(id).value;
}

double height_m(const CaseWork& work) {
    const House& house = work.written.site.house;
    const bool one_room = work.made.shelter == Shelter::one_room;
    if (house.height_m || (!house.storeys && !one_room)) {
        return work.value_or_default(house.height_m,
                                     "/site/house/height",
                                     "height of the heated shell",
                                     Kind::length,
                                     DefaultId::house_height_m);
    }
    const catalog::Default& storey = catalog::default_of(DefaultId::house_story_height_m);
    const double height = house.storeys.value_or(1.0) * storey.value;
    work.assume("/site/house/height",
                house.storeys ? "height of the heated shell, from its stories"
                              : "height of the heated shell, of one room",
                Kind::length,
                height,
                storey.source,
                storey.mark);
    return height;
}

/// A house is no smaller than the room that is given; a workshop of one room is that room.
double volume_m3(const CaseWork& work) {
    const Given& of_room = work.written.site.room.volume_m3;
    const bool one_room = work.made.shelter == Shelter::one_room;
    const Given& of_house = work.written.site.house.volume_m3;
    const Given given = of_house                          ? of_house
                        : work.written.building.volume_m3 ? work.written.building.volume_m3
                                                          : Given{};
    if (given || !of_room || (!one_room && *of_room <= figure(DefaultId::house_volume_m3))) {
        return work.value_or_default(
            given,
            "/site/house/volume",
            one_room ? "heated volume of the one room" : "heated volume of the house",
            Kind::volume,
            one_room ? DefaultId::one_room_volume_m3 : DefaultId::house_volume_m3);
    }
    work.assume("/site/house/volume",
                one_room ? "heated volume, that of the room"
                         : "heated volume of the house, that of the room, which is large",
                Kind::volume,
                *of_room,
                "judgement",
                "judgement");
    return *of_room;
}

void tightness(const CaseWork& work) {
    const House& house = work.written.site.house;
    HouseCase& made = work.made.house;
    made.leak_exponent = work.value_or_default(house.leakage_exponent,
                                               "/site/house/leakage_exponent",
                                               "exponent of pressure in the leaks of the house",
                                               Kind::number,
                                               DefaultId::house_leak_exponent);
    if (house.leakage_area_m2) {
        made.leak_m3_s =
            openings::coefficient_of_area_m3_s(*house.leakage_area_m2, made.leak_exponent);
        return;
    }
    double changes = 0.0;
    if (house.air_changes_50_pa_1_s) {
        changes = *house.air_changes_50_pa_1_s;
    } else {
        // The table gives this figure by the hour, as the trade says it.
        const catalog::Default& row = catalog::default_of(
            work.written.site.tight_house.value_or(false) ? DefaultId::house_air_changes_50_pa_tight
                                                          : DefaultId::house_air_changes_50_pa);
        constexpr double hour_s = 3600.0;
        changes = row.value / hour_s;
        work.assume("/site/house/air_changes_at_50_pa",
                    "air changes of the house at 50 Pa",
                    Kind::leakage,
                    changes,
                    row.source,
                    row.mark);
    }
    made.leak_m3_s = openings::coefficient_m3_s(
        {.volume_m3 = volume_m3(work), .air_changes_1_s = changes}, made.leak_exponent);
}

void fans(const CaseWork& work) {
    for (const Fan& fan : work.written.site.house.fans) {
        const double flow = fan.flow_m3_s.value_or(0.0);
        (flow > 0.0 ? work.made.house.exhaust_m3_s : work.made.house.supply_m3_s) +=
            flow > 0.0 ? flow : -flow;
    }
}

void openings_of(const CaseWork& work) {
    const Site& site = work.written.site;
    HouseCase& made = work.made.house;
    const auto& entries = site.house.openings;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const HouseOpening& entry = entries[i];
        if (!entry.side) {
            work.assume_word("/site/house/openings/" + std::to_string(i) + "/side",
                             "side of the house of opening " + std::to_string(i + 1),
                             "lee",
                             "judgement",
                             "judgement");
        }
        made.openings.push_back(
            {.area_m2 = entry.area_m2.value_or(0.0),
             .height_m =
                 entry.height_m ? *entry.height_m - work.made.appliance.outlet_height_m : 0.0,
             .wind_coefficient = entry.side == HouseSide::windward ? made.wind_coefficient_windward
                                                                   : made.wind_coefficient_lee});
    }
    if (site.air_inlet_m2) {
        made.openings.push_back({.area_m2 = *site.air_inlet_m2,
                                 .height_m = 0.0,
                                 .wind_coefficient = made.wind_coefficient_lee});
    }
}

void wind(const CaseWork& work) {
    HouseCase& made = work.made.house;
    made.wind_share = figure(DefaultId::house_wind_share);
    made.wind_coefficient_windward = figure(DefaultId::house_wind_coefficient_windward);
    made.wind_coefficient_lee = figure(DefaultId::house_wind_coefficient_lee);
    made.wind_coefficient_sides = figure(DefaultId::house_wind_coefficient_sides);
    if (work.made.has_wind()) {
        const catalog::Default& row = catalog::default_of(DefaultId::house_wind_share);
        work.assume("/site/house",
                    "wind at the house over wind at the chimney top",
                    Kind::fraction,
                    row.value,
                    row.source,
                    row.mark);
    }
}

} // namespace

void house(const CaseWork& work) {
    const House& written = work.written.site.house;
    HouseCase& made = work.made.house;
    if (work.made.room_pressure_burning_pa && work.made.room_pressure_idle_pa) {
        return;
    }
    made.known = true;
    made.height_m = height_m(work);
    made.outlet_level_m = work.value_or_default(written.appliance_level_m,
                                                "/site/house/appliance_level",
                                                "floor of the heater over the lowest floor of the "
                                                "shell",
                                                Kind::length,
                                                DefaultId::house_appliance_level_m)
                          + work.made.appliance.outlet_height_m;
    made.neutral_level_m = written.neutral_level_m.value_or(-1.0);
    if (made.neutral_level_m >= made.height_m) {
        work.fault("/site/house/neutral_level",
                   "the neutral level is above the top of the house",
                   "give the height of the house, or its stories");
    }
    made.outdoor_air = written.outdoor_air.value_or(false);
    tightness(work);
    fans(work);
    wind(work);
    openings_of(work);
}

void top_wind(const CaseWork& work) {
    Choice<ChimneyTopPosition> position = work.written.site.top_position;
    Case& made = work.made;
    made.top_is_adverse = position == ChimneyTopPosition::adverse;
    if (!position) {
        if (!made.has_wind()) {
            return;
        }
        position = ChimneyTopPosition::near_ridge;
        work.assume_word("/site/top_position",
                         "how the wind meets the chimney top: it neither helps nor harms",
                         name(*position),
                         "judgement",
                         "judgement");
    }
    const auto& run = work.written.run;
    const bool capped =
        !run.empty() && run.back().part == PartKind::cap && run.back().build != Build::open;
    const catalog::Default& row = catalog::default_of(
        *position == ChimneyTopPosition::adverse      ? DefaultId::wind_coefficient_adverse
        : *position == ChimneyTopPosition::near_ridge ? DefaultId::wind_coefficient_near_ridge
        : capped                                      ? DefaultId::wind_coefficient_cap
                                                      : DefaultId::wind_coefficient_open);
    made.top_wind_coefficient = row.value;
    work.assume("/site/top_position",
                "wind pressure at the chimney top over the wind head",
                Kind::number,
                row.value,
                row.source,
                row.mark);
}

void kindling(const CaseWork& work) {
    Case& made = work.made;
    const Firing& high = made.appliance.high;
    const bool by_hand = is_fed_by_hand(made.appliance);
    const std::string_view place = "/appliance/preheat";
    const double share =
        work.value_or_default(std::nullopt,
                              place,
                              by_hand ? "burn rate of kindling, of that at high fire"
                                      : "burn rate while the flue is still cold, of "
                                        "that at high fire",
                              Kind::fraction,
                              DefaultId::kindling_burn_share);
    made.kindling.gas_flow_kg_s = share * high.gas_flow_kg_s;
    made.kindling.burn_rate_kg_s = share * high.burn_rate_kg_s;
    made.kindling.gas_temperature_k =
        work.value_or_default(std::nullopt,
                              place,
                              by_hand ? "gas at the outlet in the first minutes of kindling"
                                      : "gas at the outlet in the first minutes",
                              Kind::temperature,
                              DefaultId::kindling_gas_temperature_k);
    if (work.written.appliance.preheat_w) {
        made.kindling.preheat_w = *work.written.appliance.preheat_w;
        return;
    }
    const GasFit& gas = made.gas_low().products();
    const auto enthalpy = [&](double kelvin) {
        return gas.enthalpy_j_kg(gas_fit_range.u_of(kelvin));
    };
    made.kindling.preheat_w =
        made.kindling.gas_flow_kg_s
        * (enthalpy(made.kindling.gas_temperature_k) - enthalpy(made.room_temperature_k));
}

} // namespace fluewright::resolving
