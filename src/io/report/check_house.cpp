#include "check_parts.hpp"

#include <fmt/core.h>

namespace fluewright::report {

std::string turning_words(const Assessment& a, const ColdStart& cold, const Style& style) {
    if (cold.turning_k <= 0.0) {
        return " No heat in this run would turn it.";
    }
    if (cold.takes_too_long()) {
        return " No warming of the flue turns it.";
    }
    constexpr double least_s = 0.5; // less would be told as 0 s
    if (cold.duration_s < least_s) {
        return {};
    }
    const auto shown = [&](double si, Kind kind) { return quantity(si, kind, style); };
    return fmt::format(" It draws again once the air in it averages {}; with {} of heat below it "
                       "that takes at least {} (estimate: no heat lost through the wall).",
                       shown(cold.turning_k, Kind::temperature),
                       shown(a.installation.kindling.preheat_w, Kind::power),
                       shown(cold.duration_s, Kind::duration));
}

std::string room_words(const Assessment& a, std::size_t weather, const Style& style) {
    std::string text = "Room against outdoors, by the air balance of the house:";
    std::string_view separator = " ";
    for (const StateResult& state : a.solution.states) {
        if (state.weather != weather || state.kind == StateKind::cold_start) {
            continue;
        }
        text += fmt::format("{}{} {}",
                            separator,
                            name(state.kind),
                            signed_quantity(state.room.pressure_pa, Kind::pressure, style));
        separator = "; ";
    }
    return text + '.';
}

} // namespace fluewright::report
