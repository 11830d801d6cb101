#pragma once

#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// The measure-and-cut sheet.
namespace fluewright::report {

/// A length as it is marked: in sixteenths of an inch, "39 5/16 in", or in whole millimetres.
[[nodiscard]] std::string mark_words(double length_m, UnitSystem units);

/// How much of a line of parts, by its unit: cement goes by weight and pipe that is short by its
/// length; everything else is counted.
[[nodiscard]] std::string count_words(double count, std::string_view unit, const Style& style);

/// Each length that is cut, its cuts one by one, and a picture of each.
[[nodiscard]] std::string cut_sheet(const PartsList& list, const Style& style);

} // namespace fluewright::report
