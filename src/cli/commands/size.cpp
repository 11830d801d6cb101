#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/core/quantity/quantity_range.hpp"
#include "fluewright/io/report/report_size.hpp"

#include <algorithm>
#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

int run_size(const Context& context) {
    const Arguments& arguments = context.arguments;
    SizeTableOptions options;
    options.separate = arguments.has(option::separate);
    options.units = context.units();
    if (arguments.has(option::sizes)) {
        options.sizes =
            arguments.value(option::sizes) == "inch" ? TradeSizes::inch : TradeSizes::metric;
    }
    if (arguments.has(option::heights)) {
        auto heights = parse_range(arguments.value(option::heights), Kind::length);
        if (!heights) {
            context.streams.err << "fluewright: --heights: " << heights.error() << '\n';
            return wrong_input;
        }
        options.heights_m = std::move(heights).value();
    }
    const auto required = required_of(context);
    if (!required) {
        return refuse(context, wrong_input, required.error());
    }
    options.required = *required;
    const auto written = read_written(context, arguments.words.front());
    if (!written) {
        return written.error();
    }
    const auto table = tabulate_sizes(written->installation, options);
    if (!table) {
        return tell_faults(context, table.error(), *written);
    }
    const bool works =
        table->suggested && table->rows[*table->suggested].works && !table->leaves_open;
    const bool no_answer =
        std::any_of(table->rows.begin(), table->rows.end(), [](const SizeRow& row) {
            return row.score && gave_up(row.score->states);
        });
    const int status = unless_given_up(context, no_answer, works ? all_pass : falls_short);
    if (context.wants_json()) {
        return write_answer(context, size_table_json(*table, answer_input(*written)), status);
    }
    const std::string_view format = arguments.value(option::chart_format);
    if (format == "csv") {
        return write_answer(context, size_table_csv(*table), status);
    }
    if (format == "svg") {
        return write_answer(context, size_table_svg(*table), status);
    }
    Style style = context.style;
    style.units = table->present.units;
    return write_answer(context, size_table_text(*table, style), status);
}

constexpr std::array size_options{&option::heights,
                                  &option::separate,
                                  &option::sizes,
                                  &option::require,
                                  &option::chart_format,
                                  &option::json,
                                  &option::units,
                                  &option::output};

} // namespace

extern const Command size_command;
const Command size_command{
    .name = "size",
    .summary = "which pipe size? every trade size against every condition",
    .about =
        "Tries every trade size throughout the run, and with --heights every height of the "
        "chimney top, in every condition: margins, how far the door opens, gas at the chimney "
        "top, its speed, and the condition or rule that rules a size out. Suggests one. Ends "
        "with status 1 when none makes the run pass what counts, or something that counts is not "
        "decided.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = size_options,
    .example = "fluewright size run.json --heights 3..7m:5",
    .run = run_size};

} // namespace fluewright::cli
