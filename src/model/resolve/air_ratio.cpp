#include "fire_ends.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "fluewright/physics/atmosphere.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::resolving {

Given stated_burn_rate(const CaseWork& work, End end) {
    const Appliance& w = work.written.appliance;
    const ApplianceCase& a = work.made.appliance;
    if (at(w.burn_rate_kg_s, end)) {
        const bool dry = w.burn_rate_basis == BurnRateBasis::dry;
        return *at(w.burn_rate_kg_s, end) / (dry ? 1.0 - a.moisture : 1.0);
    }
    if (a.type == ApplianceType::masonry_heater && end == End::high && w.charge_kg
        && w.burn_time_s) {
        return *w.charge_kg / *w.burn_time_s;
    }
    if (at(w.heat_input_w, end)) {
        return *at(w.heat_input_w, end) / a.net_heating_value_j_kg;
    }
    return std::nullopt;
}

namespace {

/// The air that a measured gas flow holds over the fuel burned; none where it would be less than
/// the fuel needs.
Given air_ratio_by_flow(const CaseWork& work, End end) {
    const Given& flow_kg_s = at(work.written.appliance.gas_flow_kg_s, end);
    const Given burned_kg_s = stated_burn_rate(work, end);
    if (!flow_kg_s || !burned_kg_s) {
        return std::nullopt;
    }
    const ApplianceCase& a = work.made.appliance;
    const double ratio =
        combustion::air_ratio_for_gas(a.analysis, a.moisture, *flow_kg_s / *burned_kg_s);
    return ratio >= 1.0 ? Given{ratio} : std::nullopt;
}

constexpr double most_air_ratio = 200.0; ///< that a file may write

/// Even where the opening is too small for its fire, that fire is open to the room. Judgement.
constexpr double least_open_air_ratio = 3.0;

/// Air of an open front: as much as keeps the smoke of this fire in, whatever it burns.
/// [theory eq. 76]
double by_opening(const CaseWork& work, double burned_kg_s, End end) {
    const ApplianceCase& a = work.made.appliance;
    const double share = end == End::high ? 1.0 : burned_kg_s / a.high.burn_rate_kg_s;
    const double velocity_m_s = face_velocity_wanted_m_s(share);
    const double air_kg_s = velocity_m_s * a.door.width_m * a.door.height_m
                            * atmosphere::density_kg_m3(work.made.air_pressure_pa,
                                                        work.made.room_temperature_k,
                                                        work.made.room_humidity);
    const auto gas_per_fuel = [&](double ratio) {
        return combustion::burn(
                   a.analysis,
                   {.moisture = a.moisture, .air_ratio = ratio, .air_humidity_kg_kg = 0.0})
            .gas_per_fuel_kg_kg;
    };
    const double least_air = gas_per_fuel(2.0) - gas_per_fuel(1.0);
    const double ratio =
        std::clamp(air_kg_s / (burned_kg_s * least_air), least_open_air_ratio, most_air_ratio);
    work.assume(
        pointer_to("air_ratio", end),
        words_for("combustion air over the least that would do, air entering the opening at "
                      + format_quantity(velocity_m_s, Kind::speed, work.made.units),
                  end),
        Kind::number,
        ratio,
        "ashrae-chimney",
        "from memory");
    return ratio;
}

/// What the fan of the heater gives at its outlet; with no figure of a low fire, by the square of
/// what burns.
Given fan_pressure(const CaseWork& work, const Firing& firing, End end) {
    const HighLow& written = work.written.appliance.fan_pressure_pa;
    if (at(written, end) || !written.high) {
        return at(written, end);
    }
    const double share = firing.burn_rate_kg_s / work.made.appliance.high.burn_rate_kg_s;
    const double value = *written.high * share * share;
    work.assume(pointer_to("fan_pressure", end),
                words_for("pressure of the fan at the outlet", end),
                Kind::pressure,
                value,
                "judgement",
                "judgement");
    return value;
}

} // namespace

bool air_by_opening(const CaseWork& work, End end) {
    const Appliance& w = work.written.appliance;
    return has_open_front(work.made.appliance)
           && !(at(w.air_ratio, end) || at(w.carbon_dioxide, end) || at(w.oxygen, end)
                || at(w.gas_flow_kg_s, end));
}

double air_ratio(const CaseWork& work,
                 const catalog::ApplianceDefault& defaults,
                 const Given& burned_kg_s,
                 End end) {
    const Appliance& w = work.written.appliance;
    const combustion::FuelAnalysis& analysis = work.made.appliance.analysis;
    if (at(w.air_ratio, end)) {
        return *at(w.air_ratio, end);
    }
    if (at(w.carbon_dioxide, end)) {
        const double share = *at(w.carbon_dioxide, end);
        const double greatest = combustion::greatest_carbon_dioxide(analysis);
        if (share > greatest) {
            work.fault(pointer_to("carbon_dioxide", end),
                       "more carbon dioxide than this fuel can give even without excess air",
                       "at most " + format_quantity(greatest, Kind::fraction, UnitSystem::metric)
                           + " of the dry gas; is the reading oxygen?");
            return 1.0;
        }
        return combustion::air_ratio_for_carbon_dioxide(analysis, share);
    }
    if (at(w.oxygen, end)) {
        return combustion::air_ratio_for_oxygen(analysis, *at(w.oxygen, end));
    }
    if (const Given implied = air_ratio_by_flow(work, end)) {
        return *implied;
    }
    if (burned_kg_s && air_by_opening(work, end)) {
        return by_opening(work, *burned_kg_s, end);
    }
    const double value = end == End::high ? defaults.air_ratio_high : defaults.air_ratio_low;
    work.assume(pointer_to("air_ratio", end),
                words_for("combustion air over the least that would do", end),
                Kind::number,
                value,
                defaults.source,
                defaults.mark);
    return value;
}

double draft_needed(const CaseWork& work,
                    const catalog::ApplianceDefault& defaults,
                    const Firing& firing,
                    double density_kg_m3,
                    End end) {
    const HighLow& written = work.written.appliance.draft_needed_pa;
    if (at(written, end)) {
        return *at(written, end);
    }
    if (const Given fan_pa = fan_pressure(work, firing, end)) {
        return -*fan_pa;
    }
    if (has_open_front(work.made.appliance)) {
        const double room_kg_m3 = atmosphere::density_kg_m3(
            work.made.air_pressure_pa, work.made.room_temperature_k, work.made.room_humidity);
        const FieldInfo& limits = find_field<Appliance>("draft_needed")->info;
        const double value =
            std::clamp(front_draft_needed_pa(
                           work.made.appliance, firing.gas_flow_kg_s, density_kg_m3, room_kg_m3),
                       limits.lowest,
                       limits.highest);
        work.assume(pointer_to("draft_needed", end),
                    words_for("draft that brings this gas from the opening into the flue", end),
                    Kind::pressure,
                    value,
                    "judgement",
                    "computed");
        return value;
    }
    if (work.made.appliance.type == ApplianceType::draft_hood
        && !has_part(work.written.run, PartKind::draft_hood)) {
        constexpr double inlet_heads = 1.5; // inlet of a draft hood   [ashrae-chimney, from memory]
        const double flux = firing.gas_flow_kg_s / work.made.appliance.outlet_area_m2;
        const double value = inlet_heads * 0.5 * flux * flux / density_kg_m3;
        work.assume(pointer_to("draft_needed", end),
                    words_for("draft that carries gas and air from the hood into the flue, 1.5 "
                              "velocity heads",
                              end),
                    Kind::pressure,
                    value,
                    "ashrae-chimney",
                    "from memory");
        return value;
    }
    double value = end == End::high ? defaults.draft_needed_high_pa : defaults.draft_needed_low_pa;
    if (end == End::low && written.high && defaults.draft_needed_high_pa > 0.0) {
        value = *written.high * defaults.draft_needed_low_pa / defaults.draft_needed_high_pa;
    }
    work.assume(pointer_to("draft_needed", end),
                words_for("draft the appliance needs at its outlet", end),
                Kind::pressure,
                value,
                defaults.source,
                defaults.mark);
    return value;
}

} // namespace fluewright::resolving
