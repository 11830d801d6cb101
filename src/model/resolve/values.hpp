#pragma once

#include "fluewright/core/fault.hpp"
#include "fluewright/model/fields/installation.hpp"

namespace fluewright {

/// Holds every value of an installation against its row of the field table: numbers out of range or
/// not finite, numbers that are no word of their vocabulary, empty words, values of another kind of
/// part, keys that must not be left out.
void add_value_faults(const Installation& installation, Faults& faults);

} // namespace fluewright
