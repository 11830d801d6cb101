#include "likely_unit.hpp"

#include "fluewright/model/fields/range.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <limits>
#include <vector>

namespace fluewright::json {
namespace {

/// How far a value lies outside of what is usual round the example of its row. Within five times of
/// it, up or down, none is likelier than another; temperatures go by their distance.
double unusualness(const Quantity& read, const FieldInfo& field) {
    const auto usual = parse_quantity(field.example, field.kind);
    if (!usual) {
        return 0.0;
    }
    if (field.kind == Kind::temperature) {
        constexpr double room_k = 293.15;
        constexpr double least_k = 10.0;
        const double usual_k = std::max(least_k, 0.5 * std::abs(usual->value - room_k));
        return std::max(0.0, std::abs(read.value - usual->value) / usual_k - 1.0);
    }
    constexpr double usual_times = 5.0;
    const bool comparable = usual->value > 0.0 && read.value > 0.0;
    const double ratio = comparable ? read.value / usual->value : 1.0;
    return std::max(0.0, std::abs(std::log(ratio)) - std::log(usual_times));
}

/// The units that the trade gives a key in, that of its example first: nobody gives a chimney in
/// centimeters or a draft in hectopascals.
std::vector<std::string_view> trade_units(const FieldInfo& field) {
    const auto unit_at = std::min(field.example.find(' '), field.example.size() - 1);
    std::vector<std::string_view> units{field.example.substr(unit_at + 1)};
    if (field.kind == Kind::length && units.front() != "mm") {
        units.insert(units.end(), {"ft", "mm", "in"});
    } else if (field.kind == Kind::length) {
        units.insert(units.end(), {"in", "m", "ft"});
    }
    const auto usual = usual_units(field.kind);
    units.insert(units.end(), usual.begin(), usual.end());
    return units;
}

std::string likeliest(const std::vector<std::string_view>& units,
                      std::string_view digits,
                      const FieldInfo& field,
                      std::optional<UnitSystem> system) {
    constexpr double other_system = 1.5;
    std::string best;
    double least = std::numeric_limits<double>::infinity();
    for (const auto unit : units) {
        auto spelling = fmt::format("{} {}", digits, unit);
        const auto read = parse_quantity(spelling, field.kind);
        if (digits.empty() || !read || !is_in_range(read->value, field)) {
            continue;
        }
        const bool others =
            system && (*system == UnitSystem::us ? read->metric_units : read->us_units);
        const double unlike = unusualness(*read, field) + (others ? other_system : 0.0);
        if (unlike < least) {
            least = unlike;
            best = std::move(spelling);
        }
    }
    return best;
}

/// A temperature in the degrees that `spelling` is not in; empty where that would be unusual.
std::string
other_degrees(std::string_view spelling, std::string_view digits, const FieldInfo& field) {
    constexpr double most_unusual = 1.5;
    if (field.kind != Kind::temperature || spelling.empty()) {
        return {};
    }
    auto other = fmt::format("{} {}", digits, spelling.ends_with("degC") ? "degF" : "degC");
    const auto read = parse_quantity(other, field.kind);
    return read && is_in_range(read->value, field) && unusualness(*read, field) <= most_unusual
               ? other
               : std::string{};
}

} // namespace

std::optional<UnitSystem> most_used_units(const Document& document) {
    int us = 0;
    int metric = 0;
    for (std::uint32_t i = 0; i < document.size(); ++i) {
        const Node& node = document.at(i);
        if (node.type != Type::string || node.text.empty()
            || node.text.find_first_of("0123456789") == std::string_view::npos) {
            continue;
        }
        for (const Kind kind : all_kinds()) {
            if (const auto read = parse_quantity(node.text, kind)) {
                us += read->us_units ? 1 : 0;
                metric += read->metric_units ? 1 : 0;
                break;
            }
        }
    }
    return us == metric  ? std::nullopt
           : us > metric ? std::optional{UnitSystem::us}
                         : std::optional{UnitSystem::metric};
}

std::string_view digits_of(std::string_view text) {
    const auto end = text.find_first_not_of("+-.0123456789");
    const auto digits = text.substr(0, end);
    const auto rest = end == std::string_view::npos ? std::string_view{} : text.substr(end);
    return rest.find_first_of("0123456789") == std::string_view::npos ? digits : std::string_view{};
}

std::string spelling_in_range(std::string_view digits,
                              const FieldInfo& field,
                              std::optional<UnitSystem> system) {
    auto best = likeliest(trade_units(field), digits, field, system);
    return best.empty() ? likeliest(unit_symbols(field.kind), digits, field, system) : best;
}

std::string spellings_of_bare(std::string_view digits,
                              const FieldInfo& field,
                              std::optional<UnitSystem> system) {
    const bool share = field.kind == Kind::fraction || field.kind == Kind::moisture;
    const auto read = parse_quantity(digits, Kind::number);
    if (share && read && read->value > 0.0 && read->value < 1.0) {
        constexpr double percent = 100.0;
        return fmt::format("\"{} %\"", format_number(read->value * percent, 12));
    }
    const std::string likeliest = spelling_in_range(digits, field, system);
    const std::string other = other_degrees(likeliest, digits, field);
    return likeliest.empty() ? std::string{}
           : other.empty()   ? fmt::format("\"{}\"", likeliest)
                             : fmt::format("\"{}\" or \"{}\"", likeliest, other);
}

} // namespace fluewright::json
