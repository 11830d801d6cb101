#include "fluewright/core/quantity/quantity.hpp"
#include "unit_table.hpp"

#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <optional>

namespace fluewright {
namespace {

using unit_table::Unit;

std::string with_unit(std::string number, const Unit& unit) {
    if (!unit.symbol.empty()) {
        number += ' ';
        number += unit.symbol;
    }
    return number;
}

/// The number 0.d1d2d3... * 10^point.
struct Decimal {
    std::string digits;
    int point = 0;
};

// Plain, unless an exponent saves a long row of zeros.
std::string text_of(const Decimal& decimal) {
    constexpr int most_zeros = 6;
    const auto size = static_cast<int>(decimal.digits.size());
    if (decimal.point > size + most_zeros || decimal.point < -most_zeros) {
        std::string text = decimal.digits.substr(0, 1);
        if (size > 1) {
            text += '.' + decimal.digits.substr(1);
        }
        return text + 'e' + std::to_string(decimal.point - 1);
    }
    std::string text = decimal.digits;
    if (decimal.point <= 0) {
        text.insert(0, "0." + std::string(static_cast<std::size_t>(-decimal.point), '0'));
    } else if (decimal.point < size) {
        text.insert(static_cast<std::size_t>(decimal.point), 1, '.');
    } else {
        text.append(static_cast<std::size_t>(decimal.point - size), '0');
    }
    return text;
}

// Reads "1.25e-03", the form std::to_chars gives, back into digits and exponent.
Decimal decimal_from(std::string_view scientific) {
    const std::size_t e = scientific.find('e');
    Decimal result{std::string(scientific.substr(0, 1)), 0};
    if (e > 2) {
        result.digits += scientific.substr(2, e - 2);
    }
    result.digits.erase(result.digits.find_last_not_of('0') + 1);
    std::string_view exponent = scientific.substr(e + 1);
    if (exponent.starts_with('+')) {
        exponent.remove_prefix(1);
    }
    std::from_chars(exponent.data(), exponent.data() + exponent.size(), result.point);
    ++result.point;
    return result;
}

using Buffer = std::array<char, 40>;

// The shortest digits of the double, moved by a power of ten: no rounding takes place.
std::string shifted(double si, int power) {
    Buffer buffer{};
    const auto written = std::to_chars(
        buffer.data(), buffer.data() + buffer.size(), std::abs(si), std::chars_format::scientific);
    Decimal decimal = decimal_from({buffer.data(), written.ptr});
    decimal.point -= power;
    return (si < 0.0 ? "-" : "") + text_of(decimal);
}

/// Digits that tell every double from its neighbours.
constexpr int enough_digits = 17;

// With a factor or an offset in between the text is found by trying more and more digits.
std::optional<std::string>
searched(double si, Kind kind, const Unit& unit, int most_digits = enough_digits) {
    const double value = unit_table::from_si(si, unit);
    if (!std::isfinite(value)) {
        return std::nullopt;
    }
    if (value == 0.0) {
        const std::string zero = with_unit("0", unit);
        const auto read = parse_quantity(zero, kind);
        return read && read->value == si ? std::optional{zero} : std::nullopt;
    }
    for (int digits = 1; digits <= most_digits; ++digits) {
        Buffer buffer{};
        const auto written = std::to_chars(buffer.data(),
                                           buffer.data() + buffer.size(),
                                           std::abs(value),
                                           std::chars_format::scientific,
                                           digits - 1);
        const std::string number = text_of(decimal_from({buffer.data(), written.ptr}));
        std::string text = with_unit((value < 0.0 ? "-" : "") + number, unit);
        const auto read = parse_quantity(text, kind);
        if (read && read->value == si) {
            return text;
        }
    }
    return std::nullopt;
}

bool is_plain(const Unit& unit) {
    return unit.ratio.over == unit.ratio.under && unit.offset == 0.0
           && unit.scale == unit_table::Scale::linear;
}

std::string shortest_us(double si, Kind kind) {
    constexpr int most_digits = 6;
    std::string shortest;
    for (const unit_table::Shown& shown : unit_table::facts(kind).shown_us) {
        const Unit* unit = unit_table::by_symbol(shown.unit, kind);
        if (unit == nullptr || unit->family != unit_table::Family::us) {
            continue;
        }
        std::string text = searched(si, kind, *unit, most_digits).value_or("");
        if (!text.empty() && (shortest.empty() || text.size() < shortest.size())) {
            shortest = std::move(text);
        }
    }
    return shortest;
}

} // namespace

std::string write_quantity(double si, Kind kind, UnitSystem system) {
    assert(std::isfinite(si));
    if (system == UnitSystem::us) {
        if (std::string text = shortest_us(si, kind); !text.empty()) {
            return text;
        }
    }
    std::string shortest;
    for (const Unit& unit : unit_table::units(kind)) {
        if (!unit.written) {
            continue;
        }
        std::string text;
        if (is_plain(unit)) {
            text = with_unit(si == 0.0 ? "0" : shifted(si, unit.power), unit);
        } else {
            text = searched(si, kind, unit).value_or("");
        }
        if (!text.empty() && (shortest.empty() || text.size() < shortest.size())) {
            shortest = text;
        }
    }
    return shortest;
}

} // namespace fluewright
