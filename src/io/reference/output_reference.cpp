#include "fluewright/io/reference/schema.hpp"
#include "fluewright/io/results/columns.hpp"
#include "io/results/results.hpp"

#include <fmt/core.h>
#include <fmt/format.h>
#include <iterator>

namespace fluewright {
namespace {

using results::ColumnInfo;
using results::Holds;
using results::RecordInfo;

/// "number [Pa] or null", "list of [finding](#finding)"
std::string holds_words(const ColumnInfo& column) {
    std::string words;
    for (int i = 0; i < column.shape.lists; ++i) {
        words += "list of ";
    }
    switch (column.shape.holds) {
    case Holds::truth:
        words += "true or false";
        break;
    case Holds::whole:
        words += "whole number";
        break;
    case Holds::number:
        words += "number";
        break;
    case Holds::text:
        words += column.words.empty() ? std::string{"text"}
                                      : fmt::format("`{}`", fmt::join(column.words, "`, `"));
        break;
    case Holds::record:
        words += fmt::format("[{0}](#{0})", column.shape.record().name);
        break;
    case Holds::fragment:
        words += "object";
        break;
    }
    const std::string_view unit = si_unit(column.kind);
    if (!unit.empty()) {
        words += fmt::format(" in {}", unit);
    }
    return words + (column.shape.may_be_null ? "; or null" : "");
}

void add_record(const RecordInfo& record, std::string& text) {
    fmt::format_to(std::back_inserter(text),
                   "\n### {}\n\n{}.\n\n| key | holds | meaning |\n| --- | --- | --- |\n",
                   record.name,
                   record.meaning);
    for (const ColumnInfo& column : record.columns) {
        fmt::format_to(std::back_inserter(text),
                       "| `{}` | {} | {} |\n",
                       column.key,
                       holds_words(column),
                       column.meaning);
    }
}

} // namespace

std::string output_reference_markdown() {
    std::string text =
        "# Answers\n\n"
        "Made from the tables of columns that text, CSV and JSON are written from; `fluewright "
        "schema --of result` prints the same as a JSON Schema (`docs/result.schema.json`).\n\n"
        "`--json` gives any answer as one object, an [answer](#answer): what was asked of which "
        "files, the result, what was assumed, and the cautions. Numbers are SI and their keys end "
        "in the unit; where the unit of a figure depends on what it is a figure of, it stands "
        "beside it under `unit`. What does not exist or was not computed is null, never left out "
        "and never a number. A file at fault is answered with [faults](#faults) whatever the "
        "command.\n\n"
        "`--format csv` gives a line for each state, point, part or moment: RFC 4180, with the "
        "keys and the figures of JSON, `yes` and `no`, an empty cell for null. `batch --format "
        "ndjson` writes one [batch_row](#batch_row) on each line, `--fields` says with which "
        "columns, `--fields help` lists them.\n\n"
        "`draw`, and `--format svg` of `size`, `sweep`, `warmup`, `compare` and `diagnose`, write "
        "a picture (SVG) that stands alone; `report`, and `--format html` of `compare` and "
        "`diagnose`, a page (HTML, well-formed as XML too) that fetches nothing and runs no "
        "script. They hold the figures and words of the text, in the units of the file or of "
        "`--units`; their layout may change with any version, so read JSON in a program.\n\n"
        "## What each command answers\n\n"
        "| command | `result` |\n| --- | --- |\n";
    for (const results::CommandResult& result : results::command_results()) {
        std::string names;
        for (const RecordInfo* record : result.records) {
            names += fmt::format("{0}[{1}](#{1})", names.empty() ? "" : ", ", record->name);
        }
        fmt::format_to(std::back_inserter(text), "| {} | {} |\n", result.command, names);
    }
    text += "\n## Records\n";
    for (const RecordInfo* record : results::all_records()) {
        add_record(*record, text);
    }
    text += "\n## Records of CSV alone\n";
    add_record(results::shop_record(), text);
    return text;
}

} // namespace fluewright
