#include "fluewright/core/quantity/one_system.hpp"

#include "unit_table.hpp"

#include <algorithm>
#include <optional>

namespace fluewright {
namespace {

constexpr std::string_view word_ends = " ,;:(\"";

std::string_view last_word(std::string_view text) {
    const auto end = text.find_last_of(word_ends);
    return end == text.npos ? text : text.substr(end + 1);
}

bool is_figure(std::string_view word) {
    return !word.empty() && word.find_first_not_of("0123456789./") == word.npos;
}

/// The system whose unit a word is.
std::optional<UnitSystem> system_of(std::string_view unit) {
    for (const Kind kind : {Kind::length, Kind::temperature, Kind::pressure, Kind::area}) {
        if (const auto* row = unit_table::by_symbol(unit, kind)) {
            switch (row->family) {
            case unit_table::Family::us:
                return UnitSystem::us;
            case unit_table::Family::metric:
                return UnitSystem::metric;
            case unit_table::Family::neither:
                break;
            }
        }
    }
    return std::nullopt;
}

/// "2 ft", "93 to 127 degC" at the end of a text; empty where it does not end so.
std::string_view quantity_at_end(std::string_view text) {
    const std::string_view unit = last_word(text);
    if (unit.size() == text.size() || text[text.size() - unit.size() - 1] != ' '
        || !system_of(unit)) {
        return {};
    }
    std::size_t begin = text.size() - unit.size() - 1;
    const std::string_view figure = last_word(text.substr(0, begin));
    if (!is_figure(figure)) {
        return {};
    }
    begin -= figure.size();
    constexpr std::string_view up_to = " to ";
    const std::string_view before = text.substr(0, begin);
    if (before.ends_with(up_to)) {
        const std::string_view least = last_word(before.substr(0, before.size() - up_to.size()));
        begin -= is_figure(least) ? up_to.size() + least.size() : 0;
    }
    return text.substr(begin);
}

} // namespace

std::string in_one_system(std::string_view text, UnitSystem system) {
    std::string made;
    for (auto open = text.find(" ("); open != text.npos; open = text.find(" (")) {
        const auto close = text.find(')', open);
        const std::string_view first = quantity_at_end(text.substr(0, open));
        const std::string_view inner =
            close == text.npos ? std::string_view{} : text.substr(open + 2, close - open - 2);
        const std::string_view second = quantity_at_end(inner);
        const auto first_system = system_of(last_word(first));
        const auto second_system = system_of(last_word(second));
        const bool pair = first_system && second_system && first_system != second_system
                          && second.size() == inner.size();
        if (!pair) {
            made += text.substr(0, open + 2);
            text.remove_prefix(open + 2);
            continue;
        }
        made += text.substr(0, open - first.size());
        made += first_system == system ? first : second;
        text.remove_prefix(close + 1);
    }
    return made.append(text);
}

} // namespace fluewright
