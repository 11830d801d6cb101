#pragma once

#include "fluewright/advice/parts/parts_list.hpp"

#include <string>

namespace fluewright {

/// A price list for read_piece_prices() with every length and part that this run can ask for, its
/// prices null: what is not known may stay so.
[[nodiscard]] std::string price_template(const PartsList& list, UnitSystem units);

} // namespace fluewright
