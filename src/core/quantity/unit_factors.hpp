#pragma once

#include "unit_table.hpp"

#include <numbers>

/// The conversion factors, each once. All are exact by definition, save for the column of mercury,
/// which is rounded.
///
/// Source  definitions of the units   [unit-definitions, from memory]
namespace fluewright::unit_table {

constexpr Ratio operator*(Ratio a, Ratio b) {
    return {a.over * b.over, a.under * b.under};
}

constexpr Ratio operator/(Ratio a, Ratio b) {
    return {a.over * b.under, a.under * b.over};
}

constexpr Ratio times(double n) {
    return {n, 1.0};
}

constexpr Ratio minute = times(60.0);
constexpr Ratio hour = times(3600.0);

constexpr Ratio inch = {254.0, 10000.0};
constexpr Ratio foot = {3048.0, 10000.0};
constexpr Ratio yard = {9144.0, 10000.0};
constexpr Ratio mile = {1609344.0, 1000.0};
constexpr Ratio nautical_mile = times(1852.0);
constexpr Ratio square_inch = inch * inch;
constexpr Ratio square_foot = foot * foot;
constexpr Ratio cubic_inch = inch * inch * inch;
constexpr Ratio cubic_foot = foot * foot * foot;
constexpr Ratio litre = {1.0, 1000.0};

constexpr Ratio pound = {45359237.0, 100000000.0};
constexpr Ratio ounce = pound / times(16.0);
constexpr Ratio gram = {1.0, 1000.0};

constexpr Ratio standard_gravity = {980665.0, 100000.0};
constexpr Ratio psi = pound * standard_gravity / square_inch;
constexpr Ratio water_density = times(1000.0); // conventional
constexpr Ratio millimetre_of_water = water_density * standard_gravity / times(1000.0);
constexpr Ratio inch_of_water = water_density * standard_gravity * inch;
constexpr Ratio inch_of_mercury = {3386389.0, 1000.0}; // conventional, mercury at 0 degC

constexpr Ratio fahrenheit_degree = {5.0, 9.0};
constexpr double celsius_zero_k = 273.15;
constexpr double fahrenheit_zero_degrees = 459.67; // absolute zero lies so far below 0 degF

constexpr Ratio btu = {105505585262.0, 100000000.0}; // International Table
constexpr Ratio kilowatt_hour = times(3.6e6);

constexpr Ratio degree = {std::numbers::pi, 180.0};

} // namespace fluewright::unit_table
