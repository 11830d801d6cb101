#include "fluewright/core/quantity/quantity.hpp"
#include "unit_table.hpp"

#include <array>
#include <cstddef>

namespace fluewright {
namespace {

constexpr std::size_t kind_count = static_cast<std::size_t>(Kind::number) + 1;

constexpr std::array<Kind, kind_count> kinds_in_order = [] {
    std::array<Kind, kind_count> result{};
    for (std::size_t i = 0; i < kind_count; ++i) {
        result[i] = static_cast<Kind>(i);
    }
    return result;
}();

} // namespace

std::span<const Kind> all_kinds() {
    return kinds_in_order;
}

std::string_view name(Kind kind) {
    return unit_table::facts(kind).name;
}

std::string_view si_unit(Kind kind) {
    return unit_table::facts(kind).si_unit;
}

std::string_view json_suffix(Kind kind) {
    return unit_table::facts(kind).json_suffix;
}

std::string_view example(Kind kind) {
    return unit_table::facts(kind).example;
}

std::vector<std::string_view> unit_symbols(Kind kind) {
    std::vector<std::string_view> result;
    for (const unit_table::Unit& unit : unit_table::units(kind)) {
        if (!unit.symbol.empty()) {
            result.push_back(unit.symbol);
        }
    }
    return result;
}

std::string accepted_units(Kind kind) {
    std::string result;
    for (const std::string_view symbol : unit_symbols(kind)) {
        result += result.empty() ? "" : ", ";
        result += symbol;
    }
    return result.empty() ? "a number without a unit" : result;
}

std::array<std::string_view, 2> usual_units(Kind kind) {
    return unit_table::facts(kind).help_units;
}

std::string_view customary_unit(Kind kind, UnitSystem system) {
    const auto& facts = unit_table::facts(kind);
    return system == UnitSystem::us ? facts.shown_us.front().unit : facts.shown_metric.front().unit;
}

} // namespace fluewright
