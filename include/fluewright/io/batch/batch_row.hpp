#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/io/results/columns.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// One installation of many: what goes in, what comes out, and how it is written on one line.
namespace fluewright {

/// The text of one installation and where it came from.
struct BatchRecord {
    std::size_t number{}; ///< from 1, over all sources
    std::string source;   ///< file name, or "<stdin>"
    std::size_t line{};   ///< of a stream of one installation a line; 0 for a whole file
    std::string text;
};

enum class Outcome : std::uint8_t {
    pass,
    short_of_draft,
    fault, ///< of the record: nothing was computed
    failed ///< the solver gave up a state, which is a fault of the program
};

[[nodiscard]] std::string_view name(Outcome outcome);

/// What a batch tells of one installation. Figures that do not exist are NaN and written as null.
struct BatchRow {
    std::size_t number{};
    std::string id; ///< the file's "id", or its source and line
    std::string source;
    std::size_t line{};
    std::string title;
    Outcome outcome{};
    std::array<HarmOutcome, harm_count> harms{}; ///< meaningless for a fault
    std::string limiting_state;
    std::string limiting_weather;
    std::string margin_state; ///< of high and low fire that with least to spare over its need
    std::string margin_weather;
    Status margin_status{}; ///< of that state; only a solved one has figures
    double margin_pa{};     ///< of that state; so are draft and need
    double draft_pa{};
    double draft_needed_pa{};
    double opening_share{};       ///< least opening of the reload (of a fireplace: the open front)
    double capacity_kg_s{};       ///< least
    double gas_temperature_k{};   ///< at the outlet, high fire
    double mouth_temperature_k{}; ///< lowest
    double coldest_wall_k{};
    double height_m{};
    std::vector<std::string_view> findings;
    std::string error; ///< the first fault, with its place
};

/// Reads and assesses one record. Never fails: a fault becomes a row.
[[nodiscard]] BatchRow assess_record(const BatchRecord& record, const Required& required = {});

/// The columns a line can have; see results::batch_record().
[[nodiscard]] std::span<const results::ColumnInfo> batch_columns();

using BatchColumns = std::vector<const results::ColumnInfo*>;

[[nodiscard]] BatchColumns default_batch_columns();

/// The line of a row, with its end of line.
void append_ndjson(const BatchRow& row, const BatchColumns& columns, std::string& text);
void append_csv(const BatchRow& row, const BatchColumns& columns, std::string& text);
void append_csv_header(const BatchColumns& columns, std::string& text);
void append_table_row(const BatchRow& row, std::string& text);
void append_table_header(std::string& text);

} // namespace fluewright
