#include "number_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <limits>
#include <optional>
#include <system_error>

namespace fluewright::number_text {
namespace {

constexpr std::size_t longest_digits = 64;
constexpr std::uint64_t exact_as_double = std::uint64_t{1} << 53U;

// Powers of ten that a double holds exactly; one multiplication or division is then rounded once.
constexpr std::array<double, 23> exact_powers = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                                 1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                                                 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

struct FractionCharacter {
    std::string_view text;
    double value;
};

constexpr std::array<FractionCharacter, 9> fraction_characters = {{{"\u00BD", 1.0 / 2.0},
                                                                   {"\u00BC", 1.0 / 4.0},
                                                                   {"\u00BE", 3.0 / 4.0},
                                                                   {"\u215B", 1.0 / 8.0},
                                                                   {"\u215C", 3.0 / 8.0},
                                                                   {"\u215D", 5.0 / 8.0},
                                                                   {"\u215E", 7.0 / 8.0},
                                                                   {"\u2153", 1.0 / 3.0},
                                                                   {"\u2154", 2.0 / 3.0}}};

constexpr std::array<std::string_view, 4> wide_blanks = {"\u00A0", "\u202F", "\u2009", "\u2007"};

constexpr std::string_view minus_sign = "\u2212";

bool is_ascii(std::string_view text) {
    return text.empty() || static_cast<unsigned char>(text.front()) < 0x80U;
}

std::size_t digit_count(std::string_view text) {
    std::size_t count = 0;
    while (count < text.size() && is_digit(text[count])) {
        ++count;
    }
    return count;
}

const FractionCharacter* fraction_character(std::string_view text) {
    if (is_ascii(text)) {
        return nullptr;
    }
    const auto* found =
        std::find_if(fraction_characters.begin(),
                     fraction_characters.end(),
                     [&](const FractionCharacter& each) { return text.starts_with(each.text); });
    return found == fraction_characters.end() ? nullptr : found;
}

// Up to four digits, the most a fraction on a rule or a drawing has.
std::optional<int> small_integer(std::string_view text) {
    constexpr std::size_t most_digits = 4;
    if (text.empty() || text.size() > most_digits) {
        return std::nullopt;
    }
    int result = 0;
    for (const char c : text) {
        result = result * 10 + (c - '0');
    }
    return result;
}

bool begins_fraction(std::string_view text) {
    const std::size_t top = digit_count(text);
    return top > 0 && top + 1 < text.size() && text[top] == '/' && is_digit(text[top + 1]);
}

// Reads "1/2" into scan.number.fraction; `proper` asks for less than one, as in "4 1/2".
void read_fraction(Scan& scan, std::string_view text, bool proper) {
    const std::size_t top_length = digit_count(text);
    const std::string_view below = text.substr(top_length + 1);
    const std::size_t below_length = digit_count(below);
    const auto top = small_integer(text.substr(0, top_length));
    const auto bottom = small_integer(below.substr(0, below_length));
    if (!top || !bottom || *bottom == 0 || (proper && *top >= *bottom)) {
        scan.problem = Problem::bad_fraction;
        return;
    }
    scan.number.fraction = static_cast<double>(*top) / *bottom;
    scan.rest = below.substr(below_length);
}

// What may follow whole digits: "½", " ½", " 1/2" or "-1/2" (as builders write 4-1/2).
void read_mixed_fraction(Scan& scan) {
    const std::string_view next = without_leading_blanks(scan.rest);
    if (const auto* character = fraction_character(next)) {
        scan.number.fraction = character->value;
        scan.rest = next.substr(character->text.size());
        return;
    }
    const bool hyphen = scan.rest.starts_with('-');
    const std::string_view fraction = hyphen ? scan.rest.substr(1) : next;
    const bool apart = hyphen || next.size() < scan.rest.size();
    if (apart && begins_fraction(fraction)) {
        read_fraction(scan, fraction, true);
    }
}

void read_exponent(Scan& scan) {
    std::string_view text = scan.rest;
    if (text.empty() || (text.front() != 'e' && text.front() != 'E')) {
        return;
    }
    text.remove_prefix(1);
    const bool negative = text.starts_with('-');
    if (negative || text.starts_with('+')) {
        text.remove_prefix(1);
    }
    const std::size_t length = digit_count(text);
    if (length == 0) {
        return;
    }
    // Beyond four digits the number is out of range anyway.
    constexpr int out_of_range = 9999;
    const int size = small_integer(text.substr(0, length)).value_or(out_of_range);
    scan.number.typed_exponent = negative ? -size : size;
    scan.number.exponent += scan.number.typed_exponent;
    scan.rest = text.substr(length);
}

void take_digits(Number& number, std::string_view digits) {
    for (const char c : digits) {
        if (number.mantissa < exact_as_double / 10 - 1) {
            number.mantissa = number.mantissa * 10 + static_cast<std::uint64_t>(c - '0');
        } else {
            number.fits = false;
        }
    }
}

double decimal_value(const Number& number, int power) {
    const int exponent = number.exponent + power;
    constexpr int most = static_cast<int>(exact_powers.size()) - 1;
    if (number.fits && (number.mantissa == 0 || (exponent >= -most && exponent <= most))) {
        const auto mantissa = static_cast<double>(number.mantissa);
        if (number.mantissa == 0) {
            return 0.0;
        }
        return exponent < 0 ? mantissa / exact_powers[static_cast<std::size_t>(-exponent)]
                            : mantissa * exact_powers[static_cast<std::size_t>(exponent)];
    }
    std::array<char, longest_digits + 16> buffer{};
    char* end = std::copy(number.digits.begin(), number.digits.end(), buffer.data());
    *end++ = 'e';
    end = std::to_chars(end, buffer.data() + buffer.size(), number.typed_exponent + power).ptr;
    double result = 0.0;
    const auto read = std::from_chars(buffer.data(), end, result);
    return read.ec == std::errc{} ? result : std::numeric_limits<double>::infinity();
}

} // namespace

std::size_t blank_length(std::string_view text) {
    if (text.empty()) {
        return 0;
    }
    if (is_ascii(text)) {
        return text.front() == ' ' || text.front() == '\t' ? 1 : 0;
    }
    for (const std::string_view blank : wide_blanks) {
        if (text.starts_with(blank)) {
            return blank.size();
        }
    }
    return 0;
}

std::string_view without_leading_blanks(std::string_view text) {
    while (const std::size_t length = blank_length(text)) {
        text.remove_prefix(length);
    }
    return text;
}

std::string_view trimmed(std::string_view text) {
    text = without_leading_blanks(text);
    for (bool again = true; again && !text.empty();) {
        again = false;
        if (text.back() == ' ' || text.back() == '\t') {
            text.remove_suffix(1);
            again = true;
            continue;
        }
        for (const std::string_view blank : wide_blanks) {
            if (text.ends_with(blank)) {
                text.remove_suffix(blank.size());
                again = true;
            }
        }
    }
    return text;
}

bool begins_number(std::string_view text) {
    return !text.empty() && (is_digit(text.front()) || fraction_character(text) != nullptr);
}

Scan scan(std::string_view text) {
    Scan result;
    result.rest = text;
    Number& number = result.number;
    number.negative = text.starts_with('-') || text.starts_with(minus_sign);
    if (number.negative || text.starts_with('+')) {
        text.remove_prefix(text.starts_with(minus_sign) ? minus_sign.size() : 1);
    }
    if (const auto* character = fraction_character(text)) {
        number.fraction = character->value;
        result.rest = text.substr(character->text.size());
        return result;
    }
    if (begins_fraction(text)) {
        read_fraction(result, text, false);
        return result;
    }
    const std::size_t whole = digit_count(text);
    const bool point = whole < text.size() && text[whole] == '.';
    const std::size_t decimals = point ? digit_count(text.substr(whole + 1)) : 0;
    if (whole + decimals == 0) {
        result.problem = Problem::not_a_number;
        return result;
    }
    number.digits = text.substr(0, point ? whole + 1 + decimals : whole);
    if (number.digits.size() > longest_digits) {
        result.problem = Problem::too_long;
        return result;
    }
    take_digits(number, text.substr(0, whole));
    take_digits(number, point ? text.substr(whole + 1, decimals) : std::string_view{});
    number.exponent = -static_cast<int>(decimals);
    result.rest = text.substr(number.digits.size());
    const bool separator =
        result.rest.size() > 1 && is_digit(result.rest[1])
        && std::string_view(",._").find(result.rest[0]) != std::string_view::npos;
    if (separator) {
        result.problem = Problem::separator;
        return result;
    }
    read_exponent(result);
    if (!point && number.typed_exponent == 0) {
        read_mixed_fraction(result);
    }
    return result;
}

double value(const Number& number, int power) {
    double result = 0.0;
    if (!number.digits.empty()) {
        result = decimal_value(number, number.fraction > 0.0 ? 0 : power);
    }
    if (number.fraction > 0.0) {
        result += number.fraction;
        const double scale = exact_powers[static_cast<std::size_t>(power < 0 ? -power : power)];
        result = power < 0 ? result / scale : result * scale;
    }
    // The sum keeps a typed "-0" from becoming a negative zero.
    return number.negative ? 0.0 - result : result;
}

} // namespace fluewright::number_text
