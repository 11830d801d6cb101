#pragma once

#include "fluewright/model/fields/fields.hpp"

#include <string>

/// The bounds of a field: the one place that decides whether a number may stand in it, for the
/// reader as for an installation that a program has built.
namespace fluewright {

/// Whether the row takes this number, SI; false for one that is not finite. A number within the
/// last bits of a bound counts as the bound: a conversion of units may have moved it.
[[nodiscard]] bool is_in_range(double value, const FieldInfo& field);

/// Whether a row that counts takes this number.
[[nodiscard]] bool is_whole_enough(double value, const FieldInfo& field);

/// "`screws` is not a whole number"
[[nodiscard]] std::string not_whole_words(const FieldInfo& field);

/// "50 mm to 1 m", "above 0 m and up to 100 m".
[[nodiscard]] std::string range_in_words(const FieldInfo& field,
                                         UnitSystem system = UnitSystem::metric);

/// "`diameter` is outside 50 mm to 1 m"
[[nodiscard]] std::string out_of_range_words(const FieldInfo& field, UnitSystem system);

/// "50 mm to 1 m (flues this program is made for)"
[[nodiscard]] std::string allowed_words(const FieldInfo& field, UnitSystem system);

/// A number as the field shows it: zero, which has no size to choose a unit by, in the unit of the
/// example.
[[nodiscard]] std::string value_in_words(double value, const FieldInfo& field, UnitSystem system);

} // namespace fluewright
