#pragma once

#include "fluewright/core/quantity/quantity.hpp"
#include "number_text.hpp"

#include <string_view>

/// What is said when a text is no quantity. `text` is the whole text, trimmed; pieces of it are
/// views into it, so that a help line can repeat what surrounds them.
namespace fluewright::quantity_fault {

[[nodiscard]] QuantityError empty(Kind kind);

/// Where a number should begin there is none that can be read.
[[nodiscard]] QuantityError
bad_number(std::string_view text, std::string_view at, number_text::Problem problem, Kind kind);

[[nodiscard]] QuantityError out_of_range(Kind kind);

/// A number with nothing behind it.
[[nodiscard]] QuantityError missing_unit(std::string_view number, Kind kind);

/// The text behind the number is no unit of the kind.
[[nodiscard]] QuantityError
bad_unit(std::string_view text, std::string_view number, std::string_view unit, Kind kind);

[[nodiscard]] QuantityError below_absolute_zero(Kind kind);
[[nodiscard]] QuantityError not_on_dry_basis(Kind kind);

/// "7/12 deg"; `number` is the 7/12.
[[nodiscard]] QuantityError rise_in_degrees(std::string_view number, Kind kind);

[[nodiscard]] QuantityError tolerance_not_positive(std::string_view value, Kind kind);

/// `unit` is the one to put behind the tolerance.
[[nodiscard]] QuantityError
tolerance_without_unit(std::string_view text, std::string_view unit, Kind kind);

[[nodiscard]] QuantityError tolerance_unit(std::string_view text, std::string_view unit, Kind kind);

} // namespace fluewright::quantity_fault
