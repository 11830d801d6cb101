#include "fire_ends.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "fluewright/physics/atmosphere.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::resolving {
namespace {

constexpr double seconds_per_hour = 3600.0;
constexpr double hottest_gas_k = 1473.15;

/// The key that tells how much burns, or, where that is assumed, the appliance.
std::string burn_rate_pointer(const CaseWork& work, End end) {
    const Appliance& w = work.written.appliance;
    return at(w.burn_rate_kg_s, end)  ? pointer_to("burn_rate", end)
           : at(w.heat_input_w, end)  ? pointer_to("heat_input", end)
           : at(w.heat_output_w, end) ? pointer_to("heat_output", end)
           : at(w.gas_flow_kg_s, end) ? pointer_to("gas_flow", end)
                                      : "/appliance";
}

/// A burn rate that follows from another figure has the same limits as one that is written.
double held_to_limits(const CaseWork& work, End end, double burn_rate_kg_s) {
    const FieldInfo& info = find_field<Appliance>("burn_rate")->info;
    if (is_in_range(burn_rate_kg_s, info)) {
        return burn_rate_kg_s;
    }
    work.fault(burn_rate_pointer(work, end),
               words_for("that is a burn rate of "
                             + format_quantity(burn_rate_kg_s, Kind::mass_rate, work.made.units)
                             + " as fired",
                         end)
                   + ", outside " + range_in_words(info, work.made.units),
               "check it against fuel, moisture, efficiency and air ratio");
    return std::isfinite(burn_rate_kg_s) ? std::clamp(burn_rate_kg_s, info.lowest, info.highest)
                                         : info.lowest;
}

/// Whether the useful heat is what the measured gas leaves of the fuel: nothing else tells it.
bool useful_is_the_rest(const CaseWork& work, End end) {
    const Appliance& w = work.written.appliance;
    return at(w.gas_temperature_k, end) && !at(w.efficiency, end) && !at(w.heat_output_w, end);
}

/// Useful heat over net heating value; of no meaning where useful_is_the_rest().
double efficiency(const CaseWork& work, const catalog::ApplianceDefault& defaults, End end) {
    const Appliance& w = work.written.appliance;
    const ApplianceCase& a = work.made.appliance;
    const Given given = at(w.efficiency, end) ? at(w.efficiency, end) : w.efficiency.high;
    if (useful_is_the_rest(work, end)) {
        return 0.0;
    }
    const Given burned_kg_s = stated_burn_rate(work, end);
    if (!at(w.efficiency, end) && at(w.heat_output_w, end) && burned_kg_s) {
        const FieldInfo& info = find_field<Appliance>("efficiency")->info;
        const double share = *at(w.heat_output_w, end) / (*burned_kg_s * a.net_heating_value_j_kg);
        if (!is_in_range(share, info)) {
            work.fault(pointer_to("heat_output", end),
                       "this is " + format_quantity(share, Kind::fraction, work.made.units)
                           + " of the heat in the fuel burned, outside " + range_in_words(info),
                       "check heat output, burn rate or heat input, and the fuel");
            return std::clamp(share, info.lowest, defaults.efficiency_net);
        }
        return share;
    }
    if (given) {
        const bool gross = w.efficiency_basis == EfficiencyBasis::gross;
        const double factor =
            combustion::gross_heating_value_j_kg(a.analysis, a.moisture) / a.net_heating_value_j_kg;
        return gross ? *given * factor : *given;
    }
    work.assume(pointer_to("efficiency", end),
                words_for("efficiency on the net heating value", end),
                Kind::fraction,
                defaults.efficiency_net,
                defaults.source,
                defaults.mark);
    return defaults.efficiency_net;
}

Given firebox_volume_m3(const Firebox& box) {
    if (box.volume_m3) {
        return box.volume_m3;
    }
    if (box.width_m && box.depth_m && box.height_m) {
        return *box.width_m * *box.depth_m * *box.height_m;
    }
    return std::nullopt;
}

/// A full load of the firebox over the time it burns, where both are known.
Given rate_of_load(const CaseWork& work, const catalog::ApplianceDefault& defaults) {
    const Given volume = firebox_volume_m3(work.written.appliance.firebox);
    return volume && defaults.load_density_kg_m3 > 0.0 && defaults.burn_hours_high > 0.0
               ? Given{*volume * defaults.load_density_kg_m3
                       / (defaults.burn_hours_high * seconds_per_hour)}
               : Given{};
}

/// Fuel burned where neither air nor gas flow tells it.
Given burned_whatever_the_air(const CaseWork& work,
                              const catalog::ApplianceDefault& defaults,
                              double efficiency,
                              End end) {
    if (const Given stated = stated_burn_rate(work, end)) {
        return stated;
    }
    const Given& output_w = at(work.written.appliance.heat_output_w, end);
    if (output_w && efficiency > 0.0) {
        return *output_w / (efficiency * work.made.appliance.net_heating_value_j_kg);
    }
    return end == End::high
               ? rate_of_load(work, defaults)
               : Given{work.made.appliance.high.burn_rate_kg_s * defaults.low_fire_share};
}

struct FireNumbers {
    double gas_per_fuel_kg_kg;
    double efficiency;
};

/// What the file says of the burn rate, by whichever figure it gives; kg/s as fired.
Given written_burn_rate(const CaseWork& work, const FireNumbers& fire, End end) {
    const Appliance& w = work.written.appliance;
    const ApplianceCase& a = work.made.appliance;
    if (const Given stated = stated_burn_rate(work, end)) {
        return stated;
    }
    if (at(w.heat_output_w, end)) {
        return *at(w.heat_output_w, end) / (fire.efficiency * a.net_heating_value_j_kg);
    }
    if (at(w.gas_flow_kg_s, end)) {
        return *at(w.gas_flow_kg_s, end) / fire.gas_per_fuel_kg_kg;
    }
    return std::nullopt;
}

/// [theory eq. 11]
double burn_rate_high(const CaseWork& work,
                      const catalog::ApplianceDefault& defaults,
                      const FireNumbers& fire) {
    const Appliance& w = work.written.appliance;
    const ApplianceCase& a = work.made.appliance;
    if (const Given written = written_burn_rate(work, fire, End::high)) {
        return *written;
    }
    const std::string pointer = pointer_to("burn_rate", End::high);
    if (const Given rate = rate_of_load(work, defaults)) {
        work.assume(pointer,
                    "fuel burned at high fire, from the firebox: a full load in "
                        + format_number(defaults.burn_hours_high, 2) + " h",
                    Kind::mass_rate,
                    *rate,
                    defaults.source,
                    "judgement");
        return *rate;
    }
    if (has_open_front(a) && w.door.width_m && w.door.height_m) {
        const catalog::Default& face = catalog::default_of(DefaultId::door_face_velocity_m_s);
        const double air_kg_s = face.value * a.door.width_m * a.door.height_m
                                * atmosphere::density_kg_m3(work.made.air_pressure_pa,
                                                            work.made.room_temperature_k,
                                                            work.made.room_humidity);
        const double rate = air_kg_s / fire.gas_per_fuel_kg_kg;
        work.assume(pointer,
                    "fuel burned at high fire, from the opening: air enters at "
                        + format_quantity(face.value, Kind::speed, work.made.units),
                    Kind::mass_rate,
                    rate,
                    face.source,
                    face.mark);
        return rate;
    }
    if (a.type == ApplianceType::stove && a.fuel_group == FuelGroup::wood) {
        const catalog::Default& row = catalog::default_of(DefaultId::burn_rate_high_dry_kg_s);
        const double rate = row.value / (1.0 - a.moisture);
        work.assume(pointer,
                    "fuel burned at high fire in a stove of ordinary size",
                    Kind::mass_rate,
                    rate,
                    row.source,
                    row.mark);
        return rate;
    }
    work.fault("/appliance",
               "nothing tells how much fuel this appliance burns",
               R"(give one of "burn_rate", "heat_input", "heat_output", "gas_flow" or "firebox")");
    return 1e-3;
}

double burn_rate_low(const CaseWork& work,
                     const catalog::ApplianceDefault& defaults,
                     const FireNumbers& fire) {
    if (const Given written = written_burn_rate(work, fire, End::low)) {
        return *written;
    }
    const double share_kg_s = work.made.appliance.high.burn_rate_kg_s * defaults.low_fire_share;
    const double rate = std::max(find_field<Appliance>("burn_rate")->info.lowest, share_kg_s);
    work.assume(pointer_to("burn_rate", End::low),
                "fuel burned at low fire",
                Kind::mass_rate,
                rate,
                defaults.source,
                defaults.mark);
    return rate;
}

/// The heat that goes with the temperature at the outlet.
void settle_outlet(const CaseWork& work, const GasFit& gas, End end, Firing& firing) {
    const double room_k = work.made.room_temperature_k;
    if (firing.gas_temperature_k > hottest_gas_k || firing.gas_temperature_k < room_k) {
        work.fault(
            "/appliance",
            "the heat left over by the efficiency would bring the gas at the outlet to "
                + format_quantity(firing.gas_temperature_k, Kind::temperature, work.made.units),
            "check burn rate, efficiency and gas flow against each other");
        firing.gas_temperature_k = hottest_gas_k;
    }
    firing.heat_to_flue_w = firing.gas_flow_kg_s
                            * (gas.enthalpy_j_kg(gas_fit_range.u_of(firing.gas_temperature_k))
                               - gas.enthalpy_j_kg(gas_fit_range.u_of(room_k)));
    if (useful_is_the_rest(work, end)) {
        firing.heat_output_w =
            std::max(0.0, firing.heat_in_fuel_w - firing.heat_to_flue_w - firing.heat_unburned_w);
    }
}

/// Whether only the gas of the high fire is told: the heat of the low fire is then no better known
/// than by a usual efficiency.
bool only_high_fire_is_told(const CaseWork& work) {
    const Appliance& w = work.written.appliance;
    return w.gas_temperature_k.high && !w.efficiency.low && !w.heat_output_w.low;
}

/// A low fire does not give hotter gas than a high one of the same heater: where the usual
/// efficiency would, the gas is taken to rise by a share of what it does at high fire. The heat
/// left is useful.
void hold_below_high_fire(const CaseWork& work, const GasFit& gas, Firing& low) {
    const catalog::Default& most = catalog::default_of(DefaultId::low_fire_rise_share_most);
    const double room_k = work.made.room_temperature_k;
    const double most_k =
        room_k + most.value * (work.made.appliance.high.gas_temperature_k - room_k);
    if (low.gas_temperature_k <= most_k) {
        return;
    }
    low.gas_temperature_k = most_k;
    settle_outlet(work, gas, End::low, low);
    low.heat_output_w =
        std::max(0.0, low.heat_in_fuel_w - low.heat_to_flue_w - low.heat_unburned_w);
    work.assume(pointer_to("gas_temperature", End::low),
                "gas at the outlet at low fire, by a share of its rise at high fire",
                Kind::temperature,
                most_k,
                most.source,
                most.mark);
}

/// Gas temperature at the outlet: as measured, or what the energy balance leaves. [theory eq. 12]
void outlet_temperature(const CaseWork& work,
                        const catalog::ApplianceDefault& defaults,
                        const FireNumbers& fire,
                        const GasFit& gas,
                        End end,
                        Firing& firing) {
    const double room_k = work.made.room_temperature_k;
    const double room_enthalpy = gas.enthalpy_j_kg(gas_fit_range.u_of(room_k));
    const double unburned =
        end == End::high ? defaults.unburned_share_high : defaults.unburned_share_low;
    firing.heat_unburned_w = unburned * firing.heat_in_fuel_w;
    const Given& measured = at(work.written.appliance.gas_temperature_k, end);
    if (!measured || useful_is_the_rest(work, end)) {
        work.assume("/appliance", // no key takes it: an efficiency is the useful share
                    words_for("share of the net heat that leaves unburned", end),
                    Kind::fraction,
                    unburned,
                    defaults.source,
                    "judgement");
    }
    if (measured) {
        firing.gas_temperature_k = *measured;
        firing.gas_temperature_given = true;
    } else {
        const double sensible = 1.0 - fire.efficiency - unburned;
        if (sensible < 0.02) {
            const Appliance& w = work.written.appliance;
            const bool by_output = !at(w.efficiency, end) && at(w.heat_output_w, end);
            work.fault(by_output ? pointer_to("heat_output", end) : "/appliance/efficiency",
                       by_output ? "this heat output leaves no heat in the flue gas"
                                 : "this efficiency leaves no heat in the flue gas",
                       "give the gas temperature at the outlet as measured, or the efficiency on "
                       "the basis it was stated for (\"efficiency_basis\": \"net\" or \"gross\")");
            firing.gas_temperature_k = room_k + 100.0;
            return;
        }
        const double rise = sensible * firing.heat_in_fuel_w / firing.gas_flow_kg_s;
        firing.gas_temperature_k = gas.temperature_k(room_enthalpy + rise, room_k + 200.0);
    }
    settle_outlet(work, gas, end, firing);
    if (!measured && end == End::low && only_high_fire_is_told(work)) {
        hold_below_high_fire(work, gas, firing);
    }
}

Firing firing(const CaseWork& work, const catalog::ApplianceDefault& defaults, End end) {
    Case& made = work.made;
    const ApplianceCase& a = made.appliance;
    const double humidity = atmosphere::humidity_ratio_kg_kg(
        made.air_pressure_pa, made.room_temperature_k, made.room_humidity);
    Firing f;
    const double useful = efficiency(work, defaults, end);
    f.air_ratio =
        air_ratio(work, defaults, burned_whatever_the_air(work, defaults, useful, end), end);
    const combustion::Products products = combustion::burn(
        a.analysis,
        {.moisture = a.moisture, .air_ratio = f.air_ratio, .air_humidity_kg_kg = humidity});
    f.gas_per_fuel_kg_kg = products.gas_per_fuel_kg_kg;
    f.carbon_dioxide_dry = products.carbon_dioxide_dry;
    f.oxygen_dry = products.oxygen_dry;
    const FireNumbers fire{.gas_per_fuel_kg_kg = products.gas_per_fuel_kg_kg, .efficiency = useful};
    f.burn_rate_kg_s = held_to_limits(work,
                                      end,
                                      end == End::high ? burn_rate_high(work, defaults, fire)
                                                       : burn_rate_low(work, defaults, fire));
    const Given& measured_flow = at(work.written.appliance.gas_flow_kg_s, end);
    f.gas_flow_kg_s = measured_flow.value_or(f.burn_rate_kg_s * products.gas_per_fuel_kg_kg);
    f.heat_in_fuel_w = f.burn_rate_kg_s * a.net_heating_value_j_kg;
    f.heat_output_w = fire.efficiency * f.heat_in_fuel_w;
    made.gases.emplace_back(products.wet, atmosphere::moist_air(humidity));
    const GasFit gas = made.gases.back().products();
    outlet_temperature(work, defaults, fire, gas, end, f);
    const double density_kg_m3 =
        made.air_pressure_pa / (gas.gas_constant_j_kgk * f.gas_temperature_k);
    f.draft_needed_pa = draft_needed(work, defaults, f, density_kg_m3, end);
    return f;
}

} // namespace

void take_gas_temperature(const CaseWork& work, GasChoice fire, double gas_k) {
    const bool high = fire == GasChoice::high_fire;
    Firing& firing = high ? work.made.appliance.high : work.made.appliance.low;
    firing.gas_temperature_k = gas_k;
    settle_outlet(work,
                  work.made.gases[static_cast<std::size_t>(fire)].products(),
                  high ? End::high : End::low,
                  firing);
}

void fires(const CaseWork& work, const catalog::ApplianceDefault& defaults) {
    ApplianceCase& a = work.made.appliance;
    a.high = firing(work, defaults, End::high);
    if (a.has_low_fire) {
        a.low = firing(work, defaults, End::low);
    } else {
        a.low = a.high; // what asks for a low fire all the same gets the only one there is
        work.made.gases.push_back(work.made.gases.front());
    }
}

} // namespace fluewright::resolving
