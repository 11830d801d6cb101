#include "score_text.hpp"

#include "check_parts.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/text_columns.hpp"
#include "io/text/words.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::report {
namespace {

using Figures = results::TextColumns<results::StateRow>;

/// The figures of a state besides its margin.
Figures figures_of(StateKind kind, const Style& style) {
    return kind == StateKind::high_fire
               ? Figures({"top_temperature_k", "top_velocity_m_s"}, style, "")
               : Figures({"top_temperature_k"}, style, "");
}

std::vector<TableColumn>
state_columns(const Case& shape, const Score& score, std::size_t weather, const Style& style) {
    std::vector<TableColumn> columns;
    for (const StateResult& state : score.states) {
        if (state.weather != weather) {
            continue;
        }
        if (is_door_open(state.kind)) {
            columns.push_back({.heading = !has_open_front(shape.appliance) ? "door may\nbe opened"
                                          : state.kind == StateKind::door_open_high
                                              ? "smoke held\nhigh fire"
                                              : "smoke held\nembers",
                               .align = Align::decimal});
            continue;
        }
        TableColumn margin =
            results::text_column(results::column_of<results::StateRow>("margin_pa").info(), style);
        margin.heading = std::string{name(state.kind)} + '\n' + margin.heading;
        columns.push_back(std::move(margin));
        figures_of(state.kind, style).add_headings(columns);
    }
    return columns;
}

void add_states(std::vector<TableCell>& cells,
                const Case& shape,
                const Score& score,
                std::size_t weather,
                const Style& style) {
    const auto& margin = results::column_of<results::StateRow>("margin_pa");
    for (const results::StateRow& row : results::state_rows(shape, score)) {
        const StateResult& state = row.state;
        if (state.weather != weather) {
            continue;
        }
        const bool passes = row.verdict.passes;
        const Ink ink = passes ? Ink::plain : Ink::bad;
        const std::string mark = passes ? "" : " !";
        if (row.is_door()) {
            cells.push_back({opening_share_words(shape, state.door.opening_share) + mark, ink});
            continue;
        }
        const std::string figure =
            results::text_cell(margin.info(), margin.get(row), style, "none");
        cells.push_back({row.is_solved() ? figure + mark : "none !", ink});
        figures_of(state.kind, style).add_cells(row, cells);
    }
}

} // namespace

std::string score_tables(const Case& shape,
                         const std::vector<TableColumn>& front,
                         const std::vector<ScoredRow>& rows,
                         const Style& style) {
    std::string out;
    if (rows.empty()) {
        return out;
    }
    for (std::size_t weather = 0; weather < shape.weathers.size(); ++weather) {
        out += heading(shape.weathers[weather].name, style);
        std::vector<TableColumn> columns = front;
        const auto states = state_columns(shape, *rows.front().score, weather, style);
        columns.insert(columns.end(), states.begin(), states.end());
        TextTable table(std::move(columns));
        for (const ScoredRow& row : rows) {
            std::vector<TableCell> cells = row.cells;
            add_states(cells, shape, *row.score, weather, style);
            table.add(std::move(cells));
        }
        out += table.text(style, 2);
    }
    return out;
}

std::string score_legend(const Case& shape, const Style& style) {
    std::string words = "! short. Margin: draft less the required draft. Top: gas at the chimney "
                        "top, and its speed at high fire.";
    if (shape.appliance.has_door) {
        words += (has_open_front(shape.appliance)
                      ? std::string{" Smoke held: over how much of the opening; "}
                      : std::string{" Door: how far it may be opened without smoke; "})
                 + format_quantity(door_wanted(shape), Kind::fraction, style.units)
                 + " is required.";
    }
    return paragraph(words, hung_in, style.width);
}

} // namespace fluewright::report
