#include "fluewright/advice/opening_words.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <cmath>
#include <fmt/core.h>
#include <iterator>

namespace fluewright {
namespace {

constexpr int id_width = 26;
constexpr int state_width = 30;
constexpr int spare_width = 13; // "+0.0464 inH2O"
constexpr std::size_t why_inset = 2;
constexpr std::size_t table_width = 79;

std::string signed_pressure(double pressure_pa, UnitSystem units) {
    return (pressure_pa >= 0.0 ? "+" : "")
           + format_apart(pressure_pa, 0.0, Kind::pressure, units).figure;
}

/// "en13384: not met: PZ >= PZe at low fire; least draft to spare -3.2 Pa"
std::string method_words(const BatchRow& row) {
    std::string words = std::string{name(row.method)} + ": ";
    if (!row.method_met) {
        return words + row.method_why;
    }
    words += *row.method_met ? "met" : "not met: " + row.method_why;
    return std::isfinite(row.method_spare_pa)
               ? words + "; least draft to spare " + signed_pressure(row.method_spare_pa, row.units)
               : words;
}

} // namespace

void append_table_header(std::string& text) {
    fmt::format_to(std::back_inserter(text),
                   "{:<{}} {:<7} {:<{}} {:>{}}\n",
                   "installation",
                   id_width,
                   "outcome",
                   "tightest",
                   state_width,
                   "to spare",
                   spare_width);
}

std::string margin_text(const BatchRow& row) {
    return std::isfinite(row.margin_pa) ? signed_pressure(row.margin_pa, row.units) : std::string{};
}

std::string_view name(BatchMethod method) {
    return method == BatchMethod::en13384    ? "en13384"
           : method == BatchMethod::handbook ? "handbook"
                                             : "physics";
}

void append_table_row(const BatchRow& row, std::string& text) {
    // An id is never cut, or it would name nothing: a long one has a line of its own.
    std::string id = row.id;
    if (shown_width(id) > id_width) {
        text += id + '\n';
        id.clear();
    }
    if (row.outcome == Outcome::fault || row.outcome == Outcome::failed) {
        fmt::format_to(std::back_inserter(text),
                       "{:<{}} {:<7} {}\n",
                       id,
                       id_width,
                       row.outcome == Outcome::fault ? "FAULT" : "FAILED",
                       row.error);
        return;
    }
    const std::string state = row.limiting_state + ", " + row.limiting_weather;
    // A door that is the tightest has no draft to spare but a share that it may be opened.
    const bool by_door = row.limiting_state == name(StateKind::door_open_high)
                         || row.limiting_state == name(StateKind::door_open_embers);
    const std::string spare =
        by_door ? opening_share_words(row.opening_share, row.opening_wanted, row.units) + " open"
        : std::isfinite(row.margin_pa) ? margin_text(row)
                                       : std::string{name(row.margin_status)};
    fmt::format_to(std::back_inserter(text),
                   "{:<{}} {:<7} {:<{}} {:>{}}\n",
                   id,
                   id_width,
                   row.harms.front() == HarmOutcome::falls_short ? "DANGER"
                   : row.outcome == Outcome::short_of_draft      ? "SHORT"
                   : row.outcome == Outcome::open                ? "open"
                                                                 : "ok",
                   state.substr(0, state_width),
                   state_width,
                   spare,
                   spare_width);
    const Indent under{.first = why_inset, .rest = why_inset + 2};
    if (!row.why.empty()) {
        text += paragraph(row.why, under, table_width);
    }
    if (row.method != BatchMethod::none) {
        text += paragraph(method_words(row), under, table_width);
    }
}

} // namespace fluewright
