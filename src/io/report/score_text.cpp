#include "score_text.hpp"

#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "io/text/words.hpp"

#include <algorithm>
#include <cmath>

namespace fluewright::report {
namespace {

std::vector<TableColumn>
state_columns(const Score& score, std::size_t weather, const Style& style) {
    std::vector<TableColumn> columns;
    for (const StateResult& state : score.states) {
        if (state.weather != weather) {
            continue;
        }
        if (is_door_open(state.kind)) {
            columns.push_back({.heading = "door may\nbe opened", .align = Align::decimal});
            continue;
        }
        columns.push_back({.heading = with_unit(
                               std::string{name(state.kind)} + "\nmargin", Kind::pressure, style),
                           .align = Align::decimal});
        columns.push_back(
            {.heading = with_unit("mouth", Kind::temperature, style), .align = Align::decimal});
        if (state.kind == StateKind::high_fire) {
            columns.push_back(
                {.heading = with_unit("", Kind::speed, style), .align = Align::decimal});
        }
    }
    return columns;
}

void add_states(std::vector<TableCell>& cells,
                const Score& score,
                std::size_t weather,
                const Style& style) {
    for (std::size_t i = 0; i < score.states.size(); ++i) {
        const StateResult& state = score.states[i];
        const StateVerdict& verdict = score.verdicts[i];
        if (state.weather != weather) {
            continue;
        }
        const Ink ink = verdict.passes ? Ink::plain : Ink::bad;
        const std::string mark = verdict.passes ? "" : " !";
        if (is_door_open(state.kind)) {
            cells.push_back(
                {door_words(state.door.opening_share, verdict.passes, style) + mark, ink});
            continue;
        }
        const bool known = has_working_point(state);
        cells.push_back(
            {known ? signed_number(verdict.spare, Kind::pressure, style) + mark : "none !", ink});
        cells.push_back(
            {known ? bare_number(state.flow.mouth_temperature_k, Kind::temperature, style) : ""});
        if (state.kind == StateKind::high_fire) {
            cells.push_back(
                {known ? bare_number(state.flow.mouth_velocity_m_s, Kind::speed, style) : ""});
        }
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
        const auto states = state_columns(*rows.front().score, weather, style);
        columns.insert(columns.end(), states.begin(), states.end());
        TextTable table(std::move(columns));
        for (const ScoredRow& row : rows) {
            std::vector<TableCell> cells = row.cells;
            add_states(cells, *row.score, weather, style);
            table.add(std::move(cells));
        }
        out += table.text(style, 2);
    }
    return out;
}

std::string door_words(double share, bool passes, const Style& style) {
    constexpr double per_cent = 100.0;
    const double held = std::clamp(share, 0.0, 1.0);
    const double shown = passes ? held : std::floor(per_cent * held) / per_cent;
    return format_quantity(shown, Kind::fraction, style.units, 2);
}

std::string score_legend(const Case& shape, const Style& style) {
    std::string words = "! falls short. Margin: draft less the draft needed. Mouth: gas at the "
                        "mouth, and its speed at high fire.";
    if (shape.appliance.has_door) {
        words += " Door: how far it may be opened with the smoke staying in; "
                 + format_quantity(door_wanted(shape), Kind::fraction, style.units) + " is asked.";
    }
    return paragraph(words, {.first = 2, .rest = 4}, style.width);
}

} // namespace fluewright::report
