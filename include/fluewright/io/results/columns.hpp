#pragma once

#include "fluewright/core/quantity/quantity.hpp"

#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What the answers of the program are made of. Every record of an answer is a table of columns,
/// and from these tables come JSON, CSV, the columns of text, `--fields`, the JSON Schema of the
/// answers and docs/output.md.
namespace fluewright::results {

/// What a value is.
enum class Holds : std::uint8_t {
    truth,
    whole, ///< a whole number
    number,
    text,
    record,
    fragment, ///< an object of the input file, as its own schema has it
};

struct RecordInfo;

/// What stands under a key.
struct Shape {
    Holds holds{};
    bool may_be_null{}; ///< where there is no such thing, or it was not computed
    int lists{};        ///< 0: one value; 1: a list of them; 2: a list of lists
    std::function<const RecordInfo&()> record{}; ///< of Holds::record
};

/// One column of a record, without its getter.
struct ColumnInfo {
    std::string key;     ///< in JSON, CSV and --fields; ends in the unit
    std::string heading; ///< in text
    Kind kind{Kind::number};
    std::string_view meaning; ///< begins with a small letter and has no full stop
    Shape shape;
    std::span<const std::string_view> words{}; ///< the only ones a text may have; empty: any
    bool by_default{true};                     ///< stands in a batch that asks for no fields
    bool in_csv{true};      ///< CSV has it, where it is one value or a list of words
    bool shows_sign{false}; ///< in text a figure over zero has its sign
};

struct RecordInfo {
    std::string name; ///< of its definition in the schema
    std::string meaning;
    std::vector<ColumnInfo> columns;
};

/// What answers `--json` of one command holds under "result".
struct CommandResult {
    std::string_view command;
    std::vector<const RecordInfo*> records; ///< one of them
};

/// Every command that answers in JSON; a file at fault is answered with `faults` by all of them.
[[nodiscard]] std::vector<CommandResult> command_results();

/// "program", "version", "input", "result", "assumptions", "cautions": what every answer is.
[[nodiscard]] const RecordInfo& answer_record();

/// What is wrong with an input file.
[[nodiscard]] const RecordInfo& faults_record();

/// A line of `batch --format ndjson`, which has the columns that were asked for.
[[nodiscard]] const RecordInfo& batch_record();

/// Those records and all that they hold, each once and before the ones it holds.
[[nodiscard]] std::vector<const RecordInfo*> all_records();

} // namespace fluewright::results
