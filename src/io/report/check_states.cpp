#include "check_parts.hpp"
#include "fluewright/advice/opening_words.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/run/open_front.hpp"
#include "io/results/state_rows.hpp"
#include "io/results/text_columns.hpp"
#include "io/text/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace fluewright::report {
namespace {

constexpr std::size_t states_inset = 2;
constexpr std::string_view none = "-";

TableCell verdict_cell(const StateResult& state, const StateVerdict& verdict) {
    if (state.status == Status::no_answer) {
        return {"FAILED", Ink::bad};
    }
    if (!verdict.counts) {
        return {"info", Ink::quiet};
    }
    return verdict.passes ? TableCell{"ok", Ink::good} : TableCell{"SHORT", Ink::bad};
}

/// The words that head each weather.
std::string weather_words(const WeatherCase& weather, const Style& style) {
    return fmt::format(
        "{}: {} outdoors, {}",
        weather.name,
        format_quantity(weather.outdoor_temperature_k, Kind::temperature, style.units),
        weather.wind_m_s > 0.0
            ? "wind " + format_quantity(weather.wind_m_s, Kind::speed, style.units)
            : "no wind");
}

struct Rows {
    const Assessment& a;
    const Style& style;
    std::size_t weather;
    bool all; ///< otherwise without the cold start and a door that decides nothing

    template <class Visit>
    void each(const Visit& visit) const {
        for (std::size_t i = 0; i < a.solution.states.size(); ++i) {
            if (a.solution.states[i].weather == weather) {
                visit(a.solution.states[i], a.verdicts[i]);
            }
        }
    }

    [[nodiscard]] std::string shown(double si, Kind kind) const {
        return format_quantity(si, kind, style.units);
    }

    [[nodiscard]] TextTable drafts() const {
        const results::TextColumns<results::StateRow> figures({"state",
                                                               "burn_rate_kg_s",
                                                               "gas_flow_kg_s",
                                                               "gas_temperature_k",
                                                               "top_temperature_k",
                                                               "draft_pa",
                                                               "draft_needed_pa",
                                                               "margin_pa"},
                                                              style);
        std::vector<TableColumn> headings;
        figures.add_headings(headings);
        headings.push_back({.heading = "%", .align = Align::right});
        headings.push_back({.heading = ""});
        TextTable table(std::move(headings));
        each([&](const StateResult& state, const StateVerdict& verdict) {
            if (is_door_open(state.kind) || (!all && state.kind == StateKind::cold_start)) {
                return;
            }
            const results::StateRow row{a.installation, state, verdict};
            std::vector<TableCell> cells;
            figures.add_cells(row, cells);
            cells.push_back(share_cell(row));
            cells.push_back(verdict_cell(state, verdict));
            table.add(std::move(cells));
        });
        return table;
    }

    /// The margin over the need.
    [[nodiscard]] TableCell share_cell(const results::StateRow& row) const {
        const StateResult& state = row.state;
        const bool held = row.verdict.counts && has_working_point(state);
        return {held && state.draft_needed_pa > 0.0 ? signed_number(
                    state.margin_pa() / state.draft_needed_pa, Kind::fraction, style)
                                                    : std::string{none}};
    }

    /// How far a door may be opened.
    [[nodiscard]] std::string opened(double share) const {
        return share >= 1.0   ? "fully"
               : share <= 0.0 ? "not at all"
                              : opening_share_words(a.installation, share);
    }

    [[nodiscard]] TextTable doors() const {
        const bool open_front = has_open_front(a.installation.appliance);
        const results::TextColumns<results::StateRow> flow({"gas_flow_kg_s"}, style);
        const results::TextColumns<DoorResult> door(
            {"box_temperature_k", "top_edge_pa", "face_velocity_m_s"}, style);
        std::vector<TableColumn> headings{{.heading = open_front ? "open front" : "reloading"}};
        flow.add_headings(headings);
        door.add_headings(headings);
        if (!open_front) {
            headings.push_back({.heading = "may open\nat once", .align = Align::right});
        }
        headings.push_back({.heading = open_front ? "smoke\nheld" : "may open\nafter 1 min",
                            .align = Align::right});
        headings.push_back({.heading = "if smoke\nmixes", .align = Align::right});
        headings.push_back({.heading = ""});
        TextTable table(std::move(headings));
        each([&](const StateResult& state, const StateVerdict& verdict) {
            if (!is_door_open(state.kind) || (!all && !verdict.counts)) {
                return;
            }
            const bool embers = state.kind == StateKind::door_open_embers;
            std::vector<TableCell> cells{{embers ? "on embers" : "on a high fire"}};
            flow.add_cells({a.installation, state, verdict}, cells);
            if (has_working_point(state)) {
                door.add_cells(state.door, cells);
            } else {
                cells.insert(cells.end(), door.size(), TableCell{std::string{none}});
            }
            if (!open_front) {
                cells.push_back({state.door.moments.empty()
                                     ? std::string{none}
                                     : opened(state.door.moments.front().share_by_velocity)});
            }
            cells.push_back({opened(state.door.opening_share)});
            cells.push_back({opened(state.door.opening_share_mixed)});
            cells.push_back(verdict_cell(state, verdict));
            table.add(std::move(cells));
        });
        return table;
    }

    [[nodiscard]] std::string tables() const {
        const TextTable open = doors();
        return drafts().text(style, states_inset)
               + (open.empty() ? "" : '\n' + open.text(style, states_inset));
    }

    /// Of the notes those that a person must not miss.
    [[nodiscard]] std::vector<std::string> short_notes() const {
        std::vector<std::string> lines;
        each([&](const StateResult& state, const StateVerdict&) {
            if (!has_working_point(state)) {
                lines.push_back(not_computed(state));
            }
        });
        return lines;
    }

    /// What the tables cannot say in a cell.
    [[nodiscard]] std::vector<std::string> notes() const {
        std::vector<std::string> lines;
        each([&](const StateResult& state, const StateVerdict&) {
            if (!has_working_point(state)) {
                lines.push_back(not_computed(state));
            }
            if (state.kind == StateKind::free_burn) {
                lines.push_back(capacity_words(state));
            }
            if (state.kind == StateKind::idle && has_working_point(state)) {
                lines.push_back(idle_words(state));
            }
        });
        if (a.installation.house.known) {
            lines.push_back(room_words(a, weather, style));
        }
        return lines;
    }

    [[nodiscard]] std::string not_computed(const StateResult& state) const {
        if (state.status == Status::cannot_vent) {
            return fmt::format("{}: {}",
                               name(state.kind),
                               cannot_vent_words(a.installation, a.solution.states, state));
        }
        return fmt::format("{}: not computed; {}",
                           name(state.kind),
                           state.status == Status::no_flow
                               ? "no upward flow balances run and appliance, or door."
                               : "the solver gave up.");
    }

    [[nodiscard]] std::string capacity_words(const StateResult& state) const {
        const Firing& high = a.installation.appliance.high;
        if (state.capacity_kg_s <= 0.0) {
            return "Capacity: none. This run gives the required draft at no burn rate.";
        }
        return fmt::format(
            "Capacity: up to {} of fuel at the required draft; a high fire burns {}.",
            shown(state.capacity_kg_s, Kind::mass_rate),
            shown(high.burn_rate_kg_s, Kind::mass_rate));
    }

    [[nodiscard]] std::string idle_words(const StateResult& state) const {
        const bool by_hand = is_fed_by_hand(a.installation.appliance);
        constexpr double nothing_pa = 0.05; // would be told as 0 Pa
        if (std::abs(state.draft_pa) < nothing_pa) {
            return "Idle: the air in the flue is still.";
        }
        if (state.draft_pa > 0.0) {
            return by_hand ? "Idle: the flue draws by itself, so a fire lights easily."
                           : "Idle: the flue draws by itself.";
        }
        const std::string down = shown(-state.draft_pa, Kind::pressure);
        return by_hand ? fmt::format("Idle: DOWNDRAFT of {}. Warm the flue before lighting.", down)
                             + turning_words(a, state.cold, style)
                       : fmt::format("Idle: DOWNDRAFT of {}.", down);
    }
};

} // namespace

std::string states_text(const Assessment& a, const Style& style) {
    std::string out;
    const auto& weathers = a.installation.weathers;
    for (std::size_t weather = 0; weather < weathers.size(); ++weather) {
        const Rows rows{a, style, weather, true};
        out += heading(weather_words(weathers[weather], style), style);
        out += rows.tables();
        for (const std::string& line : rows.notes()) {
            out += paragraph(line, {.first = states_inset, .rest = 2 * states_inset}, style.width);
        }
    }
    if (weathers.empty()) {
        return out;
    }
    out += '\n';
    const ApplianceCase& appliance = a.installation.appliance;
    std::string legend = "Draft: pressure in the flue at the outlet below that of the room. "
                         "Margin: draft less the required draft; below zero the run is short.";
    if (has_open_front(appliance)) {
        legend += " Top edge: room pressure less hearth pressure under the lintel. Smoke held: the "
                  "share of the opening where air comes in fast enough for this fire. If smoke "
                  "mixes: the same where smoke and air mix over the hearth, the cautious figure.";
    } else if (appliance.has_door) {
        legend += " Top edge: room pressure less firebox pressure at the top edge of the open "
                  "door. May open: how far the door may be opened while air comes in fast enough "
                  "to keep the smoke in. If smoke mixes: the same where smoke and air mix in the "
                  "firebox, the cautious figure.";
    }
    out += paragraph(legend, {.first = states_inset, .rest = states_inset}, style.width);
    return out;
}

std::string deciding_weather_text(const Assessment& a, const Style& style) {
    const auto& weathers = a.installation.weathers;
    if (a.limiting >= a.solution.states.size()) {
        return {};
    }
    const std::size_t weather = a.solution.states[a.limiting].weather;
    const Rows rows{a, style, weather, false};
    const std::string_view which =
        weathers.size() > 1 ? "The weather that decides, " : "The weather, ";
    std::string out =
        heading(fmt::format("{}{}", which, weather_words(weathers[weather], style)), style);
    out += rows.tables();
    for (const std::string& line : rows.short_notes()) {
        out += paragraph(line, {.first = states_inset, .rest = 2 * states_inset}, style.width);
    }
    return out;
}

} // namespace fluewright::report
