#include "quantity_fault.hpp"

#include "fluewright/core/nearest_word.hpp"
#include "unit_table.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace fluewright::quantity_fault {
namespace {

using number_text::Problem;
using unit_table::UnitText;

// Each repair looks at the whole text again; a long one would take its time and help nobody.
constexpr std::size_t longest_repaired = 80;

std::string with_article(std::string_view noun) {
    const bool vowel = !noun.empty() && std::string_view("aeiou").find(noun.front()) < 5;
    return (vowel ? "an " : "a ") + std::string(noun);
}

std::string with_article(Kind kind) {
    return with_article(name(kind));
}

// A piece of the user's text for a message: short, one line, cut between characters.
std::string excerpt(std::string_view text) {
    constexpr std::size_t longest = 40;
    std::string result(text.substr(0, longest));
    if (text.size() > longest) {
        const auto continues = [](char c) {
            return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
        };
        for (std::size_t next = longest; next > 0 && continues(text[next]); --next) {
            result.pop_back();
        }
        result += "...";
    }
    std::replace_if(
        result.begin(),
        result.end(),
        [](char c) { return static_cast<unsigned char>(c) < 0x20U || c == 0x7F; },
        '?');
    return '`' + result + '`';
}

std::string quoted(std::string_view text) {
    return '"' + std::string(text) + '"';
}

std::string example_help(Kind kind) {
    return "for example " + quoted(example(kind));
}

std::string joined(std::string_view number, std::string_view unit) {
    return std::string(number) + (unit.empty() ? "" : " ") + std::string(unit);
}

QuantityError fault(std::string message, std::string help, Kind kind) {
    return {std::move(message), accepted_units(kind), std::move(help)};
}

// The spelling of a unit of the kind that was probably meant.
std::optional<std::string_view> nearest_unit(std::string_view typed, Kind kind) {
    std::vector<std::string_view> spellings = unit_symbols(kind);
    for (const unit_table::Unit& unit : unit_table::units(kind)) {
        for (std::string_view also = unit.also; !also.empty();) {
            const std::size_t bar = std::min(also.find('|'), also.size());
            spellings.push_back(also.substr(0, bar));
            also.remove_prefix(std::min(bar + 1, also.size()));
        }
    }
    return nearest_word(typed, spellings);
}

std::string write_help(std::string_view text) {
    return "write " + quoted(text);
}

std::string without(std::string_view text, std::string_view unwanted) {
    std::string result;
    for (const char c : text) {
        if (unwanted.find(c) == std::string_view::npos) {
            result += c;
        }
    }
    return result;
}

// Whether the separators stand before groups of three digits, as thousands do.
bool are_thousands(std::string_view number, char separator) {
    for (std::size_t at = number.find(separator); at != std::string_view::npos;) {
        const std::size_t next = number.find(separator, at + 1);
        if (std::min(next, number.size()) - at != 4) {
            return false;
        }
        at = next;
    }
    return number.find(separator) <= 3 && number.front() != '0';
}

/// How a number with commas or other separators may be meant: two readings, one or none.
std::vector<std::string> readings(std::string_view number) {
    const std::size_t comma = number.rfind(',');
    const std::size_t point = number.rfind('.');
    const auto commas = std::count(number.begin(), number.end(), ',');
    const auto points = std::count(number.begin(), number.end(), '.');
    if (number.find('_') != std::string_view::npos) {
        return {without(number, "_")};
    }
    if (comma != std::string_view::npos && point != std::string_view::npos) {
        const std::size_t last = std::max(comma, point);
        return {without(number.substr(0, last), ",.") + '.' + std::string(number.substr(last + 1))};
    }
    std::vector<std::string> result;
    if (commas > 0 ? are_thousands(number, ',') : are_thousands(number, '.')) {
        result.push_back(without(number, ",."));
    }
    if (commas == 1 && points == 0) {
        result.emplace_back(number);
        result.back()[comma] = '.';
    }
    return result;
}

// Repairs the number that begins at `at` and, should more be wrong, says what is left to do.
QuantityError separated_number(std::string_view text, std::string_view at, Kind kind) {
    constexpr std::string_view digits = "0123456789";
    const std::string_view typed = at.substr(std::min(at.find_first_of(".0123456789"), at.size()));
    const std::size_t run = std::min(typed.find_first_not_of("0123456789.,_"), typed.size());
    const bool comma = typed.substr(0, run).find(',') != std::string_view::npos;
    const std::string message = comma ? "a number takes a decimal point and no commas"
                                      : "a number takes one decimal point and no separators";
    if (text.size() > longest_repaired || typed.empty()) {
        return fault(message, example_help(kind), kind);
    }
    const std::string_view number = typed.substr(0, typed.find_last_of(digits, run - 1) + 1);
    const auto start = static_cast<std::size_t>(typed.data() - text.data());
    std::string help;
    for (const std::string& reading : readings(number)) {
        std::string repaired(text);
        repaired.replace(start, number.size(), reading);
        const auto parsed = parse_quantity(repaired, kind);
        if (parsed && parsed->us_units && !help.empty()) {
            break; // where US units are used, a comma parts thousands
        }
        help += help.empty() ? "write " : " or ";
        if (parsed) {
            help += quoted(repaired);
        } else {
            const std::string& more = parsed.error().help;
            help += more.substr(std::min(more.find('"'), more.size()));
        }
    }
    return fault(message, help.empty() ? example_help(kind) : help, kind);
}

// Where a comma stands between two digits behind the first number, as in "3 ft 1,5 in": the number
// it stands in.
std::string_view number_with_comma(std::string_view text) {
    for (std::size_t i = 1; i + 1 < text.size(); ++i) {
        if (text[i] == ',' && number_text::is_digit(text[i - 1])
            && number_text::is_digit(text[i + 1])) {
            std::size_t start = i;
            while (start > 0 && number_text::is_digit(text[start - 1])) {
                --start;
            }
            return text.substr(start);
        }
    }
    return {};
}

// "1 200 mm": the unit begins with a digit.
QuantityError
blank_in_number(std::string_view text, std::string_view number, std::string_view unit, Kind kind) {
    constexpr std::string_view digits = "0123456789";
    const std::string message = "a number takes no blank between its digits";
    const bool grouped = std::min(unit.find_first_not_of(digits), unit.size()) == 3
                         && number.find_first_not_of(digits) == std::string_view::npos;
    if (!grouped || text.size() > longest_repaired) {
        return fault(message, example_help(kind), kind);
    }
    std::string closed(text);
    const auto end = static_cast<std::size_t>(number.data() + number.size() - text.data());
    closed.erase(end, static_cast<std::size_t>(unit.data() - text.data()) - end);
    const auto parsed = parse_quantity(closed, kind);
    return fault(message, parsed ? write_help(closed) : parsed.error().help, kind);
}

// The other kind that a unit belongs to, when it is none of `kind`.
std::optional<Kind> kind_of_unit(std::string_view unit) {
    for (const Kind other : all_kinds()) {
        if (unit_table::find(UnitText(unit), other) != nullptr) {
            return other;
        }
    }
    return std::nullopt;
}

std::string units_help(std::string_view number, Kind kind) {
    const auto& units = unit_table::facts(kind).help_units;
    std::string help = write_help(joined(number, units[0]));
    if (!units[1].empty()) {
        help += " or " + quoted(joined(number, units[1]));
    }
    return help;
}

} // namespace

QuantityError empty(Kind kind) {
    return fault(with_article(kind) + " is due, but the text is empty", example_help(kind), kind);
}

QuantityError bad_number(std::string_view text, std::string_view at, Problem problem, Kind kind) {
    switch (problem) {
    case Problem::separator:
        return separated_number(text, at, kind);
    case Problem::too_long:
        return fault("a number has too many digits", example_help(kind), kind);
    case Problem::bad_fraction:
        return fault(
            "a fraction is not a proper one", "write fractions as \"1/2\" or \"4 1/2\"", kind);
    case Problem::not_a_number:
    case Problem::none:
        break;
    }
    if (at.data() != text.data()) {
        return fault("the tolerance does not begin with a number", example_help(kind), kind);
    }
    return fault(excerpt(text) + " is not " + with_article(kind)
                     + ": it does not begin with a number",
                 example_help(kind),
                 kind);
}

QuantityError out_of_range(Kind kind) {
    return fault("the number is too large or too small to compute with", example_help(kind), kind);
}

QuantityError missing_unit(std::string_view number, Kind kind) {
    if (number.ends_with('.')) {
        number.remove_suffix(1);
    }
    const std::string message = with_article(kind) + " needs a unit";
    const auto scan = number_text::scan(number);
    const double value = number_text::value(scan.number);
    const bool share = kind == Kind::fraction || kind == Kind::moisture;
    if (share && value > 0.0 && value < 1.0) {
        return fault(message, write_help(joined(format_number(value * 100.0, 12), "%")), kind);
    }
    return fault(message, units_help(number, kind), kind);
}

QuantityError
bad_unit(std::string_view text, std::string_view number, std::string_view unit, Kind kind) {
    if (number_text::is_digit(unit.front())) {
        return blank_in_number(text, number, unit, kind);
    }
    if (const std::string_view number_behind = number_with_comma(unit); !number_behind.empty()) {
        return separated_number(text, number_behind, kind);
    }
    const bool other_base = number == "0" && (unit.front() == 'x' || unit.front() == 'X');
    if (other_base) {
        return fault("numbers are read in decimal form only", example_help(kind), kind);
    }
    const auto other = kind_of_unit(unit);
    if (kind == Kind::number) {
        return fault("a plain number takes no unit", write_help(number), kind);
    }
    if (other == Kind::energy && kind == Kind::power) {
        // A heater is sold by the Btu, and the hour is understood.
        const bool metric = unit.front() == 'k' || unit.front() == 'K';
        return fault(excerpt(text) + " is an energy, but a power is due",
                     write_help(joined(number, metric ? "kW" : "Btu/h")),
                     kind);
    }
    if (other) {
        return fault(excerpt(text) + " is " + with_article(*other) + ", but " + with_article(kind)
                         + " is due",
                     example_help(kind),
                     kind);
    }
    const std::string message = excerpt(unit) + " is not a unit of " + std::string(name(kind));
    if (const auto nearest = nearest_unit(unit, kind)) {
        return fault(message, "did you mean " + quoted(joined(number, *nearest)) + '?', kind);
    }
    // "3 ft foo": another unit behind the first number would change what it says.
    const bool one_word = unit.find(' ') == std::string_view::npos;
    return fault(message, one_word ? units_help(number, kind) : example_help(kind), kind);
}

QuantityError below_absolute_zero(Kind kind) {
    return fault("the temperature lies below absolute zero", example_help(kind), kind);
}

QuantityError not_on_dry_basis(Kind kind) {
    return fault("a moisture content on the dry basis is not below zero", example_help(kind), kind);
}

QuantityError rise_in_degrees(std::string_view number, Kind kind) {
    return fault("a rise over 12 is no part of a degree", write_help(number), kind);
}

QuantityError tolerance_not_positive(std::string_view value, Kind kind) {
    return fault("a tolerance must be greater than zero",
                 "leave it out for an exact value: " + quoted(value),
                 kind);
}

QuantityError tolerance_without_unit(std::string_view text, std::string_view unit, Kind kind) {
    return fault("the tolerance needs a unit", write_help(joined(text, unit)), kind);
}

QuantityError tolerance_unit(std::string_view text, std::string_view unit, Kind kind) {
    const Kind due = kind == Kind::temperature ? Kind::temperature_difference : kind;
    QuantityError result = fault("the tolerance in " + excerpt(text) + " is not "
                                     + with_article(due) + ": " + excerpt(unit),
                                 example_help(due),
                                 due);
    result.help = "write it as " + with_article(due) + ", for example " + quoted(example(due));
    if (kind != Kind::temperature) {
        result.help += ", or in %";
    }
    return result;
}

} // namespace fluewright::quantity_fault
