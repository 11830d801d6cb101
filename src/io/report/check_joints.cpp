#include "check_parts.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/text_columns.hpp"

namespace fluewright::report {

std::string joints_text(const results::StateRow& state, const Style& style) {
    constexpr std::size_t joints_inset = 2;
    const results::TextColumns<results::JointRow> columns(
        {"place", "height_m", "pressure_in_zone_pa", "leak_kg_s", "leak_words"}, style);
    std::vector<TableColumn> headings;
    columns.add_headings(headings);
    TextTable table(std::move(headings));
    for (const results::JointRow& row : results::joints_of(state)) {
        std::vector<TableCell> cells;
        columns.add_cells(row, cells);
        cells.back().ink = row.joint.pressure_pa > 0.0 ? Ink::warning : Ink::plain;
        table.add(std::move(cells));
    }
    return '\n' + table.text(style, joints_inset);
}

} // namespace fluewright::report
