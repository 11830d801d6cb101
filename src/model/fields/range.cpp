#include "fluewright/model/fields/range.hpp"

#include <cmath>
#include <fmt/core.h>

namespace fluewright {

bool is_in_range(double value, const FieldInfo& field) {
    const double slack = 1e-12 * (std::abs(field.lowest) + std::abs(field.highest));
    const bool low = field.above_lowest ? value > field.lowest : value >= field.lowest - slack;
    return low && value <= field.highest + slack;
}

bool is_whole_enough(double value, const FieldInfo& field) {
    return !field.whole || value == std::floor(value);
}

std::string not_whole_words(const FieldInfo& field) {
    return fmt::format("`{}` is not a whole number", field.key);
}

std::string value_in_words(double value, const FieldInfo& field, UnitSystem system) {
    if (value == 0.0 && system == UnitSystem::metric) {
        const auto unit = field.example.substr(field.example.find(' ') + 1);
        for (const auto symbol : unit_symbols(field.kind)) {
            if (symbol == unit) {
                return format_in_unit(value, field.kind, unit);
            }
        }
    }
    return format_quantity(value, field.kind, system);
}

std::string range_in_words(const FieldInfo& field, UnitSystem system) {
    const auto low = value_in_words(field.lowest, field, system);
    const auto high = value_in_words(field.highest, field, system);
    return field.above_lowest ? fmt::format("above {} and up to {}", low, high)
                              : fmt::format("{} to {}", low, high);
}

std::string out_of_range_words(const FieldInfo& field, UnitSystem system) {
    return fmt::format("`{}` is {}{}",
                       field.key,
                       field.above_lowest ? "not " : "outside ",
                       range_in_words(field, system));
}

std::string allowed_words(const FieldInfo& field, UnitSystem system) {
    return fmt::format("{} ({})", range_in_words(field, system), field.limit_reason);
}

} // namespace fluewright
