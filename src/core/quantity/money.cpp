#include "fluewright/core/quantity/money.hpp"

#include <array>
#include <charconv>

namespace fluewright {

std::string format_money(double amount, std::string_view currency) {
    constexpr int hundredths = 2;
    constexpr std::size_t longest = 350; // any double in full
    std::array<char, longest> text{};
    const auto [end, fault] = std::to_chars(
        text.data(), text.data() + text.size(), amount, std::chars_format::fixed, hundredths);
    std::string words(text.data(), end);
    if (!currency.empty()) {
        words += ' ';
        words += currency;
    }
    return words;
}

} // namespace fluewright
