#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/text_columns.hpp"
#include "io/text/words.hpp"

#include <fmt/core.h>

namespace fluewright::report {
namespace {

constexpr std::size_t inset = 2;

/// The stations of a state, the collar's far end left out: it has no length, so that is the outlet
/// over again.
TextTable stations_table(const results::StateRow& state, const Style& style) {
    const results::TextColumns<results::StationRow> columns({"place",
                                                             "height_m",
                                                             "gas_temperature_k",
                                                             "inner_wall_k",
                                                             "outer_wall_k",
                                                             "velocity_m_s",
                                                             "pressure_in_zone_pa",
                                                             "leak_words"},
                                                            style,
                                                            "");
    std::vector<TableColumn> headings;
    columns.add_headings(headings);
    TextTable table(std::move(headings));
    for (const results::StationRow& row : results::stations_of(state)) {
        if (row.at == 1 && state.state.stations.size() > 2) {
            continue;
        }
        std::vector<TableCell> cells;
        columns.add_cells(row, cells);
        cells.back().ink = row.station().pressure_in_zone_pa > 0.0 ? Ink::warning : Ink::plain;
        table.add(std::move(cells));
    }
    return table;
}

} // namespace

std::string profile_text(const Assessment& a, std::size_t state_index, const Style& style) {
    const StateResult& state = a.solution.states[state_index];
    if (state.stations.empty() || !has_working_point(state)) {
        return {};
    }
    const results::StateRow row{a.installation, state, a.verdicts[state_index]};
    std::string out = heading("Along the run: " + state_words(a.installation, state), style);
    const MarchResult& flow = state.flow;
    const auto shown = [&](double pa) { return format_quantity(pa, Kind::pressure, style.units); };
    out += stations_table(row, style).text(style, inset);
    out += joints_text(row, style);
    return out
           + paragraph(fmt::format("Budget: buoyancy {}, friction {}, fittings {}, acceleration "
                                   "{}. Heat lost through the walls {}.",
                                   shown(flow.buoyancy_pa),
                                   shown(flow.friction_pa),
                                   shown(flow.fittings_pa),
                                   shown(flow.acceleration_pa),
                                   format_quantity(flow.heat_loss_w, Kind::power, style.units)),
                       {.first = inset, .rest = 2 * inset},
                       style.width);
}

std::string profiles_text(const Assessment& a, const Style& style) {
    std::string out;
    for (std::size_t i = 0; i < a.solution.states.size(); ++i) {
        out += profile_text(a, i, style);
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
