#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <string>

/// Small helpers for checks that rebuild a published layout as an installation.
namespace published::rebuilt {

/// A straight that rises, or that runs level.
[[nodiscard]] fluewright::Part up(double length_m, const std::string& wall);
[[nodiscard]] fluewright::Part across(double length_m, const std::string& wall);

/// A part whose loss coefficient is given.
[[nodiscard]] fluewright::Part with_loss(fluewright::PartKind kind, double loss);

/// Sea-level calm air at a temperature.
[[nodiscard]] fluewright::Weather calm(double outdoor_k);

/// The installation made complete; throws where the reader would report a fault.
[[nodiscard]] fluewright::Case resolved(const fluewright::Installation& written);

/// The widest flue that a file can have; beyond it the case is changed.
inline constexpr double widest_in_a_file_m = 1.0;

/// Gives every section and the outlet a round bore of any size.
void set_bore(fluewright::Case& c, double diameter_m);

} // namespace published::rebuilt
