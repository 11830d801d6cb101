#include "fluewright/core/quantity/quantity_range.hpp"

#include "number_text.hpp"

#include <charconv>
#include <cmath>

namespace fluewright {
namespace {

constexpr std::size_t usual_count = 5;
constexpr std::size_t most_values = 1000;
constexpr std::string_view of_numbers = "+-.0123456789/ \t";

/// What stands behind the last number.
std::string_view unit_of(std::string_view text) {
    const auto last = text.find_last_of("0123456789");
    return last == std::string_view::npos ? std::string_view{}
                                          : number_text::trimmed(text.substr(last + 1));
}

bool is_bare(std::string_view text) {
    return text.find_first_not_of(of_numbers) == std::string_view::npos;
}

Result<double, std::string> value_of(std::string_view text, std::string_view unit, Kind kind) {
    std::string whole{number_text::trimmed(text)};
    if (is_bare(whole) && !unit.empty()) {
        whole += ' ';
        whole += unit;
    }
    const auto quantity = parse_quantity(whole, kind);
    if (!quantity) {
        const QuantityError& error = quantity.error();
        return Failure{"`" + whole + "`: " + error.message
                       + (error.help.empty() ? "" : "; " + error.help)};
    }
    return quantity->value;
}

/// A value between two others as somebody would have typed it: 1.465 m, not 1.4649999999999999 m.
double as_typed(double value, Kind kind) {
    const auto read = parse_quantity(shortest_to_twelve_digits(value, kind), kind);
    return read ? read->value : value;
}

} // namespace

std::string shortest_to_twelve_digits(double si, Kind kind) {
    constexpr int digits = 12;
    constexpr double same_share = 1e-11;
    std::string shortest = write_quantity(si, kind);
    const auto offer = [&](const std::string& text) {
        const auto read = parse_quantity(text, kind);
        if (read && std::abs(read->value - si) <= same_share * std::abs(si)
            && text.size() < shortest.size()) {
            shortest = text;
        }
    };
    for (const std::string_view unit : unit_symbols(kind)) {
        offer(format_in_unit(si, kind, unit, digits));
    }
    if (kind == Kind::number) {
        offer(format_number(si, digits));
    }
    return shortest;
}

Result<std::vector<double>, std::string> parse_range(std::string_view text, Kind kind) {
    std::size_t count = usual_count;
    const auto dots = text.find("..");
    const auto colon = text.rfind(':');
    if (colon != std::string_view::npos) {
        const std::string_view typed = number_text::trimmed(text.substr(colon + 1));
        const auto [end, error] = std::from_chars(typed.data(), typed.data() + typed.size(), count);
        if (error != std::errc{} || end != typed.data() + typed.size() || count < 2
            || count > most_values || dots == std::string_view::npos) {
            return Failure{"`" + std::string{typed}
                           + "` is no count of values; write one from 2 to 1000, such as 3..8 m:6"};
        }
        text = text.substr(0, colon);
    }
    const std::string_view unit = unit_of(text);
    std::vector<double> values;
    if (dots == std::string_view::npos) {
        for (std::string_view rest = text;;) {
            const auto comma = rest.find(',');
            const auto value = value_of(rest.substr(0, comma), unit, kind);
            if (!value) {
                return Failure{value.error()};
            }
            values.push_back(*value);
            if (comma == std::string_view::npos) {
                return values;
            }
            if (values.size() == most_values) {
                return Failure{std::string{"more than 1000 values"}};
            }
            rest = rest.substr(comma + 1);
        }
    }
    const auto from = value_of(text.substr(0, dots), unit, kind);
    const auto to = value_of(text.substr(dots + 2), unit, kind);
    if (!from || !to) {
        return Failure{from ? to.error() : from.error()};
    }
    for (std::size_t i = 0; i < count; ++i) {
        const double share = static_cast<double>(i) / static_cast<double>(count - 1);
        values.push_back(i == 0           ? *from
                         : i + 1 == count ? *to
                                          : as_typed(*from + share * (*to - *from), kind));
    }
    return values;
}

} // namespace fluewright
