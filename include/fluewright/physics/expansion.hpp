#pragma once

/// How much longer metal gets when hot.
namespace fluewright::expansion {

/// Lengthening over length from 20 degC [-], carbon steel.
///
///   dL/L = 1.2e-5 t + 0.4e-8 t^2 - 2.416e-4,   t in degC
///
/// Source   EN 1993-1-2:2005, 3.4.1.1;  Range  20 to 750 degC   [en1993-1-2]
/// [theory eq. 35]
[[nodiscard]] double carbon_steel(double temperature_k);

/// The same for austenitic stainless steel.
///
///   dL/L = (16 + 4.79e-3 t - 1.243e-6 t^2)(t - 20) 1e-6
///
/// Source   EN 1993-1-2:2005, annex C   [en1993-1-2]
[[nodiscard]] double stainless_steel(double temperature_k);

} // namespace fluewright::expansion
