#pragma once

#include "fluewright/model/standards/method.hpp"
#include "fluewright/physics/handbook_chimney.hpp"

#include <optional>
#include <span>

/// The chimney equation of the ASHRAE Handbook.   [theory eq. 52 to 54]
namespace fluewright::handbook {

/// Overall coefficient of a construction on its inside area.
struct Transmittance {
    std::string_view construction;
    double design_w_m2k;
    std::string_view mark;
};

/// The handbook's table of design values, 1.3 to 0.3 Btu/(h ft2 F).
///
/// Source   ashrae-chimney, from memory
/// Notes    On stovepipe with flows below 10 g/s the value for black pipe is high.
[[nodiscard]] std::span<const Transmittance> transmittances();

/// The row for a wall: single wall by the finish of its outside, double wall by its air gap.
/// Notes    liners are not in the table: a filled one counts as an insulated chimney, one with an
///          air gap as double wall with 1/2 in of air (judgement)
[[nodiscard]] const Transmittance& transmittance_of(const WallBuild& wall);

/// Gas per gross heat input of a fuel: the handbook's line.
struct FuelLine {
    std::string_view fuel;
    FlowLine line;
};

/// Natural gas, LPG, No. 2 oil, bituminous coal, wood.
///
/// Source   ashrae-chimney: M at 5.3 and 9 % CO2 as quoted, coefficients from memory; 0.4 to 4.9 %
///          from the element balance
[[nodiscard]] std::span<const FuelLine> fuel_lines();

[[nodiscard]] const FuelLine& fuel_line_of(const ApplianceCase& appliance);

/// Mean gas temperature the handbook lists for sizing [K]; none for stoves.
///
/// Source   ashrae-chimney: gas with draft hood 360 F, oil 560 F as quoted; gas without hood 460 F
///          from memory
[[nodiscard]] std::optional<double> design_mean_temperature_k(const ApplianceCase& appliance);

/// Resistance coefficient of an elbow: 0.3 at 45 degrees, 0.75 at 90, straight lines between.
///
/// Source   ashrae-chimney, from memory (0.2 to 1.5 at 90); a second sheet has 0.35 and 0.75
[[nodiscard]] double elbow_k(double angle_rad);

/// The whole calculation at high and at low fire, in the warmest weather of the case.
///
/// Source   ASHRAE Handbook HVAC Systems and Equipment 2016, chapter 35   [ashrae-chimney: second
///          hand, most coefficients from memory]
[[nodiscard]] MethodResult calculate(const Case& resolved);

} // namespace fluewright::handbook
