#include "fluewright/advice/upkeep/heat_demand.hpp"

#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/catalog/rule_catalog.hpp"

#include <algorithm>
#include <limits>

namespace fluewright {
namespace {

/// Heat to warm one cubic metre of room air by one kelvin, over 3600 s/h.
constexpr double air_wh_m3k = 0.33;
constexpr double seconds_per_hour = 3600.0;

bool is_empty(const Building& b) {
    return b.parts.empty() && !b.volume_m3 && !b.air_changes_per_s && !b.outdoor_temperature_k;
}

void add_parts(HeatDemand& demand, const Building& building) {
    for (std::size_t i = 0; i < building.parts.size(); ++i) {
        const BuildingPart& part = building.parts[i];
        HeatLoss loss;
        loss.name = part.name.value_or(part.element.value_or("part " + std::to_string(i + 1)));
        loss.area_m2 = part.area_m2.value_or(0.0);
        const catalog::BuildingElement* row =
            part.element ? catalog::find_building_element(*part.element) : nullptr;
        if (part.u_value_w_m2k) {
            loss.u_value_w_m2k = *part.u_value_w_m2k;
        } else if (part.thermal_resistance_m2k_w) {
            loss.u_value_w_m2k = 1.0 / *part.thermal_resistance_m2k_w;
        } else if (row != nullptr) {
            loss.u_value_w_m2k = row->value;
            loss.source = row->source;
        } else {
            demand.missing.push_back("/building/parts/" + std::to_string(i) + "/u_value");
        }
        demand.parts.push_back(std::move(loss));
    }
}

double load_kg(const Installation& written, const Case& c, HeatDemand& demand) {
    const Firebox& box = written.appliance.firebox;
    double volume_m3 = box.volume_m3.value_or(0.0);
    if (volume_m3 <= 0.0 && box.width_m && box.depth_m && box.height_m) {
        volume_m3 = *box.width_m * *box.depth_m * *box.height_m;
    }
    if (volume_m3 <= 0.0) {
        volume_m3 = catalog::default_of(DefaultId::firebox_volume_m3).value;
        demand.assumed.emplace_back("the firebox, of ordinary size: the file does not say");
    }
    const catalog::ApplianceDefault* row =
        catalog::find_appliance_default(c.appliance.type, c.appliance.fuel_group);
    const double density = row != nullptr ? row->load_density_kg_m3 : 0.0;
    return volume_m3 * density;
}

} // namespace

std::optional<HeatDemand>
heat_demand(const Installation& written, const Case& resolved, const Solution& solution) {
    const Building& building = written.building;
    if (is_empty(building)) {
        return std::nullopt;
    }
    HeatDemand d;
    d.left_out = {"sun, people, lamps and machines, which help",
                  "heat lost to the ground beyond the U value of the floor",
                  "thermal bridges, and the time a heavy building takes to warm",
                  "the air the fire itself draws in, if the air changes do not hold it"};
    d.indoor_k = building.indoor_temperature_k.value_or(resolved.room_temperature_k);
    if (!building.outdoor_temperature_k) {
        d.missing.emplace_back("/building/outdoor_temperature");
    }
    d.outdoor_k = building.outdoor_temperature_k.value_or(d.indoor_k);
    add_parts(d, building);
    if (d.parts.empty()) {
        d.missing.emplace_back("/building/parts");
    }
    if (!building.volume_m3) {
        d.missing.emplace_back("/building/volume");
    }
    double changes_per_h = building.air_changes_per_s.value_or(0.0) * seconds_per_hour;
    if (!building.air_changes_per_s) {
        const catalog::BuildingElement& shop = *catalog::find_building_element("shop");
        changes_per_h = shop.value;
        d.assumed.push_back(format_number(changes_per_h) + " air change an hour, as in a shop");
    }
    if (!d.missing.empty()) {
        return d;
    }
    const double rise_k = std::max(0.0, d.indoor_k - d.outdoor_k);
    d.ventilation_w = air_wh_m3k * changes_per_h * *building.volume_m3 * rise_k;
    d.total_w = d.ventilation_w;
    for (HeatLoss& loss : d.parts) {
        loss.loss_w = loss.area_m2 * loss.u_value_w_m2k * rise_k;
        d.total_w += loss.loss_w;
    }
    std::stable_sort(d.parts.begin(), d.parts.end(), [](const HeatLoss& a, const HeatLoss& b) {
        return a.loss_w > b.loss_w;
    });
    d.with_reserve_w = d.total_w * (1.0 + catalog::default_of(DefaultId::heat_reserve_share).value);
    const ApplianceCase& a = resolved.appliance;
    d.heater_output_w = a.high.heat_output_w;
    d.high_burn_rate_kg_s = a.high.burn_rate_kg_s;
    d.low_burn_rate_kg_s = a.low.burn_rate_kg_s;
    d.burn_rate_kg_s = a.high.burn_rate_kg_s * d.total_w / std::max(1.0, a.high.heat_output_w);
    double least = std::numeric_limits<double>::infinity();
    for (const StateResult& state : solution.states) {
        if (state.kind == StateKind::free_burn && state.status == Status::solved
            && state.capacity_kg_s < least) {
            least = state.capacity_kg_s;
            d.capacity_kg_s = least;
            d.capacity_weather = resolved.weathers[state.weather].name;
        }
    }
    d.load_kg = load_kg(written, resolved, d);
    d.load_rate_kg_s =
        std::min(std::max(d.burn_rate_kg_s, d.low_burn_rate_kg_s), d.high_burn_rate_kg_s);
    if (d.load_kg > 0.0 && d.load_rate_kg_s > 0.0) {
        d.load_hours = d.load_kg / d.load_rate_kg_s / seconds_per_hour;
    }
    d.heater_carries = d.total_w <= d.heater_output_w;
    d.flue_carries = d.capacity_kg_s.value_or(0.0) >= d.burn_rate_kg_s;
    d.throttled = burns_freely(a) && a.has_low_fire && d.burn_rate_kg_s < d.low_burn_rate_kg_s;
    return d;
}

} // namespace fluewright
