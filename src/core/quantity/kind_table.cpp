#include "unit_table.hpp"

#include <cstddef>

namespace fluewright::unit_table {
namespace {

constexpr Shown length_metric[] = {{"mm", 1.0, 2}, {"m", 0.0, 3}};
// Inches and feet have their own form; see format_quantity.
constexpr Shown length_us[] = {{"in", 0.6096, 3}, {"ft", 0.0, 0, true}};
constexpr Shown temperature_metric[] = {{"degC", 0.0, 1}};
constexpr Shown temperature_us[] = {{"degF", 0.0, 1}};
constexpr Shown temperature_difference_metric[] = {{"K", 0.0, 1}};
constexpr Shown temperature_difference_us[] = {{"degF", 0.0, 1}};
constexpr Shown pressure_metric[] = {{"Pa", 0.0, 2}};
constexpr Shown pressure_us[] = {{"inH2O", 0.0, 4, true}};
constexpr Shown mass_rate_metric[] = {{"kg/h", 0.0, 3}};
constexpr Shown gas_flow_metric[] = {{"g/s", 0.0, 3}};
constexpr Shown mass_rate_us[] = {{"lb/h", 0.0, 3}};
constexpr Shown volume_flow_metric[] = {{"m3/h", 0.0, 2}};
constexpr Shown volume_flow_us[] = {{"cfm", 0.0, 2}};
constexpr Shown speed_metric[] = {{"m/s", 0.0, 3}};
constexpr Shown speed_us[] = {{"ft/s", 0.0, 2}};
constexpr Shown power_metric[] = {{"W", 1000.0, 1}, {"kW", 0.0, 2}};
constexpr Shown power_us[] = {{"Btu/h", 0.0, 0}};
constexpr Shown energy_metric[] = {{"MJ", 0.0, 3}};
constexpr Shown energy_us[] = {{"Btu", 0.0, 0}};
constexpr Shown area_metric[] = {{"cm2", 1.0, 2}, {"m2", 0.0, 3}};
constexpr Shown area_us[] = {{"in2", 0.18580608, 2}, {"ft2", 0.0, 2}};
constexpr Shown volume_metric[] = {{"L", 1.0, 2}, {"m3", 0.0, 2}};
constexpr Shown volume_us[] = {{"ft3", 0.0, 3}};
constexpr Shown fraction_any[] = {{"%", 0.0, 3}};
constexpr Shown moisture_any[] = {{"% wet", 0.0, 1}};
constexpr Shown slope_metric[] = {{"mm/m", 0.0, 1}};
constexpr Shown slope_us[] = {{"in/ft", 0.0, 3}};
constexpr Shown angle_any[] = {{"deg", 0.0, 1}};
constexpr Shown thermal_resistance_metric[] = {{"m2K/W", 0.0, 4}};
constexpr Shown thermal_resistance_us[] = {{"ft2 h F/Btu", 0.0, 3}};
constexpr Shown conductivity_metric[] = {{"W/mK", 0.0, 4}};
constexpr Shown conductivity_us[] = {{"Btu in/h ft2 F", 0.0, 3}};
constexpr Shown transmittance_metric[] = {{"W/m2K", 0.0, 3}};
constexpr Shown transmittance_us[] = {{"Btu/h ft2 F", 0.0, 3}};
constexpr Shown specific_heat_metric[] = {{"J/kgK", 0.0, 1}};
constexpr Shown specific_heat_us[] = {{"Btu/lb F", 0.0, 3}};
constexpr Shown heating_value_metric[] = {{"MJ/kg", 0.0, 3}};
constexpr Shown heating_value_us[] = {{"Btu/lb", 0.0, 0}};
constexpr Shown mass_metric[] = {{"g", 0.1, 1}, {"kg", 0.0, 3}};
constexpr Shown mass_us[] = {{"lb", 0.0, 3}};
constexpr Shown density_metric[] = {{"kg/m3", 0.0, 4}};
constexpr Shown density_us[] = {{"lb/ft3", 0.0, 5}};
constexpr Shown duration_any[] = {{"s", 120.0, 1}, {"min", 7200.0, 1}, {"h", 0.0, 2}};
constexpr Shown leakage_any[] = {{"1/h", 0.0, 3}};
constexpr Shown number_any[] = {{"", 0.0, 9}};

// In the order of the enumeration.
constexpr KindFacts kinds[] = {
    {"length", "m", "_m", "150 mm", {"in", "mm"}, length_metric, length_us},
    {"temperature", "K", "_k", "20 degC", {"degC", "degF"}, temperature_metric, temperature_us},
    {"temperature difference",
     "K",
     "_k",
     "15 K",
     {"K", "degF"},
     temperature_difference_metric,
     temperature_difference_us},
    {"pressure", "Pa", "_pa", "12 Pa", {"Pa", "inH2O"}, pressure_metric, pressure_us},
    {"mass rate", "kg/s", "_kg_s", "2.5 kg/h", {"kg/h", "lb/h"}, mass_rate_metric, mass_rate_us},
    {"gas flow", "kg/s", "_kg_s", "8 g/s", {"g/s", "lb/h"}, gas_flow_metric, mass_rate_us},
    {"volume flow",
     "m3/s",
     "_m3_s",
     "150 m3/h",
     {"m3/h", "cfm"},
     volume_flow_metric,
     volume_flow_us},
    {"speed", "m/s", "_m_s", "3 m/s", {"m/s", "mph"}, speed_metric, speed_us},
    {"power", "W", "_w", "7 kW", {"kW", "Btu/h"}, power_metric, power_us},
    {"energy", "J", "_j", "40 MJ", {"MJ", "Btu"}, energy_metric, energy_us},
    {"area", "m2", "_m2", "180 cm2", {"cm2", "in2"}, area_metric, area_us},
    {"volume", "m3", "_m3", "45 L", {"L", "ft3"}, volume_metric, volume_us},
    {"fraction", "", "", "75 %", {"%", ""}, fraction_any, fraction_any},
    {"moisture content", "", "_wet_basis", "18 %", {"% wet", "% dry"}, moisture_any, moisture_any},
    {"angle", "rad", "_rad", "45 deg", {"deg", ""}, angle_any, angle_any},
    {"slope", "", "", "20 mm/m", {"mm/m", "in/ft"}, slope_metric, slope_us},
    {"thermal resistance",
     "m2K/W",
     "_m2k_w",
     "0.4 m2K/W",
     {"m2K/W", "ft2 h F/Btu"},
     thermal_resistance_metric,
     thermal_resistance_us},
    {"thermal conductivity",
     "W/mK",
     "_w_mk",
     "0.04 W/mK",
     {"W/mK", "Btu in/h ft2 F"},
     conductivity_metric,
     conductivity_us},
    {"thermal transmittance",
     "W/m2K",
     "_w_m2k",
     "1.2 W/m2K",
     {"W/m2K", "Btu/h ft2 F"},
     transmittance_metric,
     transmittance_us},
    {"specific heat",
     "J/kgK",
     "_j_kgk",
     "840 J/kgK",
     {"J/kgK", "Btu/lb F"},
     specific_heat_metric,
     specific_heat_us},
    {"heating value",
     "J/kg",
     "_j_kg",
     "18 MJ/kg",
     {"MJ/kg", "Btu/lb"},
     heating_value_metric,
     heating_value_us},
    {"mass", "kg", "_kg", "12 kg", {"kg", "lb"}, mass_metric, mass_us},
    {"density", "kg/m3", "_kg_m3", "120 kg/m3", {"kg/m3", "lb/ft3"}, density_metric, density_us},
    {"duration", "s", "_s", "30 min", {"min", "h"}, duration_any, duration_any},
    {"air change rate", "1/s", "_per_s", "3 ach", {"ach", ""}, leakage_any, leakage_any},
    {"plain number", "", "", "3", {"", ""}, number_any, number_any},
};

} // namespace

const KindFacts& facts(Kind kind) {
    static_assert(std::size(kinds) == static_cast<std::size_t>(Kind::number) + 1);
    return kinds[static_cast<std::size_t>(kind)];
}

} // namespace fluewright::unit_table
