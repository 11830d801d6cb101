#pragma once

#include "fluewright/model/fields/fields.hpp"
#include "json_document.hpp"

#include <optional>
#include <string>

/// The unit that was likely meant where one is missing or makes no sense.
namespace fluewright::json {

/// The units that most values of the whole file have; neither where it has as many of one system as
/// of the other.
[[nodiscard]] std::optional<UnitSystem> most_used_units(const Document& document);

/// The digits in front of the unit, or nothing where the text is more than digits and a unit.
[[nodiscard]] std::string_view digits_of(std::string_view text);

/// The digits with the unit that makes the likeliest value within the range: first of the units in
/// which the trade gives this key, in those of the file where one will do. Empty where none fits.
[[nodiscard]] std::string spelling_in_range(std::string_view digits,
                                            const FieldInfo& field,
                                            std::optional<UnitSystem> system);

/// The same for a number without a unit, each in quotes: a share below one is a percentage. A
/// temperature may be one in degrees of either kind: both, the likelier first, where both are
/// usual.
[[nodiscard]] std::string spellings_of_bare(std::string_view digits,
                                            const FieldInfo& field,
                                            std::optional<UnitSystem> system);

} // namespace fluewright::json
