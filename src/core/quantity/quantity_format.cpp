#include "fluewright/core/quantity/quantity.hpp"
#include "unit_factors.hpp"
#include "unit_table.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <optional>

namespace fluewright {
namespace {

using unit_table::Shown;
using unit_table::Unit;

constexpr std::string_view not_computed = "not computed";
constexpr int most_digits = 17;

std::string with_unit(std::string number, std::string_view unit) {
    if (!unit.empty()) {
        number += ' ';
        number += unit;
    }
    return number;
}

double rounded_to_digits(double value, int significant_digits) {
    std::array<char, 40> buffer{};
    const int digits = std::clamp(significant_digits, 1, most_digits);
    const auto text = std::to_chars(buffer.data(),
                                    buffer.data() + buffer.size(),
                                    value,
                                    std::chars_format::scientific,
                                    digits - 1);
    double result = value;
    std::from_chars(buffer.data(), text.ptr, result);
    return result;
}

void cut_trailing_zeros(std::string& text) {
    if (text.find('.') == std::string::npos) {
        return;
    }
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') {
        text.pop_back();
    }
}

std::string fixed(double value, int decimals) {
    std::array<char, 64> buffer{};
    const auto text = std::to_chars(
        buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
    std::string result(buffer.data(), text.ptr);
    const bool zero = result.find_first_not_of("-0.") == std::string::npos;
    return zero && result.front() == '-' ? result.substr(1) : result;
}

std::string shown_number(double value, int significant_digits, int most_decimals) {
    // Beyond these sizes the row of zeros hides the figure.
    constexpr double largest_fixed = 1e9;
    constexpr double smallest_fixed = 1e-6;
    const double rounded = rounded_to_digits(value, significant_digits);
    const double size = std::abs(rounded);
    const bool tiny = size > 0.0 && size < smallest_fixed && most_decimals > 6;
    if (size >= largest_fixed || tiny) {
        std::array<char, 40> buffer{};
        const auto text = std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded);
        return {buffer.data(), text.ptr};
    }
    const int magnitude = size > 0.0 ? static_cast<int>(std::floor(std::log10(size))) : 0;
    const int wanted = significant_digits - 1 - magnitude;
    const int decimals = std::clamp(wanted, 0, most_decimals);
    // Rounding twice could move a figure, so where the decimals decide the value itself is rounded.
    std::string text = fixed(wanted > most_decimals ? value : rounded, decimals);
    cut_trailing_zeros(text);
    return text;
}

std::string in_unit(double si, const Unit& unit, const Shown& shown, int significant_digits) {
    const double value = unit_table::from_si(si, unit);
    if (!std::isfinite(value)) {
        return std::string(not_computed);
    }
    // No reading has so many figures before the point, and no row of digits holds them.
    constexpr double most_with_decimals = 1e15;
    return with_unit(shown.all_decimals && std::abs(value) < most_with_decimals
                         ? fixed(value, shown.most_decimals)
                         : shown_number(value, significant_digits, shown.most_decimals),
                     unit.symbol);
}

constexpr long eighths_per_inch = 8;
constexpr long eighths_per_foot = 12 * eighths_per_inch;

std::string inches_text(long eighths) {
    const long whole = eighths / eighths_per_inch;
    long top = eighths % eighths_per_inch;
    long bottom = eighths_per_inch;
    while (top != 0 && top % 2 == 0) {
        top /= 2;
        bottom /= 2;
    }
    std::string text = whole != 0 || top == 0 ? std::to_string(whole) : "";
    if (top != 0) {
        text += text.empty() ? "" : " ";
        text += std::to_string(top) + '/' + std::to_string(bottom);
    }
    return text + " in";
}

// As on a US rule or drawing; none for lengths that are not measured so.
std::optional<std::string> feet_and_inches(double si) {
    constexpr double metres_per_inch = unit_table::inch.over / unit_table::inch.under;
    constexpr double metres_per_foot = unit_table::foot.over / unit_table::foot.under;
    const double size = std::abs(si);
    const double exact_eighths = size / metres_per_inch * eighths_per_inch;
    if (size >= 100.0 * metres_per_foot) {
        return std::nullopt;
    }
    long eighths = std::lround(exact_eighths);
    constexpr double as_typed = 1e-6;
    const bool on_the_mark =
        eighths > 0 && std::abs(exact_eighths - std::round(exact_eighths)) < as_typed;
    if (size < metres_per_inch && !on_the_mark) {
        return std::nullopt;
    }
    // Nobody cuts a length like that: what was not typed to the eighth is given to the inch.
    if (size >= 10.0 * metres_per_foot && !on_the_mark) {
        eighths = std::lround(size / metres_per_inch) * eighths_per_inch;
    }
    std::string text = si < 0.0 ? "-" : "";
    if (eighths < 2 * eighths_per_foot) {
        return text + inches_text(eighths);
    }
    text += std::to_string(eighths / eighths_per_foot) + " ft";
    const long left = eighths % eighths_per_foot;
    return left == 0 ? text : text + ' ' + inches_text(left);
}

} // namespace

std::string format_number(double value, int significant_digits) {
    constexpr int most_decimals = 12;
    return std::isfinite(value) ? shown_number(value, significant_digits, most_decimals)
                                : std::string(not_computed);
}

namespace {

/// format_quantity() with `more` digits and decimals than are usual; with any, US lengths are
/// decimal.
std::string
format_finer(double si, Kind kind, UnitSystem system, int significant_digits, int more) {
    if (!std::isfinite(si)) {
        return std::string(not_computed);
    }
    const auto& facts = unit_table::facts(kind);
    if (kind == Kind::length && system == UnitSystem::us && more == 0) {
        if (auto text = feet_and_inches(si)) {
            return *text;
        }
    }
    significant_digits += more;
    const auto choices = system == UnitSystem::us ? facts.shown_us : facts.shown_metric;
    for (const Shown& shown : choices) {
        const Unit* unit = unit_table::by_symbol(shown.unit, kind);
        assert(unit != nullptr);
        // 999.6 mm is shown as 1 m: it is the rounded value that must stay below the limit.
        const double rounded = rounded_to_digits(std::abs(si), significant_digits);
        if (shown.below_si <= 0.0 || rounded < shown.below_si) {
            Shown finer = shown;
            finer.most_decimals += more;
            return in_unit(si, *unit, finer, significant_digits);
        }
    }
    return std::string(not_computed);
}

} // namespace

std::string format_quantity(double si, Kind kind, UnitSystem system, int significant_digits) {
    return format_finer(si, kind, system, significant_digits, 0);
}

ShownApart
format_apart(double figure, double limit, Kind kind, UnitSystem system, int significant_digits) {
    constexpr int most_more = 6;
    constexpr double alike = 1e-6;
    const auto shown = [&](int more) {
        return ShownApart{.figure = format_finer(figure, kind, system, significant_digits, more),
                          .limit = format_finer(limit, kind, system, significant_digits, more)};
    };
    ShownApart usual = shown(0);
    if (std::abs(figure - limit) <= alike * std::abs(limit)) {
        return usual;
    }
    ShownApart finer = usual;
    for (int more = 1; finer.figure == finer.limit && more <= most_more; ++more) {
        finer = shown(more);
    }
    return finer.figure == finer.limit ? usual : finer;
}

std::string
format_in_unit(double si, Kind kind, std::string_view unit_symbol, int significant_digits) {
    const Unit* unit = unit_table::by_symbol(unit_symbol, kind);
    assert(unit != nullptr);
    if (unit == nullptr || !std::isfinite(si)) {
        return std::string(not_computed);
    }
    constexpr int most_decimals = 12;
    return in_unit(si, *unit, {unit->symbol, 0.0, most_decimals}, significant_digits);
}

} // namespace fluewright
