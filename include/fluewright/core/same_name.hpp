#pragma once

#include <algorithm>
#include <string_view>

/// Names as people type them: a fuel, a wall or a fitting is meant whatever the case of its letters
/// and whatever blanks stand around it.
namespace fluewright {

// Not std::tolower: that one follows the locale of the process.
[[nodiscard]] constexpr char lower_case(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

/// The text without the blanks around it.
[[nodiscard]] constexpr std::string_view without_blanks_around(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

/// Whether two texts are the same but for the case of their letters.
[[nodiscard]] constexpr bool same_letters(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char one, char other) {
        return one == other || lower_case(one) == lower_case(other);
    });
}

/// Whether two texts are one name.
[[nodiscard]] constexpr bool is_same_name(std::string_view a, std::string_view b) {
    return same_letters(without_blanks_around(a), without_blanks_around(b));
}

} // namespace fluewright
