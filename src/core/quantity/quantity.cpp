#include "fluewright/core/quantity/quantity.hpp"

#include "number_text.hpp"
#include "quantity_fault.hpp"
#include "rise_in_twelve.hpp"
#include "unit_table.hpp"

#include <cmath>
#include <optional>

namespace fluewright {
namespace {

using number_text::Problem;
using number_text::Scan;
using number_text::trimmed;
using unit_table::Family;
using unit_table::Unit;
using unit_table::UnitText;

using Parsed = Result<Quantity, QuantityError>;

struct Parts {
    std::string_view value;
    std::optional<std::string_view> tolerance; ///< what stands behind the ± sign
};

Parts split_at_tolerance(std::string_view text) {
    constexpr std::string_view sign = "\u00B1";
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '+' && text[i] != sign.front()) {
            continue;
        }
        const std::string_view here = text.substr(i);
        std::size_t length = 0;
        if (here.starts_with(sign) || here.starts_with("+-")) {
            length = 2;
        } else if (here.starts_with("+/-")) {
            length = 3;
        }
        if (length > 0) {
            return {trimmed(text.substr(0, i)), trimmed(here.substr(length))};
        }
    }
    return {text, std::nullopt};
}

void note_system(const Unit& unit, Quantity& quantity) {
    quantity.us_units = quantity.us_units || unit.family == Family::us;
    quantity.metric_units = quantity.metric_units || unit.family == Family::metric;
    quantity.basis_stated = quantity.basis_stated || unit.basis_stated;
}

// The first part of "ft 4 1/2 in": what stands before the next number. Builders put a hyphen there.
std::string_view leading_unit(std::string_view text) {
    std::size_t end = 0;
    while (end < text.size() && !number_text::begins_number(text.substr(end))) {
        ++end;
    }
    std::string_view unit = text.substr(0, end);
    if (unit.ends_with('-') && end < text.size()) {
        unit.remove_suffix(1);
    }
    return trimmed(unit);
}

/// Falling units: "3 ft 4 1/2 in", "1 h 30 min".
struct FallingUnits {
    double si = 0.0;
    const Unit* smallest = nullptr;
};

std::optional<FallingUnits>
read_falling_units(const Scan& first, std::string_view rest, Kind kind) {
    std::string_view word = leading_unit(rest);
    const Unit* unit = unit_table::find(UnitText(word), kind);
    if (unit == nullptr || word.size() == rest.size()) {
        return std::nullopt;
    }
    const double sign = first.number.negative ? -1.0 : 1.0;
    FallingUnits result{unit_table::scaled(number_text::value(first.number, unit->power), *unit),
                        unit};
    while (word.size() < rest.size()) {
        if (unit->followed_by.empty()) {
            return std::nullopt;
        }
        std::string_view next = number_text::without_leading_blanks(rest.substr(word.size()));
        if (next.starts_with('-')) {
            next.remove_prefix(1);
        }
        const Scan scan = number_text::scan(next);
        if (scan.problem != Problem::none || !number_text::begins_number(next)) {
            return std::nullopt;
        }
        rest = trimmed(scan.rest);
        word = leading_unit(rest);
        const Unit* smaller = unit_table::find(UnitText(word), kind);
        if (smaller == nullptr || smaller->symbol != unit->followed_by) {
            return std::nullopt;
        }
        unit = smaller;
        result.si += sign * unit_table::scaled(number_text::value(scan.number, unit->power), *unit);
        result.smallest = unit;
    }
    return result;
}

bool is_percent(std::string_view unit) {
    return unit == "%" || unit == "percent";
}

struct Context {
    std::string_view text; ///< the whole text, trimmed
    Kind kind;
};

// Reads what stands behind ± and completes the quantity; `unit` is that of the value.
Parsed
with_tolerance(const Context& context, const Parts& parts, const Unit& unit, Quantity quantity) {
    const auto [text, kind] = context;
    const Scan scan = number_text::scan(*parts.tolerance);
    if (scan.problem != Problem::none) {
        return Failure{quantity_fault::bad_number(text, *parts.tolerance, scan.problem, kind)};
    }
    const std::string_view unit_text = trimmed(scan.rest);
    if (unit_text.empty() && !unit.symbol.empty()) {
        return Failure{quantity_fault::tolerance_without_unit(text, unit.symbol, kind)};
    }
    const Unit* own = unit.symbol.empty() && unit_text.empty()
                          ? &unit
                          : unit_table::find(UnitText(unit_text), tolerance_kind(kind));
    if (own != nullptr) {
        note_system(*own, quantity);
        // "22 % dry ± 2 %": points on the basis that the value has.
        const Unit& scale = kind == Kind::moisture && !own->basis_stated ? unit : *own;
        quantity.tolerance = unit_table::scaled(number_text::value(scan.number, scale.power), scale)
                             * unit_table::steepness(quantity.value, scale);
    } else if (is_percent(unit_text) && kind != Kind::temperature) {
        quantity.tolerance = number_text::value(scan.number, -2) * std::abs(quantity.value);
    } else if (const auto falling = read_falling_units(scan, unit_text, kind)) {
        quantity.tolerance = falling->si;
        note_system(*falling->smallest, quantity);
    } else {
        return Failure{quantity_fault::tolerance_unit(text, unit_text, kind)};
    }
    if (!std::isfinite(quantity.tolerance)) {
        return Failure{quantity_fault::out_of_range(kind)};
    }
    if (!(quantity.tolerance > 0.0)) {
        return Failure{quantity_fault::tolerance_not_positive(parts.value, kind)};
    }
    return quantity;
}

// The value without its tolerance, in SI; `unit` is already known.
Parsed converted(const Scan& scan, const Unit& unit, Kind kind) {
    const double amount = number_text::value(scan.number, unit.power);
    if (!std::isfinite(amount)) {
        return Failure{quantity_fault::out_of_range(kind)};
    }
    if (unit.scale == unit_table::Scale::dry_basis && amount < 0.0) {
        return Failure{quantity_fault::not_on_dry_basis(kind)};
    }
    Quantity quantity;
    quantity.value = unit_table::to_si(amount, unit);
    if (!std::isfinite(quantity.value)) {
        return Failure{quantity_fault::out_of_range(kind)};
    }
    if (kind == Kind::temperature && quantity.value < 0.0) {
        return Failure{quantity_fault::below_absolute_zero(kind)};
    }
    note_system(unit, quantity);
    return quantity;
}

// "R13", "R-13", "R 13": how insulation is sold in the US.
std::optional<std::string_view> behind_leading_r(std::string_view text) {
    if (text.empty() || (text.front() != 'R' && text.front() != 'r')) {
        return std::nullopt;
    }
    text = number_text::without_leading_blanks(text.substr(1));
    if (text.starts_with('-')) {
        text.remove_prefix(1);
    }
    if (!number_text::begins_number(text)) {
        return std::nullopt;
    }
    return text;
}

// The unit behind the first number: as typed, or borrowed from the tolerance in "4.2 ± 0.1 m".
const Unit* unit_of_value(std::string_view typed, const Parts& parts, Kind kind) {
    if (typed.empty() && (kind == Kind::number || !parts.tolerance)) {
        return unit_table::by_symbol("", kind);
    }
    const std::string_view source =
        typed.empty() ? trimmed(number_text::scan(*parts.tolerance).rest) : typed;
    const Unit* unit = unit_table::find(UnitText(source), kind);
    if (kind == Kind::moisture && unit != nullptr && !unit->basis_stated && parts.tolerance) {
        // "18 % ± 2 % dry": the basis named at the end holds for both.
        const std::string_view last = trimmed(number_text::scan(*parts.tolerance).rest);
        const Unit* stated = unit_table::find(UnitText(last), kind);
        unit = stated != nullptr ? stated : unit;
    }
    return unit;
}

} // namespace

Kind tolerance_kind(Kind kind) {
    return kind == Kind::temperature ? Kind::temperature_difference : kind;
}

Result<Quantity, QuantityError> parse_quantity(std::string_view typed, Kind kind) {
    const std::string_view text = trimmed(typed);
    if (text.empty()) {
        return Failure{quantity_fault::empty(kind)};
    }
    if (const auto rise = kind == Kind::angle ? rise_in_twelve(text) : std::nullopt) {
        constexpr double run = 12.0;
        return Quantity{.value = std::atan2(*rise, run), .us_units = true};
    }
    const Parts parts = split_at_tolerance(text);
    const auto r_value =
        kind == Kind::thermal_resistance ? behind_leading_r(parts.value) : std::nullopt;
    const Scan scan = number_text::scan(r_value.value_or(parts.value));
    if (scan.problem != Problem::none) {
        return Failure{quantity_fault::bad_number(text, parts.value, scan.problem, kind)};
    }
    std::string_view unit_text = trimmed(scan.rest);
    if (r_value && unit_text.empty()) {
        unit_text = "R";
    }
    const std::string_view number =
        trimmed(parts.value.substr(0, parts.value.size() - scan.rest.size()));

    if (kind == Kind::angle && rise_in_twelve(number)) {
        return Failure{quantity_fault::rise_in_degrees(number, kind)};
    }
    const Unit* unit = unit_of_value(unit_text, parts, kind);
    Quantity quantity;
    if (unit != nullptr) {
        Parsed value = converted(scan, *unit, kind);
        if (!value) {
            return value;
        }
        quantity = *value;
    } else if (const auto falling = read_falling_units(scan, unit_text, kind)) {
        unit = falling->smallest;
        quantity.value = falling->si;
        if (!std::isfinite(quantity.value)) {
            return Failure{quantity_fault::out_of_range(kind)};
        }
        note_system(*unit, quantity);
    } else if (unit_text.empty()) {
        return Failure{quantity_fault::missing_unit(number, kind)};
    } else {
        return Failure{quantity_fault::bad_unit(text, number, unit_text, kind)};
    }
    if (!parts.tolerance) {
        return quantity;
    }
    return with_tolerance({text, kind}, parts, *unit, quantity);
}

} // namespace fluewright
