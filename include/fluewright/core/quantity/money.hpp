#pragma once

#include <string>
#include <string_view>

namespace fluewright {

/// Money for a person, to the hundredth, in a currency as the user writes it: "1050.00 EUR", and
/// without a currency "1050.00".
[[nodiscard]] std::string format_money(double amount, std::string_view currency);

} // namespace fluewright
