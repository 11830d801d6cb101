#include "cli/batch/batch_wanted.hpp"

#include "cli/shell/help.hpp"
#include "cli/values/count_option.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/core/name_list.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <optional>

namespace fluewright::cli {
namespace {

/// The columns of --fields. A run that can be taken up again needs the number of the record.
Result<BatchColumns, std::string> columns_named(std::string_view names, bool to_file) {
    if (names.empty()) {
        return default_batch_columns();
    }
    BatchColumns chosen;
    std::vector<std::string_view> known;
    for (const results::ColumnInfo& column : batch_columns()) {
        known.push_back(column.key);
        if (names == "all" || (to_file && column.key == "record")) {
            chosen.answers.push_back(&column);
        }
    }
    if (names == "all") {
        return chosen;
    }
    for (const std::string_view name : names_of_list(names)) {
        const auto found = std::find(known.begin(), known.end(), name);
        if (found == known.end()) {
            const auto nearest = nearest_word(name, known);
            return Failure{fmt::format("`{}` is not a column; {}",
                                       name,
                                       nearest
                                           ? fmt::format("did you mean `{}`?", *nearest)
                                           : fmt::format("there are {}", fmt::join(known, ", ")))};
        }
        const results::ColumnInfo* column =
            &batch_columns()[static_cast<std::size_t>(found - known.begin())];
        if (std::find(chosen.answers.begin(), chosen.answers.end(), column)
            == chosen.answers.end()) {
            chosen.answers.push_back(column);
        }
    }
    return chosen;
}

/// The format of --format, else that of the ending of the output's name.
BatchFormat format_of(const Context& context) {
    std::string_view format = context.arguments.value(option::batch_format);
    const std::string_view output = context.arguments.value(option::output);
    if (format.empty()) {
        format = output.ends_with(".csv")                                    ? "csv"
                 : output.ends_with(".html")                                 ? "html"
                 : output.ends_with(".ndjson") || output.ends_with(".jsonl") ? "ndjson"
                                                                             : "table";
    }
    return format == "ndjson" ? BatchFormat::ndjson
           : format == "csv"  ? BatchFormat::csv
           : format == "html" ? BatchFormat::html
                              : BatchFormat::table;
}

/// The numbers and words of --values, each once and beside no column of the same name.
std::optional<std::string> take_values(std::string_view names, BatchWanted& wanted) {
    for (const std::string_view name : names_of_list(names)) {
        auto value = batch_value(name);
        if (!value) {
            return "--values: " + value.error();
        }
        const auto same = [&](const auto& other) {
            if constexpr (requires { other->key; }) {
                return other->key == value->column;
            } else {
                return other.column == value->column;
            }
        };
        const BatchColumns& columns = wanted.columns;
        if (std::any_of(columns.answers.begin(), columns.answers.end(), same)
            || std::any_of(columns.values.begin(), columns.values.end(), same)) {
            return fmt::format("--values: there is a column {} already", value->column);
        }
        wanted.columns.values.push_back(std::move(value).value());
    }
    wanted.asked.values = wanted.columns.values;
    return std::nullopt;
}

/// Without --fields what was asked for beside the usual stands behind it.
void add_asked_columns(BatchWanted& wanted) {
    for (const results::ColumnInfo& column : batch_columns()) {
        const bool asked =
            (wanted.asked.size_search && column.key.starts_with("size_"))
            || (wanted.asked.method != BatchMethod::none && column.key.starts_with("method_"))
            || (!wanted.asked.rules.empty() && column.key.starts_with("rules_"));
        if (asked && !column.by_default) {
            wanted.columns.answers.push_back(&column);
        }
    }
}

} // namespace

Result<BatchWanted, std::string> batch_wanted_of(const Context& context) {
    BatchWanted wanted;
    const Arguments& typed = context.arguments;
    wanted.format = format_of(context);
    Result<BatchColumns, std::string> columns =
        columns_named(typed.value(option::fields), typed.has(option::output));
    if (!columns) {
        return Failure{std::move(columns).error()};
    }
    wanted.columns = std::move(columns).value();
    wanted.only = typed.value(option::only);
    wanted.summary = typed.has(option::summary);
    const auto jobs = read_jobs(context);
    const auto required = required_of(context);
    if (!jobs || !required) {
        return Failure{!jobs ? jobs.error() : required.error()};
    }
    wanted.jobs = *jobs;
    wanted.asked.required = *required;
    wanted.asked.rules = typed.value(option::rules);
    wanted.asked.units = context.units();
    wanted.asked.size_search = typed.has(option::size);
    const std::string_view method = typed.value(option::method);
    wanted.asked.method = method == "en13384"    ? BatchMethod::en13384
                          : method == "handbook" ? BatchMethod::handbook
                                                 : BatchMethod::none;
    if (typed.value(option::fields).empty()) {
        add_asked_columns(wanted);
    }
    if (wanted.format == BatchFormat::html) {
        for (const OptionInfo* option :
             {&option::fields, &option::values, &option::only, &option::resume}) {
            if (typed.has(*option)) {
                return Failure{fmt::format("{} chooses lines; a page is about all, so leave it out",
                                           option->name)};
            }
        }
    }
    if (wanted.format == BatchFormat::table && typed.has(option::values)) {
        return Failure{std::string{"--values goes with --format csv or ndjson, or with an --output "
                                   "that ends so; the table has no room for them"}};
    }
    if (auto refused = take_values(typed.value(option::values), wanted)) {
        return Failure{*std::move(refused)};
    }
    return wanted;
}

bool is_wanted(const BatchRow& row, std::string_view only) {
    return only.empty() || (only == "passing" && row.outcome == Outcome::pass)
           || (only == "failing" && row.outcome != Outcome::pass && row.outcome != Outcome::open)
           || only == name(row.outcome);
}

std::string header_of(const BatchWanted& wanted) {
    std::string header;
    if (wanted.format == BatchFormat::csv) {
        append_csv_header(wanted.columns, header);
    } else if (wanted.format == BatchFormat::table) {
        append_table_header(header);
    }
    return header;
}

/// The command as far as the answer depends on it, and the version that gives it.
std::string command_of(const BatchWanted& wanted) {
    std::vector<std::string_view> columns;
    for (const auto* column : wanted.columns.answers) {
        columns.push_back(column->key);
    }
    std::string command = fmt::format("fluewright {} batch --format {} --fields {}",
                                      version_number(),
                                      name(wanted.format),
                                      fmt::join(columns, ","));
    if (!wanted.only.empty()) {
        command += fmt::format(" --only {}", wanted.only);
    }
    const BatchAsked& asked = wanted.asked;
    if (asked.required != Required{}) {
        command += fmt::format(" --require {}", list_of(asked.required));
    }
    if (!asked.rules.empty()) {
        command += fmt::format(" --rules {}", asked.rules);
    }
    if (asked.method != BatchMethod::none) {
        command += fmt::format(" --method {}", name(asked.method));
    }
    command += asked.size_search ? " --size" : "";
    if (asked.units) {
        command += *asked.units == UnitSystem::us ? " --units us" : " --units metric";
    }
    for (std::size_t i = 0; i < asked.values.size(); ++i) {
        command += (i == 0 ? " --values " : ",") + asked.values[i].name;
    }
    return command;
}

/// The columns with what they mean, for --fields help.
std::string columns_help() {
    std::string text;
    for (const results::ColumnInfo& column : batch_columns()) {
        const std::string_view unit = si_unit(column.kind);
        text += fmt::format("{}{}\n", column.key, column.by_default ? " *" : "");
        text += paragraph(unit.empty() ? std::string{column.meaning}
                                       : fmt::format("{} [{}]", column.meaning, unit),
                          {.first = 4, .rest = 4},
                          Style{}.width);
    }
    return text + "* written where --fields is not given\n";
}

} // namespace fluewright::cli
