#include "unit_table.hpp"

#include "unit_factors.hpp"

#include <cstddef>

namespace fluewright::unit_table {
namespace {

constexpr Family metric = Family::metric;
constexpr Family us = Family::us;

constexpr Unit length_units[] = {
    {.symbol = "m", .family = metric, .written = true, .also = "metre|metres|meter|meters"},
    {.symbol = "cm",
     .family = metric,
     .power = -2,
     .also = "centimetre|centimetres|centimeter|centimeters"},
    {.symbol = "mm",
     .family = metric,
     .power = -3,
     .written = true,
     .also = "millimetre|millimetres|millimeter|millimeters"},
    {.symbol = "um", .family = metric, .power = -6},
    {.symbol = "in", .family = us, .ratio = inch, .also = "\"|inch|inches|''"},
    {.symbol = "ft", .family = us, .ratio = foot, .followed_by = "in", .also = "'|foot|feet"},
    {.symbol = "yd", .family = us, .ratio = yard, .also = "yard|yards"},
};

constexpr Unit temperature_units[] = {
    {.symbol = "degC",
     .family = metric,
     .offset = celsius_zero_k,
     .written = true,
     .also = "C|deg C|celsius|degrees C"},
    {.symbol = "degF",
     .family = us,
     .ratio = fahrenheit_degree,
     .offset = fahrenheit_zero_degrees,
     .also = "F|deg F|fahrenheit|degrees F"},
    {.symbol = "K", .family = metric, .written = true, .also = "kelvin"},
};

constexpr Unit temperature_difference_units[] = {
    {.symbol = "K", .family = metric, .written = true, .also = "kelvin"},
    {.symbol = "degC", .family = metric, .also = "C|deg C|celsius|degrees C"},
    {.symbol = "degF",
     .family = us,
     .ratio = fahrenheit_degree,
     .also = "F|deg F|fahrenheit|degrees F"},
};

constexpr Unit pressure_units[] = {
    {.symbol = "Pa", .family = metric, .written = true, .also = "pascal"},
    {.symbol = "hPa", .family = metric, .power = 2},
    {.symbol = "kPa", .family = metric, .power = 3},
    {.symbol = "mbar", .family = metric, .power = 2},
    {.symbol = "inH2O",
     .family = us,
     .ratio = inch_of_water,
     .also = "in H2O|in wc|in wg|inwc|inwg|iwc|in. wc|\" wc|\" wg|\" H2O|inches wc|inches H2O|"
             "inches of water"},
    {.symbol = "mmH2O",
     .family = metric,
     .ratio = millimetre_of_water,
     .also = "mm H2O|mm wc|mm wg"},
    {.symbol = "inHg", .family = us, .ratio = inch_of_mercury, .also = "in Hg|\" Hg|inches Hg"},
    {.symbol = "psi", .family = us, .ratio = psi, .also = "lbf/in2"},
};

// Fuel and flue gas share their units; only the unit shown first differs.
constexpr Unit mass_rate_units[] = {
    {.symbol = "kg/h",
     .family = metric,
     .ratio = times(1.0) / hour,
     .written = true,
     .also = "kg/hr|kg per hour|kg per h"},
    {.symbol = "kg/s", .family = metric, .written = true},
    {.symbol = "g/s", .family = metric, .power = -3, .written = true},
    {.symbol = "g/min", .family = metric, .ratio = gram / minute},
    {.symbol = "lb/h",
     .family = us,
     .ratio = pound / hour,
     .also = "lb/hr|lbs/h|lbs/hr|lb per hour|pounds per hour"},
};

constexpr Unit volume_flow_units[] = {
    {.symbol = "m3/h",
     .family = metric,
     .ratio = times(1.0) / hour,
     .written = true,
     .also = "m3/hr"},
    {.symbol = "m3/s", .family = metric, .written = true},
    {.symbol = "L/s", .family = metric, .power = -3},
    {.symbol = "L/min", .family = metric, .ratio = litre / minute},
    {.symbol = "cfm", .family = us, .ratio = cubic_foot / minute, .also = "ft3/min|cu ft/min"},
};

constexpr Unit speed_units[] = {
    {.symbol = "m/s", .family = metric, .written = true},
    {.symbol = "km/h", .family = metric, .ratio = times(1000.0) / hour, .also = "kph|km/hr"},
    {.symbol = "mph", .family = us, .ratio = mile / hour, .also = "mi/h"},
    {.symbol = "ft/s", .family = us, .ratio = foot, .also = "fps"},
    {.symbol = "ft/min", .family = us, .ratio = foot / minute, .also = "fpm"},
    {.symbol = "kn", .ratio = nautical_mile / hour, .also = "kt|knot|knots"},
};

constexpr Unit power_units[] = {
    {.symbol = "kW", .family = metric, .power = 3, .written = true},
    {.symbol = "W", .family = metric, .written = true, .also = "watt|watts"},
    {.symbol = "Btu/h", .family = us, .ratio = btu / hour, .also = "Btu/hr|Btuh"},
    {.symbol = "kBtu/h", .family = us, .ratio = times(1000.0) * btu / hour, .also = "kBtu/hr|MBH"},
};

constexpr Unit energy_units[] = {
    {.symbol = "MJ", .family = metric, .power = 6, .case_matters = true, .written = true},
    {.symbol = "kJ", .family = metric, .power = 3},
    {.symbol = "J", .family = metric, .written = true},
    {.symbol = "kWh", .family = metric, .ratio = kilowatt_hour, .also = "kW h"},
    {.symbol = "Btu", .family = us, .ratio = btu},
};

constexpr Unit area_units[] = {
    {.symbol = "m2", .family = metric, .written = true, .also = "sq m|square metres|square meters"},
    {.symbol = "cm2", .family = metric, .power = -4, .written = true, .also = "sq cm"},
    {.symbol = "mm2", .family = metric, .power = -6, .also = "sq mm"},
    {.symbol = "in2", .family = us, .ratio = square_inch, .also = "sq in|square inches"},
    {.symbol = "ft2", .family = us, .ratio = square_foot, .also = "sq ft|square feet"},
};

constexpr Unit volume_units[] = {
    {.symbol = "m3", .family = metric, .written = true, .also = "cu m|cubic metres|cubic meters"},
    {.symbol = "L",
     .family = metric,
     .power = -3,
     .written = true,
     .also = "litre|litres|liter|liters|dm3"},
    {.symbol = "ft3", .family = us, .ratio = cubic_foot, .also = "cu ft|cubic feet"},
    {.symbol = "in3", .family = us, .ratio = cubic_inch, .also = "cu in|cubic inches"},
};

constexpr Unit fraction_units[] = {
    {.symbol = "%", .power = -2, .written = true, .also = "percent|per cent"},
    {.symbol = "ppm", .power = -6},
};

constexpr Unit moisture_units[] = {
    {.symbol = "% wet",
     .power = -2,
     .basis_stated = true,
     .written = true,
     .also = "% wet basis|% wb|percent wet"},
    {.symbol = "% dry",
     .power = -2,
     .scale = Scale::dry_basis,
     .basis_stated = true,
     .also = "% dry basis|% db|percent dry"},
    {.symbol = "%", .power = -2, .also = "percent|per cent"},
};

constexpr Unit slope_units[] = {
    {.symbol = "mm/m",
     .family = metric,
     .power = -3,
     .written = true,
     .also = "mm per m|mm per metre|mm per meter"},
    {.symbol = "in/ft",
     .family = us,
     .ratio = inch / foot,
     .also = "in per ft|in per foot|inch per foot|\" per foot|\"/ft|\"/'"},
    {.symbol = "%", .power = -2, .written = true, .also = "percent|per cent"},
    {.symbol = "deg", .ratio = degree, .scale = Scale::tangent, .also = "degree|degrees"},
};

constexpr Unit angle_units[] = {
    {.symbol = "deg", .ratio = degree, .written = true, .also = "degree|degrees"},
    {.symbol = "rad", .written = true, .also = "radian|radians"},
};

constexpr Unit thermal_resistance_units[] = {
    {.symbol = "m2K/W", .family = metric, .written = true, .also = "m2 K/W|K m2/W"},
    {.symbol = "ft2 h F/Btu",
     .family = us,
     .ratio = square_foot * hour * fahrenheit_degree / btu,
     .also = "R|h ft2 F/Btu|ft2 F h/Btu|ft2 h degF/Btu|h ft2 degF/Btu|ft2 degF h/Btu|hr ft2 "
             "F/Btu|hr ft2 degF/Btu|ft2 hr F/Btu"},
};

constexpr Unit conductivity_units[] = {
    {.symbol = "W/mK", .family = metric, .written = true, .also = "W/m K|W/m/K"},
    {.symbol = "Btu in/h ft2 F",
     .family = us,
     .ratio = btu * inch / (hour * square_foot * fahrenheit_degree),
     .also = "Btu in/hr ft2 F|Btu in/h ft2 degF|Btu in/hr ft2 degF|Btu in/ft2 h F|Btu in/ft2 hr "
             "F|Btu in/ft2 h degF"},
    {.symbol = "Btu/h ft F",
     .family = us,
     .ratio = btu / (hour * foot * fahrenheit_degree),
     .also = "Btu/hr ft F|Btu/h ft degF|Btu/hr ft degF|Btu/ft h F|Btu/ft hr F|Btu/ft h degF"},
};

constexpr Unit transmittance_units[] = {
    {.symbol = "W/m2K", .family = metric, .written = true, .also = "W/m2 K|W/m2/K"},
    {.symbol = "Btu/h ft2 F",
     .family = us,
     .ratio = btu / (hour * square_foot * fahrenheit_degree),
     .also = "Btu/hr ft2 F|Btu/h ft2 degF|Btu/hr ft2 degF|Btu/ft2 h F|Btu/ft2 hr F|Btu/ft2 h degF"},
};

constexpr Unit specific_heat_units[] = {
    {.symbol = "J/kgK", .family = metric, .written = true, .also = "J/kg K|J/kg/K"},
    {.symbol = "kJ/kgK", .family = metric, .power = 3, .written = true, .also = "kJ/kg K|kJ/kg/K"},
    {.symbol = "Btu/lb F",
     .family = us,
     .ratio = btu / (pound * fahrenheit_degree),
     .also = "Btu/lb degF|Btu/lb/F"},
};

constexpr Unit heating_value_units[] = {
    {.symbol = "MJ/kg", .family = metric, .power = 6, .case_matters = true, .written = true},
    {.symbol = "kJ/kg", .family = metric, .power = 3},
    {.symbol = "J/kg", .family = metric, .written = true},
    {.symbol = "kWh/kg", .family = metric, .ratio = kilowatt_hour, .also = "kW h/kg"},
    {.symbol = "Btu/lb", .family = us, .ratio = btu / pound},
};

constexpr Unit mass_units[] = {
    {.symbol = "kg", .family = metric, .written = true, .also = "kilogram|kilograms"},
    {.symbol = "g", .family = metric, .power = -3, .written = true, .also = "gram|grams"},
    {.symbol = "t", .family = metric, .power = 3, .also = "tonne|tonnes"},
    {.symbol = "lb", .family = us, .ratio = pound, .followed_by = "oz", .also = "lbs|pound|pounds"},
    {.symbol = "oz", .family = us, .ratio = ounce, .also = "ounce|ounces"},
};

constexpr Unit density_units[] = {
    {.symbol = "kg/m3", .family = metric, .written = true},
    {.symbol = "lb/ft3",
     .family = us,
     .ratio = pound / cubic_foot,
     .also = "lbs/ft3|lb/cu ft|lbs/cu ft|pcf"},
};

constexpr Unit duration_units[] = {
    {.symbol = "s", .written = true, .also = "sec|second|seconds"},
    {.symbol = "min",
     .ratio = minute,
     .written = true,
     .followed_by = "s",
     .also = "minute|minutes|mins"},
    {.symbol = "h",
     .ratio = hour,
     .written = true,
     .followed_by = "min",
     .also = "hr|hrs|hour|hours"},
};

constexpr Unit leakage_units[] = {
    {.symbol = "1/h",
     .ratio = times(1.0) / hour,
     .written = true,
     .also = "ach|/h|h-1|per hour|air changes per hour|air changes/h"},
    {.symbol = "1/s", .written = true, .also = "/s|s-1"},
};

constexpr Unit number_units[] = {{.symbol = "", .written = true}};

// In the order of the enumeration.
constexpr std::span<const Unit> all_units[] = {length_units,
                                               temperature_units,
                                               temperature_difference_units,
                                               pressure_units,
                                               mass_rate_units,
                                               mass_rate_units,
                                               volume_flow_units,
                                               speed_units,
                                               power_units,
                                               energy_units,
                                               area_units,
                                               volume_units,
                                               fraction_units,
                                               moisture_units,
                                               angle_units,
                                               slope_units,
                                               thermal_resistance_units,
                                               conductivity_units,
                                               transmittance_units,
                                               specific_heat_units,
                                               heating_value_units,
                                               mass_units,
                                               density_units,
                                               duration_units,
                                               leakage_units,
                                               number_units};

} // namespace

std::span<const Unit> units(Kind kind) {
    static_assert(std::size(all_units) == static_cast<std::size_t>(Kind::number) + 1);
    return all_units[static_cast<std::size_t>(kind)];
}

} // namespace fluewright::unit_table
