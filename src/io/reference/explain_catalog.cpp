#include "explain_pages.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <fmt/core.h>

namespace fluewright::explaining {
namespace {

/// "a|b" as "a, b".
std::string unparted(std::string_view parted, std::string_view between = ", ") {
    std::string list;
    for (const char c : parted) {
        list += c == '|' ? std::string{between} : std::string{c};
    }
    return list;
}

std::string also_called(std::string_view aliases, const Style& style) {
    return aliases.empty() ? "" : section("Also called", unparted(aliases) + '.', style);
}

std::string note_of(std::string_view note, const Style& style) {
    return note.empty() ? "" : section("Note", note, style);
}

} // namespace

std::string wall_page(std::string_view id, const Style& style) {
    const catalog::Wall& wall = *catalog::find_wall(id);
    std::string out = title_line(fmt::format("{}: a wall of pipe or chimney", id), style);
    out += section("Layers from the inside, mm", unparted(wall.layers, "; ") + '.', style);
    out +=
        section("Continuous rating",
                wall.rated_gas_temperature_k > 0.0
                    ? format_quantity(wall.rated_gas_temperature_k, Kind::temperature, style.units)
                          + " of the gas."
                    : fmt::format("None: {}.", wall.unrated_because),
                style);
    if (!wall.fuels.empty()) {
        out += section("For", unparted(wall.fuels) + " alone.", style);
    }
    out += also_called(wall.aliases, style);
    out += note_of(wall.note, style);
    out += section("Source", source_words(wall.source, wall.mark), style);
    return in_letters_of(style, out);
}

std::string fuel_page(std::string_view id, const Style& style) {
    const catalog::Fuel& fuel = *catalog::find_fuel(id);
    std::string out = title_line(fmt::format("{}: a fuel", id), style);
    out +=
        section("Heating value",
                format_quantity(fuel.gross_heating_value_dry_j_kg, Kind::heating_value, style.units)
                    + " gross, dry.",
                style);
    out += section("Moisture where the file does not say",
                   format_quantity(fuel.default_moisture, Kind::moisture, style.units) + '.',
                   style);
    out += also_called(fuel.aliases, style);
    out += note_of(fuel.note, style);
    out += section("Source", source_words(fuel.source, fuel.mark), style);
    return in_letters_of(style, out);
}

} // namespace fluewright::explaining
