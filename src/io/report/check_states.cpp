#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "io/text/words.hpp"

#include <algorithm>
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
        TextTable table(
            {{.heading = "state"},
             {.heading = with_unit("fuel", Kind::mass_rate, style), .align = Align::decimal},
             {.heading = with_unit("gas", Kind::gas_flow, style), .align = Align::decimal},
             {.heading = with_unit("outlet", Kind::temperature, style), .align = Align::decimal},
             {.heading = with_unit("mouth", Kind::temperature, style), .align = Align::decimal},
             {.heading = with_unit("draft", Kind::pressure, style), .align = Align::decimal},
             {.heading = with_unit("needed", Kind::pressure, style), .align = Align::decimal},
             {.heading = with_unit("margin", Kind::pressure, style), .align = Align::decimal},
             {.heading = "%", .align = Align::right},
             {.heading = ""}});
        each([&](const StateResult& state, const StateVerdict& verdict) {
            if (!is_door_open(state.kind)) {
                add_draft(table, state, verdict);
            }
        });
        return table;
    }

    void add_draft(TextTable& table, const StateResult& state, const StateVerdict& verdict) const {
        const auto number = [&](double si, Kind kind) {
            return TableCell{bare_number(si, kind, style)};
        };
        const TableCell nothing{std::string{none}};
        const std::string label{name(state.kind)};
        if (!has_working_point(state)) {
            table.add({{label},
                       nothing,
                       nothing,
                       nothing,
                       nothing,
                       nothing,
                       nothing,
                       nothing,
                       nothing,
                       verdict_cell(state, verdict)});
            return;
        }
        if (state.kind == StateKind::standing) {
            table.add({{label},
                       nothing,
                       nothing,
                       nothing,
                       nothing,
                       number(state.draft_pa, Kind::pressure),
                       nothing,
                       nothing,
                       nothing,
                       verdict_cell(state, verdict)});
            return;
        }
        const bool kindling = state.kind == StateKind::cold_start;
        const bool burning = state.kind != StateKind::free_burn && !kindling;
        const bool has_share = burning && state.draft_needed_pa > 0.0;
        table.add(
            {{label},
             number(state.burn_rate_kg_s, Kind::mass_rate),
             number(state.gas_flow_kg_s, Kind::gas_flow),
             number(state.gas_temperature_k, Kind::temperature),
             number(state.flow.mouth_temperature_k, Kind::temperature),
             number(state.draft_pa, Kind::pressure),
             kindling ? nothing : number(state.draft_needed_pa, Kind::pressure),
             burning ? TableCell{signed_number(state.margin_pa(), Kind::pressure, style)} : nothing,
             has_share ? TableCell{signed_number(
                 state.margin_pa() / state.draft_needed_pa, Kind::fraction, style)}
                       : nothing,
             verdict_cell(state, verdict)});
    }

    [[nodiscard]] TextTable doors() const {
        const bool open_front = a.installation.appliance.type == ApplianceType::fireplace;
        TextTable table(
            {{.heading = open_front ? "open front" : "door open"},
             {.heading = with_unit("gas", Kind::gas_flow, style), .align = Align::decimal},
             {.heading = with_unit("firebox", Kind::temperature, style), .align = Align::decimal},
             {.heading = with_unit("top edge", Kind::pressure, style), .align = Align::decimal},
             {.heading = with_unit("air in", Kind::speed, style), .align = Align::decimal},
             {.heading = "may be\nopened", .align = Align::right},
             {.heading = ""}});
        each([&](const StateResult& state, const StateVerdict& verdict) {
            if (is_door_open(state.kind)) {
                add_door(table, state, verdict);
            }
        });
        return table;
    }

    void add_door(TextTable& table, const StateResult& state, const StateVerdict& verdict) const {
        const TableCell nothing{std::string{none}};
        const bool computed = has_working_point(state);
        const auto number = [&](double si, Kind kind) {
            return computed ? TableCell{bare_number(si, kind, style)} : nothing;
        };
        const double share = state.door.opening_share;
        const bool embers = state.kind == StateKind::door_open_embers;
        table.add({{embers ? "on embers" : "on a high fire"},
                   number(state.gas_flow_kg_s, Kind::gas_flow),
                   number(state.door.box_temperature_k, Kind::temperature),
                   computed
                       ? TableCell{signed_number(state.door.top_edge_pa, Kind::pressure, style)}
                       : nothing,
                   number(state.door.face_velocity_m_s, Kind::speed),
                   {share >= 1.0   ? "fully"
                    : share <= 0.0 ? "not at all"
                                   : shown(share, Kind::fraction)},
                   verdict_cell(state, verdict)});
    }

    /// What the tables cannot say in a cell.
    [[nodiscard]] std::vector<std::string> notes() const {
        std::vector<std::string> lines;
        each([&](const StateResult& state, const StateVerdict&) {
            if (!has_working_point(state)) {
                lines.push_back(fmt::format(
                    "{}: not computed; {}",
                    name(state.kind),
                    state.status == Status::no_flow
                        ? "no flow up the flue brings run and appliance, or door, into balance."
                        : "the solver gave up."));
            }
            if (state.kind == StateKind::free_burn) {
                lines.push_back(capacity_words(state));
            }
            if (state.kind == StateKind::standing && has_working_point(state)) {
                lines.push_back(standing_words(state));
            }
        });
        if (a.installation.house.known) {
            lines.push_back(room_words(a, weather, style));
        }
        return lines;
    }

    [[nodiscard]] std::string capacity_words(const StateResult& state) const {
        const Firing& high = a.installation.appliance.high;
        if (state.capacity_kg_s <= 0.0) {
            return "Capacity: no burn rate at which this run gives the draft needed.";
        }
        return fmt::format("Capacity: at the draft needed the run carries up to {} of fuel; a high "
                           "fire burns {}.",
                           shown(state.capacity_kg_s, Kind::mass_rate),
                           shown(high.burn_rate_kg_s, Kind::mass_rate));
    }

    [[nodiscard]] std::string standing_words(const StateResult& state) const {
        if (state.draft_pa > 0.0) {
            return "No fire: the flue draws by itself, so a fire catches easily.";
        }
        return fmt::format("No fire: REVERSED, cold air comes down with {}. Warm the flue before "
                           "lighting.",
                           shown(-state.draft_pa, Kind::pressure))
               + turning_words(a, state.cold, style);
    }
};

} // namespace

std::string states_text(const Assessment& a, const Style& style) {
    std::string out;
    const auto& weathers = a.installation.weathers;
    for (std::size_t weather = 0; weather < weathers.size(); ++weather) {
        const Rows rows{a, style, weather};
        out += heading(weather_words(weathers[weather], style), style);
        out += rows.drafts().text(style, states_inset);
        if (const TextTable doors = rows.doors(); !doors.empty()) {
            out += '\n' + doors.text(style, states_inset);
        }
        for (const std::string& line : rows.notes()) {
            out += paragraph(line, {.first = states_inset, .rest = 2 * states_inset}, style.width);
        }
    }
    if (weathers.empty()) {
        return out;
    }
    out += '\n';
    out +=
        paragraph("Draft: pressure in the flue at the outlet below that of the room. Margin: draft "
                  "less the draft needed; the run is short where it is negative. Top edge: room "
                  "less firebox at the upper edge of the open door; smoke stays in while it is "
                  "positive.",
                  {.first = states_inset, .rest = states_inset},
                  style.width);
    return out;
}

} // namespace fluewright::report
