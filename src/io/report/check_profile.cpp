#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/text/words.hpp"

#include <fmt/core.h>

namespace fluewright::report {
namespace {

constexpr std::size_t inset = 2;

void add_station(TextTable& table,
                 const Assessment& a,
                 const StateResult& state,
                 std::size_t index,
                 const Style& style) {
    const Station& station = state.stations[index];
    const double pressure_pa = station.pressure_in_zone_pa;
    const bool has_wall = has_wall_temperature(a.installation, state, index);
    const auto wall = [&](double kelvin) {
        return TableCell{has_wall ? bare_number(kelvin, Kind::temperature, style) : ""};
    };
    const bool mouth = index + 1 == state.stations.size();
    table.add({{index == 0 ? "outlet" : section_words(a.installation, station.section)},
               {quantity(station.height_m, Kind::length, style)},
               {bare_number(station.gas_temperature_k, Kind::temperature, style)},
               wall(station.inner_wall_k),
               wall(station.outer_wall_k),
               {bare_number(station.velocity_m_s, Kind::speed, style)},
               {signed_number(pressure_pa, Kind::pressure, style)},
               {mouth ? "" : std::string{leak_words(pressure_pa, state.kind)},
                pressure_pa > 0.0 ? Ink::warning : Ink::plain}});
}

} // namespace

std::string profiles_text(const Assessment& a, const Style& style) {
    std::string out;
    for (const StateResult& state : a.solution.states) {
        if (state.stations.empty()) {
            continue;
        }
        TextTable table(
            {{.heading = "up to and with"},
             {.heading = "height", .align = Align::right},
             {.heading = with_unit("gas", Kind::temperature, style), .align = Align::decimal},
             {.heading = with_unit("inside", Kind::temperature, style), .align = Align::decimal},
             {.heading = with_unit("outside", Kind::temperature, style), .align = Align::decimal},
             {.heading = with_unit("speed", Kind::speed, style), .align = Align::decimal},
             {.heading = with_unit("pressure", Kind::pressure, style), .align = Align::decimal},
             {.heading = "a leak here"}});
        for (std::size_t i = 0; i < state.stations.size(); ++i) {
            // The collar has no length, so its far end is the outlet over again.
            if (i != 1 || state.stations.size() == 2) {
                add_station(table, a, state, i, style);
            }
        }
        out += heading("Along the run: " + state_words(a.installation, state), style);
        const MarchResult& flow = state.flow;
        const auto shown = [&](double pa) {
            return format_quantity(pa, Kind::pressure, style.units);
        };
        out += table.text(style, inset);
        out += joints_text(a.installation, state, style);
        out += paragraph(fmt::format("Budget: buoyancy {}, friction {}, fittings {}, acceleration "
                                     "{}. Heat lost through the walls {}.",
                                     shown(flow.buoyancy_pa),
                                     shown(flow.friction_pa),
                                     shown(flow.fittings_pa),
                                     shown(flow.acceleration_pa),
                                     format_quantity(flow.heat_loss_w, Kind::power, style.units)),
                         {.first = inset, .rest = 2 * inset},
                         style.width);
    }
    if (!out.empty()) {
        out += '\n';
        out += paragraph("Pressure: in the flue less the air round the part. Inside and outside: "
                         "the faces of the wall.",
                         {.first = inset, .rest = inset},
                         style.width);
    }
    return out;
}

} // namespace fluewright::report
