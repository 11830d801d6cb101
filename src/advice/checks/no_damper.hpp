#pragma once

#include <string_view>

namespace fluewright::checking {

/// What to do about strong draft where the file says that the maker of the heater allows no damper.
inline constexpr std::string_view where_no_damper_may_be =
    "Its maker allows no damper: ask the maker what holds the draft of a flue this tall.";

} // namespace fluewright::checking
