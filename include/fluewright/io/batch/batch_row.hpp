#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/io/results/columns.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
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
    open, ///< nothing that counts is short, but the file does not tell enough to decide all of it
    short_of_draft,
    fault, ///< of the record: nothing was computed
    failed ///< the solver gave up a state, which is a fault of the program
};

/// In the order of Outcome.
inline constexpr std::array<std::string_view, 5> batch_outcome_words{
    "pass", "open", "short", "fault", "failed"};

[[nodiscard]] std::string_view name(Outcome outcome);

/// A number of a file [SI], NaN where it gives none, or a word of it, empty where it gives none.
using BatchCell = std::variant<double, std::string>;

/// What is computed beside the physics.
enum class BatchMethod : std::uint8_t { none, en13384, handbook };

/// "en13384" or "handbook", as it is asked for; "physics" where none is.
[[nodiscard]] std::string_view name(BatchMethod method);

/// What a batch tells of one installation. Figures that do not exist are NaN and written as null.
struct BatchRow {
    std::size_t number{};
    std::string id; ///< the file's "id", or its source and line
    std::string source;
    std::size_t line{};
    std::string title;
    UnitSystem units{}; ///< of text about it: those asked for, else those the file uses most
    Outcome outcome{};
    std::array<HarmOutcome, harm_count> harms{}; ///< meaningless for a fault
    std::string why;                             ///< reasons_against()
    std::string limiting_state;
    std::string limiting_weather;
    std::string margin_state; ///< of high and low fire that with least to spare over its need
    std::string margin_weather;
    Status margin_status{}; ///< of that state; only a solved one has figures
    double margin_pa{};     ///< of that state; so are draft and need
    double draft_pa{};
    double draft_needed_pa{};
    double opening_share{};     ///< least opening of the reload (of a fireplace: the open front)
    double opening_wanted{1.0}; ///< what is required of it
    double capacity_kg_s{};     ///< least
    double gas_temperature_k{}; ///< at the outlet, high fire
    double top_temperature_k{}; ///< lowest
    double coldest_wall_k{};
    double over_dew_point_k{}; ///< least of wall less dew point of water
    double over_creosote_k{};  ///< least of wall less where tar settles; of fuels that make tar
    double height_m{};
    std::size_t rules_not_met{};    ///< checks of bodies of rules
    std::size_t rules_open{};       ///< of those, dangers of which the file tells too little
    double size_suggested_m{};      ///< where sizes are looked for and one works
    std::string size_suggested;     ///< as the trade says it
    BatchMethod method{};           ///< computed for it
    std::optional<bool> method_met; ///< where a method is asked for and holds
    std::string method_why;         ///< what of it is not met, or why it does not hold
    double method_spare_pa{};       ///< least of its criteria in Pa that count
    std::vector<BatchCell> values;  ///< beside BatchAsked::values
    std::vector<std::string_view> findings;
    std::string error; ///< the first fault, with its place

    /// Whether a method is asked for that it does not meet, or that does not hold for it.
    [[nodiscard]] bool is_off_method() const {
        return method != BatchMethod::none && !method_met.value_or(false);
    }
};

/// A number or word of each installation, called as `vary` calls it, that is written beside the
/// answers.
struct BatchValue {
    std::string name; ///< as typed
    Kind kind{};
    std::string column; ///< the name, of a number with its unit
    bool word{};
};

/// The number or word a name stands for in every installation. Failure: a sentence without its full
/// stop.
[[nodiscard]] Result<BatchValue, std::string> batch_value(std::string_view name);

/// What is asked of every record.
struct BatchAsked {
    Required required{};
    std::string rules{}; ///< id of a body; empty: what each file asks for
    bool size_search{};
    BatchMethod method{};
    std::vector<BatchValue> values{};
    std::optional<UnitSystem> units{}; ///< of text; empty: those of each file
};

/// Reads and assesses one record. Never fails: a fault becomes a row.
[[nodiscard]] BatchRow assess_record(const BatchRecord& record, const BatchAsked& asked = {});

/// The columns a line can have; see results::batch_record().
[[nodiscard]] std::span<const results::ColumnInfo> batch_columns();

/// "+4.2 Pa": the draft over its need, in the units of the row; empty where there is none.
[[nodiscard]] std::string margin_text(const BatchRow& row);

/// What is written of a row.
struct BatchColumns {
    std::vector<const results::ColumnInfo*> answers;
    std::vector<BatchValue> values; ///< behind them
};

[[nodiscard]] BatchColumns default_batch_columns();

/// The line of a row, with its end of line.
void append_ndjson(const BatchRow& row, const BatchColumns& columns, std::string& text);
void append_csv(const BatchRow& row, const BatchColumns& columns, std::string& text);
void append_csv_header(const BatchColumns& columns, std::string& text);
void append_table_row(const BatchRow& row, std::string& text);
void append_table_header(std::string& text);

} // namespace fluewright
