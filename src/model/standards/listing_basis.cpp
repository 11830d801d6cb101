#include "fluewright/model/standards/listing_basis.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::listing_basis {
namespace {

bool burns_gas(const Appliance& a) {
    if (!a.fuel.name) {
        return a.type == ApplianceType::draft_hood;
    }
    const catalog::Fuel* fuel = catalog::find_fuel(*a.fuel.name);
    return fuel != nullptr && fuel->group == FuelGroup::gas;
}

/// A liner of pleated sheet, which the codes allow less than smooth pipe.
bool is_corrugated(const Part& part) {
    const catalog::Wall* wall = part.wall ? catalog::find_wall(*part.wall) : nullptr;
    return wall != nullptr
           && (wall->id.starts_with("flexible liner") || wall->id == "aluminum liner");
}

void take_appliance(const std::vector<Part>& run, Appliance& a) {
    const bool hood = a.type == ApplianceType::draft_hood;
    const double share =
        std::any_of(run.begin(), run.end(), is_corrugated) ? corrugated_share : 1.0;
    for (HighLow* rate : {&a.heat_input_w, &a.burn_rate_kg_s, &a.heat_output_w}) {
        for (Given* end : {&rate->high, &rate->low}) {
            if (*end) {
                **end /= share;
            }
        }
    }
    a.gas_flow_kg_s = {};
    a.oxygen = {};
    a.air_ratio = {};
    a.gas_temperature_k = {};
    a.efficiency = {};
    a.efficiency.high = efficiency_fan_gross;
    a.efficiency_basis = EfficiencyBasis::gross;
    a.carbon_dioxide = {};
    a.carbon_dioxide.high = hood ? carbon_dioxide_hood : carbon_dioxide_fan;
    if (hood) {
        a.gas_temperature_k.high = gas_temperature_hood_k;
        a.efficiency = {};
    }
    a.draft_needed_pa = {};
    a.fan_pressure_pa = {};
    if (!hood) {
        a.draft_needed_pa.high = 0.0; // its fan gives the gas its velocity
    }
}

void take_losses(std::vector<Part>& run) {
    for (Part& part : run) {
        if (part.part == PartKind::elbow && !part.loss) {
            const double turn_rad = part.angle_rad.value_or(0.5 * constants::pi);
            part.loss = elbow_loss * turn_rad / (0.5 * constants::pi);
        }
        if (part.part == PartKind::cap && !part.loss && !part.build) {
            part.loss = cap_loss;
        }
    }
}

/// The further friction that the tables of draft hoods on masonry have, as a loss of each length.
void take_masonry_friction(Installation& in) {
    const bool masonry = std::any_of(in.run.begin(), in.run.end(), [](const Part& part) {
        const catalog::Wall* wall = part.wall ? catalog::find_wall(*part.wall) : nullptr;
        return wall != nullptr && wall->kind == WallKind::masonry;
    });
    if (!masonry || in.appliance.type != ApplianceType::draft_hood) {
        return;
    }
    Given diameter_m = in.appliance.outlet.diameter_m;
    for (Part& part : in.run) {
        diameter_m = part.diameter_m ? part.diameter_m : diameter_m;
        const double length_m = part.up_m.value_or(0.0) + part.across_m.value_or(0.0);
        if (part.part == PartKind::straight && diameter_m && !part.loss && length_m > 0.0) {
            part.loss = (friction_masonry_hood - friction_of_walls) * length_m / *diameter_m;
        }
    }
}

} // namespace

std::optional<Installation> of(const Installation& written) {
    if (!burns_gas(written.appliance)) {
        return std::nullopt;
    }
    Installation made = written;
    made.site.altitude_m = 0.0;
    made.site.air_pressure_pa.reset();
    made.site.room = {};
    made.site.room.temperature_k = room_k;
    made.site.room.pressure_pa = 0.0;
    made.site.house = {};
    made.site.weather.clear();
    Weather weather;
    weather.name = "listing basis";
    weather.outdoor_temperature_k = outdoor_k;
    weather.wind_m_s = 0.0;
    made.site.weather.push_back(weather);
    take_appliance(made.run, made.appliance);
    take_losses(made.run);
    take_masonry_friction(made);
    made.tolerances.clear();
    made.title = (made.title.value_or("") + " (on the listing basis of the fuel-gas tables)");
    return made;
}

} // namespace fluewright::listing_basis
