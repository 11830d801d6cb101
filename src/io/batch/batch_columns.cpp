#include "fluewright/io/batch/batch_row.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>
#include <iterator>

namespace fluewright {
namespace {

// A line is appended in place: a batch writes millions of them, and building a tree for each would
// cost more than reading the record. Strings are escaped as RFC 8259 asks.

void append_json_text(std::string_view text, std::string& line) {
    line += '"';
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            line += '\\';
            line += c;
        } else if (static_cast<unsigned char>(c) < 0x20) {
            fmt::format_to(std::back_inserter(line), "\\u{:04x}", static_cast<unsigned>(c));
        } else {
            line += c;
        }
    }
    line += '"';
}

/// A cell of RFC 4180: quoted where it must be.
void append_csv_text(std::string_view text, std::string& line) {
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        line += text;
        return;
    }
    line += '"';
    for (const char c : text) {
        line += c;
        if (c == '"') {
            line += c;
        }
    }
    line += '"';
}

/// Seven digits: more than the physics can tell, and the same on every machine.
void append_number(double value, std::string& line) {
    fmt::format_to(std::back_inserter(line), "{:.7g}", value == 0.0 ? 0.0 : value);
}

template <auto Member>
constexpr BatchColumn
text_column(std::string_view name, std::string_view meaning, bool by_default) {
    return {name,
            meaning,
            by_default,
            [](const BatchRow& row, std::string& line) { append_json_text(row.*Member, line); },
            [](const BatchRow& row, std::string& line) { append_csv_text(row.*Member, line); }};
}

template <auto Member>
constexpr BatchColumn
number_column(std::string_view name, std::string_view meaning, bool by_default) {
    return {name,
            meaning,
            by_default,
            [](const BatchRow& row, std::string& line) {
                if (std::isfinite(row.*Member)) {
                    append_number(row.*Member, line);
                } else {
                    line += "null";
                }
            },
            [](const BatchRow& row, std::string& line) {
                if (std::isfinite(row.*Member)) {
                    append_number(row.*Member, line);
                }
            }};
}

template <auto Member>
constexpr BatchColumn
count_column(std::string_view name, std::string_view meaning, bool by_default) {
    const auto append = [](const BatchRow& row, std::string& line) {
        fmt::format_to(std::back_inserter(line), "{}", row.*Member);
    };
    return {name, meaning, by_default, append, append};
}

constexpr BatchColumn outcome_column{
    "outcome",
    "pass, short or fault",
    true,
    [](const BatchRow& row, std::string& line) { append_json_text(name(row.outcome), line); },
    [](const BatchRow& row, std::string& line) { line += name(row.outcome); }};

constexpr BatchColumn findings_column{"findings",
                                      "ids of the findings, by weight",
                                      true,
                                      [](const BatchRow& row, std::string& line) {
                                          line += '[';
                                          for (std::size_t i = 0; i < row.findings.size(); ++i) {
                                              line += i > 0 ? "," : "";
                                              append_json_text(row.findings[i], line);
                                          }
                                          line += ']';
                                      },
                                      [](const BatchRow& row, std::string& line) {
                                          for (std::size_t i = 0; i < row.findings.size(); ++i) {
                                              line += i > 0 ? " " : "";
                                              line += row.findings[i];
                                          }
                                      }};

constexpr std::array columns{
    count_column<&BatchRow::number>("record", "number of the record, from 1", true),
    text_column<&BatchRow::id>("id", "the record's id, or its place", true),
    text_column<&BatchRow::source>("source", "file, or <stdin>", false),
    count_column<&BatchRow::line>("line", "line of a stream; 0 for a whole file", false),
    text_column<&BatchRow::title>("title", "title of the installation", false),
    outcome_column,
    text_column<&BatchRow::limiting_state>("limiting_state", "state with least to spare", true),
    text_column<&BatchRow::limiting_weather>("limiting_weather", "and its weather", true),
    text_column<&BatchRow::margin_state>(
        "margin_state", "of high and low fire that with least to spare", true),
    text_column<&BatchRow::margin_weather>("margin_weather", "and its weather", true),
    number_column<&BatchRow::margin_pa>("margin_pa", "draft over the need in that state", true),
    number_column<&BatchRow::draft_pa>("draft_pa", "draft in that state", false),
    number_column<&BatchRow::draft_needed_pa>("draft_needed_pa", "draft needed there", false),
    number_column<&BatchRow::opening_share>(
        "opening_share", "how far the door may be opened; over 1: wholly", true),
    number_column<&BatchRow::capacity_kg_s>("capacity_kg_s", "least capacity", true),
    number_column<&BatchRow::gas_temperature_k>(
        "gas_temperature_k", "gas at the outlet, high fire", false),
    number_column<&BatchRow::mouth_temperature_k>(
        "mouth_temperature_k", "coldest gas at the mouth", false),
    number_column<&BatchRow::coldest_wall_k>("coldest_wall_k", "coldest inner wall", false),
    number_column<&BatchRow::height_m>("height_m", "mouth over outlet", false),
    findings_column,
    text_column<&BatchRow::error>("error", "the first fault and its place", true)};

constexpr int id_width = 26;
constexpr int state_width = 32;

} // namespace

std::span<const BatchColumn> batch_columns() {
    return columns;
}

BatchColumns default_batch_columns() {
    BatchColumns chosen;
    for (const BatchColumn& column : columns) {
        if (column.by_default) {
            chosen.push_back(&column);
        }
    }
    return chosen;
}

void append_ndjson(const BatchRow& row, const BatchColumns& chosen, std::string& text) {
    char before = '{';
    for (const BatchColumn* column : chosen) {
        text += before;
        before = ',';
        text += '"';
        text += column->name;
        text += "\":";
        column->append_json(row, text);
    }
    text += "}\n";
}

void append_csv(const BatchRow& row, const BatchColumns& chosen, std::string& text) {
    bool first = true;
    for (const BatchColumn* column : chosen) {
        if (!first) {
            text += ',';
        }
        first = false;
        column->append_csv(row, text);
    }
    text += "\r\n";
}

void append_csv_header(const BatchColumns& chosen, std::string& text) {
    bool first = true;
    for (const BatchColumn* column : chosen) {
        if (!first) {
            text += ',';
        }
        first = false;
        text += column->name;
    }
    text += "\r\n";
}

void append_table_header(std::string& text) {
    fmt::format_to(std::back_inserter(text),
                   "{:<{}} {:<7} {:<{}} {:>11}\n",
                   "installation",
                   id_width,
                   "outcome",
                   "tightest",
                   state_width,
                   "to spare");
}

void append_table_row(const BatchRow& row, std::string& text) {
    // The end of a path tells more than its beginning.
    std::string id = row.id;
    if (id.size() > id_width) {
        id = ".." + id.substr(id.size() - id_width + 2);
    }
    if (row.outcome == Outcome::fault) {
        fmt::format_to(
            std::back_inserter(text), "{:<{}} {:<7} {}\n", id, id_width, "FAULT", row.error);
        return;
    }
    const std::string state = row.limiting_state + ", " + row.limiting_weather;
    // A door that is the tightest has no draft to spare but a share that it may be opened.
    const bool by_door = row.limiting_state.starts_with("door");
    const std::string spare =
        by_door ? fmt::format("{:.0f} % open", 100.0 * std::fmin(row.opening_share, 1.0))
                : fmt::format("{:+.1f} Pa", row.margin_pa);
    fmt::format_to(std::back_inserter(text),
                   "{:<{}} {:<7} {:<{}} {:>11}\n",
                   id,
                   id_width,
                   row.outcome == Outcome::pass ? "ok" : "SHORT",
                   state.substr(0, state_width),
                   state_width,
                   spare);
}

} // namespace fluewright
