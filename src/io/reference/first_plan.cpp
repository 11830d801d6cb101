#include "fluewright/io/reference/first_plan.hpp"

#include <cassert>

namespace fluewright {
namespace {

constexpr std::array fire_of_stove{Kind::power, Kind::mass_rate, Kind::volume};
constexpr std::array fire_of_burner{Kind::power, Kind::mass_rate};
constexpr std::array fire_of_charge{Kind::mass};

Said said(std::string_view text, Kind kind) {
    const auto read = parse_quantity(text, kind);
    assert(read);
    return {.value = read->value, .text = std::string{text}, .us_units = read->us_units};
}

} // namespace

UnitSystem FirstPlan::units() const {
    const Said& first = collar.text.empty() ? collar_height : collar;
    return first.us_units ? UnitSystem::us : UnitSystem::metric;
}

double rise_across_m(const FirstPlan& plan) {
    return plan.goes_across() ? plan_slope * plan.distance.value : 0.0;
}

std::span<const Kind> kinds_of_fire(PlanHeater heater) {
    switch (heater) {
    case PlanHeater::fireplace:
        break;
    case PlanHeater::masonry_heater:
        return fire_of_charge;
    case PlanHeater::oil_boiler:
    case PlanHeater::gas_hood:
    case PlanHeater::pellet_stove:
        return fire_of_burner;
    case PlanHeater::stove:
    case PlanHeater::coal_stove:
    case PlanHeater::wood_boiler:
        return fire_of_stove;
    }
    return {};
}

FirstPlan usual_plan(PlanHeater heater, UnitSystem units) {
    const bool us = units == UnitSystem::us;
    const auto length = [us](std::string_view metric, std::string_view other) {
        return said(us ? other : metric, Kind::length);
    };
    const auto fire = [us](Kind kind, std::string_view metric, std::string_view other) {
        return FireSize{.kind = kind, .said = said(us ? other : metric, kind)};
    };
    FirstPlan plan;
    plan.heater = heater;
    plan.way = PlanWay::up;
    plan.collar = length("150 mm", "6 in");
    plan.collar_height = length("0.8 m", "32 in");
    plan.ceiling = length("2.5 m", "8 ft");
    plan.roof = length("4.2 m", "14 ft");
    plan.top = length("5.4 m", "18 ft");
    switch (heater) {
    case PlanHeater::stove:
        plan.fire = fire(Kind::mass_rate, "2.5 kg/h", "5.5 lb/h");
        plan.clearance = length("460 mm", "18 in");
        break;
    case PlanHeater::coal_stove:
        plan.fire = fire(Kind::mass_rate, "1.5 kg/h", "3.3 lb/h");
        plan.clearance = length("460 mm", "18 in");
        break;
    case PlanHeater::wood_boiler:
        plan.fire = fire(Kind::power, "20 kW", "68000 Btu/h");
        plan.collar_height = length("1.2 m", "4 ft");
        plan.clearance = length("460 mm", "18 in");
        break;
    case PlanHeater::fireplace:
        plan.way = PlanWay::masonry;
        plan.front = {
            .diameter = {}, .width = length("700 mm", "28 in"), .depth = length("600 mm", "24 in")};
        plan.collar = {};
        plan.collar_height = length("1.3 m", "52 in");
        plan.flue = {
            .diameter = {}, .width = length("260 mm", "10 in"), .depth = length("260 mm", "10 in")};
        plan.top = length("8 m", "26 ft");
        plan.roof = length("6.8 m", "22 ft");
        break;
    case PlanHeater::masonry_heater:
        plan.fire = fire(Kind::mass, "15 kg", "33 lb");
        plan.way = PlanWay::masonry;
        plan.clearance = length("460 mm", "18 in");
        plan.collar = length("200 mm", "8 in");
        plan.distance = length("0.4 m", "16 in");
        plan.entry_height = length("1.2 m", "4 ft");
        plan.flue = {.diameter = length("200 mm", "8 in"), .width = {}, .depth = {}};
        break;
    case PlanHeater::pellet_stove:
        plan.fire = fire(Kind::mass_rate, "1.5 kg/h", "3.3 lb/h");
        plan.way = PlanWay::wall;
        plan.collar = length("80 mm", "3 in");
        plan.collar_height = length("0.3 m", "12 in");
        plan.distance = length("0.5 m", "20 in");
        plan.entry_height = length("1.2 m", "4 ft");
        plan.roof = length("2.8 m", "9 ft");
        plan.top = length("3.6 m", "12 ft");
        break;
    case PlanHeater::oil_boiler:
        plan.fire = fire(Kind::power, "20 kW", "68000 Btu/h");
        plan.way = PlanWay::masonry;
        plan.collar = length("130 mm", "5 in");
        plan.distance = length("0.6 m", "2 ft");
        plan.entry_height = length("1.5 m", "5 ft");
        plan.flue = {.diameter = length("130 mm", "5 in"), .width = {}, .depth = {}};
        plan.roof = length("6.8 m", "22 ft");
        plan.top = length("8 m", "26 ft");
        break;
    case PlanHeater::gas_hood:
        plan.fire = fire(Kind::power, "18 kW", "61000 Btu/h");
        plan.collar = length("125 mm", "5 in");
        plan.collar_height = length("1.5 m", "5 ft");
        break;
    }
    return plan;
}

} // namespace fluewright
