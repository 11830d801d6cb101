#include "fluewright/core/numeric/circle.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "resolving.hpp"

#include <algorithm>
#include <iterator>

namespace fluewright::resolving {
namespace {

void outlet(const CaseWork& work) {
    ApplianceCase& a = work.made.appliance;
    const Outlet& written = work.written.appliance.outlet;
    if (const std::optional<FlueBore> stated = bore_of(size_of(written))) {
        a.outlet_area_m2 = stated->area_m2;
    } else {
        Given diameter;
        if (!work.written.run.empty() && work.written.run.front().diameter_m
            && !work.written.run.front().shape) {
            diameter = work.written.run.front().diameter_m;
            work.assume("/appliance/outlet/diameter",
                        "outlet, taken as wide as the first part of the run",
                        Kind::length,
                        *diameter,
                        "judgement",
                        "judgement");
        }
        if (!diameter) {
            work.fault("/appliance/outlet",
                       "the size of the outlet is missing",
                       R"(measure the collar inside and write "diameter": "150 mm")");
            diameter = catalog::default_of(DefaultId::outlet_diameter_m).value;
        }
        a.outlet_area_m2 = circle_area_m2(*diameter);
    }
    a.outlet_diameter_m = circle_diameter_m(a.outlet_area_m2);
    a.outlet_height_m = work.value_or_default(written.height_m,
                                              "/appliance/outlet/height",
                                              "height of the outlet above the floor",
                                              Kind::length,
                                              DefaultId::outlet_height_m);
}

/// Whether the file gives a figure of low fire.
bool tells_low_fire(const Appliance& w) {
    const HighLow* pairs[] = {&w.burn_rate_kg_s,
                              &w.heat_input_w,
                              &w.heat_output_w,
                              &w.efficiency,
                              &w.air_ratio,
                              &w.carbon_dioxide,
                              &w.oxygen,
                              &w.gas_flow_kg_s,
                              &w.gas_temperature_k,
                              &w.draft_needed_pa,
                              &w.fan_pressure_pa};
    return std::any_of(
        std::begin(pairs), std::end(pairs), [](const HighLow* pair) { return pair->low; });
}

/// Whether the file gives how much burns or leaves at high fire.
bool tells_high_fire(const Appliance& w) {
    return w.burn_rate_kg_s.high || w.heat_input_w.high || w.heat_output_w.high
           || w.gas_flow_kg_s.high || w.gas_temperature_k.high;
}

/// A charge burns as it will; a burner of one stage, or of which one rate is given, has one.
bool has_low_fire(const ApplianceCase& a,
                  const Appliance& written,
                  const catalog::ApplianceDefault& defaults) {
    if (a.type == ApplianceType::masonry_heater) {
        return false;
    }
    if (tells_low_fire(written)) {
        return true;
    }
    const bool one_stage = defaults.low_fire_share >= 1.0;
    return !one_stage && !(a.pushed_by_fan && tells_high_fire(written));
}

} // namespace

void appliance(const CaseWork& work) {
    const Appliance& written = work.written.appliance;
    ApplianceCase& a = work.made.appliance;
    a.type = burning_type(written).value_or(ApplianceType::stove);
    if (written.insert.value_or(false) && written.type != ApplianceType::fireplace) {
        work.fault("/appliance/insert",
                   "an insert stands in a fireplace, and this heater is none",
                   R"(write "type": "fireplace", or leave "insert" out)");
    }
    fuel(work);
    outlet(work);
    if (written.fan_pressure_pa.high && written.draft_needed_pa.high) {
        work.fault("/appliance/fan_pressure",
                   "an appliance whose fan gives a pressure at the outlet needs no draft there",
                   R"(give one of "fan_pressure" and "draft_needed")");
    }
    if (a.type == ApplianceType::masonry_heater && tells_low_fire(written)) {
        work.fault("/appliance",
                   "a masonry heater burns its charge as it will: it has no low fire",
                   R"(give "charge" and "burn_time", or one burn rate)");
    }
    const catalog::ApplianceDefault* defaults =
        catalog::find_appliance_default(a.type, a.fuel_group);
    if (defaults == nullptr) {
        work.fault("/appliance/fuel",
                   "a " + std::string{name(a.type)} + " is not known to burn "
                       + std::string{name(a.fuel_group)},
                   "choose another fuel or another type of appliance");
        defaults = catalog::find_appliance_default(ApplianceType::stove, FuelGroup::wood);
    }
    a.pushed_by_fan = written.fan_pressure_pa.high || a.fuel_group == FuelGroup::pellets
                      || (a.fuel_group == FuelGroup::gas && a.type != ApplianceType::draft_hood);
    a.has_low_fire = has_low_fire(a, written, *defaults);
    const bool open_front = has_open_front(a);
    if (open_front) {
        door(work, *defaults); // the air of its fire follows the opening
    }
    fires(work, *defaults);
    if (written.draft_greatest_pa) {
        a.draft_greatest_pa = *written.draft_greatest_pa;
    } else {
        a.draft_greatest_pa = defaults->draft_greatest_pa;
        work.assume("/appliance/draft_greatest",
                    "greatest draft at which the fire can be held",
                    Kind::pressure,
                    a.draft_greatest_pa,
                    defaults->source,
                    defaults->mark);
    }
    a.warmed_pipe_share = written.warmed_pipe_share.value_or(defaults->warmed_pipe_share);
    if (!written.warmed_pipe_share) {
        work.assume("/appliance/warmed_pipe",
                    "heater's warmth round the pipe at the collar, of the gas's rise over the room",
                    Kind::fraction,
                    a.warmed_pipe_share,
                    "judgement",
                    "judgement");
    }
    a.dew_point_acid_share = catalog::default_of(DefaultId::so3_share_of_so2).value;
    if (!open_front) {
        door(work, *defaults);
    }
}

} // namespace fluewright::resolving
