#include "fluewright/io/batch/batch_row.hpp"
#include "io/results/csv_rows.hpp"
#include "io/results/finding_rows.hpp"
#include "io/results/results.hpp"
#include "io/results/verdict_rows.hpp"
#include "io/text/csv_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>
#include <iterator>

namespace fluewright::results {
namespace {

constexpr std::span<const std::string_view> any_word{};

/// What a kind of harm came to, null where nothing was computed.
constexpr auto outcome = [](Harm harm) {
    return [harm](const BatchRow& row) {
        return row.outcome == Outcome::fault
                   ? std::nullopt
                   : std::optional{row.harms[static_cast<std::size_t>(harm)]};
    };
};

/// A number of a row, null where it does not exist.
constexpr auto known = [](double BatchRow::*member) {
    return [member](const BatchRow& row) { return if_finite(row.*member); };
};

} // namespace

template <>
const Record<BatchRow>& record_of<BatchRow>() {
    static const Record<BatchRow> record{
        "batch_row",
        "a line of `batch`, with the columns that --fields asks for",
        {{"record", "number of the record, from 1", &BatchRow::number},
         {"id", "of the installation, or its place", &BatchRow::id},
         {"source", Kind::number, "file, or <stdin>", &BatchRow::source, any_word, false},
         {"line",
          Kind::number,
          "line of a stream; 0 for a whole file",
          &BatchRow::line,
          any_word,
          false},
         {"title", Kind::number, "of the installation", &BatchRow::title, any_word, false},
         {"outcome",
          Kind::number,
          "pass: all that counts is decided, and nothing of it is short; open: nothing of it is "
          "short, but not all is decided; short: something is; fault: nothing was computed; "
          "failed: the solver gave up, please report it",
          [](const BatchRow& row) { return row.outcome; },
          batch_outcome_words},
         {"why",
          "what makes what counts fall short or leaves it open, by kind of harm; empty where all "
          "of it passes",
          &BatchRow::why},
         {"fire_outcome",
          Kind::number,
          "what fire and carbon monoxide came to; null for a fault",
          outcome(Harm::fire),
          harm_outcome_words},
         {"draft_outcome",
          Kind::number,
          "what draft came to",
          outcome(Harm::draft),
          harm_outcome_words},
         {"reloading_outcome",
          Kind::number,
          "what reloading came to",
          outcome(Harm::reloading),
          harm_outcome_words},
         {"upkeep_outcome",
          Kind::number,
          "what upkeep came to",
          outcome(Harm::upkeep),
          harm_outcome_words},
         {"limiting_state",
          "of the conditions that what counts hangs on, that with least to spare",
          &BatchRow::limiting_state},
         {"limiting_weather", "its weather", &BatchRow::limiting_weather},
         {"margin_state",
          "of high and low fire that with least draft to spare",
          &BatchRow::margin_state},
         {"margin_weather", "its weather", &BatchRow::margin_weather},
         {"margin_status",
          Kind::number,
          "whether that state has figures; cannot vent: the run cannot carry the burn rate",
          [](const BatchRow& row) {
              return row.outcome == Outcome::fault ? std::nullopt
                                                   : std::optional{name(row.margin_status)};
          },
          status_words},
         {"margin",
          Kind::pressure,
          "draft less the required draft in that state",
          known(&BatchRow::margin_pa)},
         {"draft",
          Kind::pressure,
          "pressure in the flue at the outlet below that of the room, in that state",
          known(&BatchRow::draft_pa),
          any_word,
          false},
         {"draft_needed",
          Kind::pressure,
          "draft the appliance requires in that state",
          known(&BatchRow::draft_needed_pa),
          any_word,
          false},
         {"opening_share",
          "share of the door's opening over which the smoke stays in, in the worst state; over 1: "
          "all of it",
          known(&BatchRow::opening_share)},
         {"capacity",
          Kind::mass_rate,
          "the highest burn rate that the run vents at the required draft, in the worst weather",
          known(&BatchRow::capacity_kg_s)},
         {"gas_temperature",
          Kind::temperature,
          "gas at the outlet, high fire",
          known(&BatchRow::gas_temperature_k),
          any_word,
          false},
         {"top_temperature",
          Kind::temperature,
          "coldest gas at the chimney top",
          known(&BatchRow::top_temperature_k),
          any_word,
          false},
         {"coldest_wall",
          Kind::temperature,
          "coldest inner wall",
          known(&BatchRow::coldest_wall_k),
          any_word,
          false},
         {"over_dew_point",
          Kind::temperature_difference,
          "how far the coldest inner wall keeps above the dew point of water, high or low fire; "
          "under 0: water runs down it",
          known(&BatchRow::over_dew_point_k),
          any_word,
          false},
         {"over_creosote",
          Kind::temperature_difference,
          "how far it keeps above where creosote forms; null where the fuel makes none",
          known(&BatchRow::over_creosote_k),
          any_word,
          false},
         {"height",
          Kind::length,
          "chimney top above outlet",
          known(&BatchRow::height_m),
          any_word,
          false},
         {"rules_not_met",
          Kind::number,
          "checks of the body of rules that are not met",
          &BatchRow::rules_not_met,
          any_word,
          false},
         {"rules_open",
          Kind::number,
          "checks of that body where fire or carbon monoxide is at stake and the file tells too "
          "little",
          &BatchRow::rules_open,
          any_word,
          false},
         {"size_suggested",
          Kind::length,
          "diameter of the pipe size suggested; null without --size, or where no size works",
          known(&BatchRow::size_suggested_m),
          any_word,
          false},
         {"size_name",
          Kind::number,
          "that size as the trade says it",
          &BatchRow::size_suggested,
          any_word,
          false},
         {"method_met",
          Kind::number,
          "whether every criterion of the --method that counts is met; null without one, or where "
          "it "
          "does not hold",
          &BatchRow::method_met,
          any_word,
          false},
         {"method_why",
          Kind::number,
          "the criteria of the method that are not met, or why it does not hold for this run",
          &BatchRow::method_why,
          any_word,
          false},
         {"method_spare",
          Kind::pressure,
          "least spare of its criteria in pascals",
          known(&BatchRow::method_spare_pa),
          any_word,
          false},
         {"findings", "ids of the findings, by severity and weight", &BatchRow::findings},
         {"error", "the first fault and its place", &BatchRow::error}}};
    return record;
}

const RecordInfo& batch_record() {
    return record_of<BatchRow>().info();
}

} // namespace fluewright::results

namespace fluewright {
namespace {

using results::ColumnInfo;

/// Seven digits: more than the physics can tell, and the same on every machine.
void append_number(double value, std::string& line) {
    fmt::format_to(std::back_inserter(line), "{:.7g}", value == 0.0 ? 0.0 : value);
}

/// A number that is not whole.
std::optional<double> fraction_of(const json::Value& value) {
    return value.whole() == nullptr ? value.number() : std::nullopt;
}

/// A cell: numbers as above, all else as `as_text` has it.
void append_cell(const BatchRow& row,
                 const ColumnInfo& column,
                 std::string (*as_text)(const json::Value&),
                 std::string& line) {
    const auto at = static_cast<std::size_t>(&column - batch_columns().data());
    const json::Value value = results::record_of<BatchRow>().columns()[at].get(row);
    if (const auto number = fraction_of(value)) {
        append_number(*number, line);
    } else {
        line += as_text(value);
    }
}

/// A number or word of the file; `none` where this one has none or is at fault.
void append_value(const BatchRow& row,
                  std::size_t at,
                  std::string (*as_text)(const json::Value&),
                  std::string_view none,
                  std::string& line) {
    const auto* value = at < row.values.size() ? &row.values[at] : nullptr;
    const auto* word = value != nullptr ? std::get_if<std::string>(value) : nullptr;
    const auto* number = value != nullptr ? std::get_if<double>(value) : nullptr;
    if (word != nullptr && !word->empty()) {
        line += as_text(json::Value{*word});
    } else if (number != nullptr && std::isfinite(*number)) {
        append_number(*number, line);
    } else {
        line += none;
    }
}

} // namespace

std::span<const ColumnInfo> batch_columns() {
    return results::batch_record().columns;
}

BatchColumns default_batch_columns() {
    BatchColumns chosen;
    for (const ColumnInfo& column : batch_columns()) {
        if (column.by_default) {
            chosen.answers.push_back(&column);
        }
    }
    return chosen;
}

void append_ndjson(const BatchRow& row, const BatchColumns& chosen, std::string& text) {
    char before = '{';
    const auto begin = [&](std::string_view key) {
        text += before;
        before = ',';
        text += '"';
        text += key;
        text += "\":";
    };
    for (const ColumnInfo* column : chosen.answers) {
        begin(column->key);
        append_cell(row, *column, json::compact_text, text);
    }
    for (std::size_t i = 0; i < chosen.values.size(); ++i) {
        text += before;
        before = ',';
        text += json::compact_text(json::Value{chosen.values[i].column}) + ':';
        append_value(row, i, json::compact_text, "null", text);
    }
    text += "}\n";
}

void append_csv(const BatchRow& row, const BatchColumns& chosen, std::string& text) {
    bool first = true;
    for (const ColumnInfo* column : chosen.answers) {
        text += first ? "" : ",";
        first = false;
        append_cell(row, *column, results::csv_cell, text);
    }
    for (std::size_t i = 0; i < chosen.values.size(); ++i) {
        text += first ? "" : ",";
        first = false;
        append_value(row, i, results::csv_cell, "", text);
    }
    text += "\r\n";
}

void append_csv_header(const BatchColumns& chosen, std::string& text) {
    bool first = true;
    for (const ColumnInfo* column : chosen.answers) {
        text += first ? "" : ",";
        first = false;
        text += column->key;
    }
    for (const BatchValue& value : chosen.values) {
        text += first ? "" : ",";
        first = false;
        text += results::csv_cell(json::Value{value.column});
    }
    text += "\r\n";
}

} // namespace fluewright
