#pragma once

#include "fluewright/core/result.hpp"

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Quantities as people write them ("6 in", "3 ft 4 1/2 in", "20 degC ± 2 K") and as the physics
/// wants them: a double in SI. Units live in text only.
namespace fluewright {

/// What is measured. It decides which units are accepted and how a value is shown.
enum class Kind : std::uint8_t {
    length,                 ///< m
    temperature,            ///< K
    temperature_difference, ///< K
    pressure,               ///< Pa
    mass_rate,              ///< kg/s, shown as fuel is: kg/h or lb/h
    gas_flow,               ///< kg/s, shown as flue gas is: g/s or lb/h
    volume_flow,            ///< m3/s
    speed,                  ///< m/s
    power,                  ///< W
    energy,                 ///< J
    area,                   ///< m2
    volume,                 ///< m3
    fraction,               ///< share of one
    moisture,               ///< kg water per kg moist fuel (wet basis)
    angle,                  ///< rad
    slope,                  ///< rise over run
    thermal_resistance,     ///< m2K/W
    conductivity,           ///< W/mK
    transmittance,          ///< W/m2K
    specific_heat,          ///< J/kgK
    heating_value,          ///< J/kg
    mass,                   ///< kg
    density,                ///< kg/m3
    duration,               ///< s
    leakage,                ///< air changes per second
    number,                 ///< dimensionless, written without a unit
};

/// Every kind, in the order of the enumeration.
[[nodiscard]] std::span<const Kind> all_kinds();

struct Quantity {
    double value = 0.0;        ///< SI
    double tolerance = 0.0;    ///< half-width, SI; 0 when none was written
    bool us_units = false;     ///< a US customary unit was typed
    bool metric_units = false; ///< a metric unit was typed
    bool basis_stated = false; ///< moisture only: "wet" or "dry" was written
};

/// Why a text is no quantity of the wanted kind. The caller knows the text and its place.
struct QuantityError {
    std::string message; ///< stands alone: lower case, no final stop
    std::string allowed; ///< the accepted units of the kind
    std::string help;    ///< a right spelling, with the user's own number where there is one
};

/// Reads a whole text as one quantity of `kind`.
///
/// Numbers   finite decimals with a point ("1.5", "-2e3"), fractions ("1/2", "4 1/2", "4½") and
///           falling units ("3 ft 4 1/2 in", "5' 6\"", "2 lb 3 oz", "1 h 30 min")
/// Units     as listed by unit_symbols(), their usual other spellings, any letter case where that
///           cannot be mistaken; blanks before the unit are optional
/// Tolerance "4.2 m ± 0.1 m", "4.2 ± 0.1 m", "4.2 m ± 5 %" (of the value); also "+-" and "+/-".
///           Where the kind itself is measured in %, "± 2 %" means two points. A temperature takes
///           a temperature difference.
/// Moisture  "18 %" and "18 % wet" are on the wet basis w; "22 % dry" is u with w = u / (1 + u)
/// Notes     Correctly rounded in units that differ from SI by a power of ten, so that "150 mm" and
///           "0.15 m" are the same double. Allocates only to report an error.
[[nodiscard]] Result<Quantity, QuantityError> parse_quantity(std::string_view text, Kind kind);

/// The kind in words: "length", "volume flow".
[[nodiscard]] std::string_view name(Kind kind);

/// The SI unit that Quantity::value is in: "m", "Pa"; empty for plain numbers and shares.
[[nodiscard]] std::string_view si_unit(Kind kind);

/// What a JSON key of this kind ends in when the value is a number in SI: "_m", "_pa", or nothing.
[[nodiscard]] std::string_view json_suffix(Kind kind);

/// A quantity of this kind as one would write it: "150 mm".
[[nodiscard]] std::string_view example(Kind kind);

/// The accepted units, one spelling each.
[[nodiscard]] std::vector<std::string_view> unit_symbols(Kind kind);

/// The same as one line of text: "m, cm, mm, um, in, ft, yd".
[[nodiscard]] std::string accepted_units(Kind kind);

/// The two units that people give such a value in, one of each system; the second is empty where
/// both share one.
[[nodiscard]] std::array<std::string_view, 2> usual_units(Kind kind);

enum class UnitSystem : std::uint8_t { metric, us };

/// The unit a column of such values is headed with; the smaller one where the size decides.
[[nodiscard]] std::string_view customary_unit(Kind kind, UnitSystem system);

/// A value for people, in the unit the trade uses: "150 mm", "3 ft 4 1/2 in", "0.0482 inH2O".
/// US lengths from 1 in upwards are given to the nearest 1/8 in, from 10 ft upwards to the inch
/// where they are no eighths, from 100 ft upwards to the foot.
/// Never "-0"; a value that is not finite gives "not computed".
[[nodiscard]] std::string
format_quantity(double si, Kind kind, UnitSystem system, int significant_digits = 3);

/// A figure and the limit it is held against, as format_quantity() gives them.
struct ShownApart {
    std::string figure;
    std::string limit;
};

/// Both in as many digits as tell them apart, so that no answer says that 0.0241 falls short of
/// 0.0241. Figures that differ by less than a millionth of the limit are printed alike.
[[nodiscard]] ShownApart
format_apart(double figure, double limit, Kind kind, UnitSystem system, int significant_digits = 3);

/// The same in one given unit out of unit_symbols(kind); an unknown unit is a programming error.
[[nodiscard]] std::string
format_in_unit(double si, Kind kind, std::string_view unit, int significant_digits = 3);

/// A number for people: rounded, trailing zeros cut, never "-0", a decimal point in every locale.
[[nodiscard]] std::string format_number(double value, int significant_digits = 3);

/// The shortest text in a customary unit that parse_quantity reads as the identical double: in a
/// US unit where that takes no more than six digits, else in a metric one. The value must be finite
/// (and not below absolute zero).
[[nodiscard]] std::string
write_quantity(double si, Kind kind, UnitSystem system = UnitSystem::metric);

/// The kind of what stands behind the ± of a value: of a temperature a temperature difference.
[[nodiscard]] Kind tolerance_kind(Kind kind);

} // namespace fluewright
