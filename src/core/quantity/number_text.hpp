#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace fluewright::number_text {

/// A number as typed, not yet rounded to a double: a power of ten can still be applied exactly.
struct Number {
    std::string_view digits;    ///< digits and point as typed, without sign and exponent
    std::uint64_t mantissa = 0; ///< the digits as an integer, when they fit
    int exponent = 0;           ///< value = mantissa * 10^exponent
    int typed_exponent = 0;     ///< value = digits * 10^typed_exponent
    double fraction = 0.0;      ///< the 1/2 of "4 1/2"
    bool fits = true;           ///< mantissa is exact as a double
    bool negative = false;
};

enum class Problem : std::uint8_t { none, not_a_number, separator, too_long, bad_fraction };

struct Scan {
    Number number;
    std::string_view rest; ///< what follows the number
    Problem problem = Problem::none;
};

/// Reads the longest number at the start of `text`.
[[nodiscard]] Scan scan(std::string_view text);

/// number * 10^power, correctly rounded unless it holds a fraction; infinite when out of range,
/// be it too great or too small to be held.
[[nodiscard]] double value(const Number& number, int power = 0);

/// True where a digit or a fraction character such as ½ begins.
[[nodiscard]] bool begins_number(std::string_view text);

[[nodiscard]] constexpr bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Length in bytes of the blank at the start of `text`, no-break and thin spaces included; 0 if
/// none.
[[nodiscard]] std::size_t blank_length(std::string_view text);

[[nodiscard]] std::string_view without_leading_blanks(std::string_view text);
[[nodiscard]] std::string_view trimmed(std::string_view text);

} // namespace fluewright::number_text
