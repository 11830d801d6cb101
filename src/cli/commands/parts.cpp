#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/report/parts_text.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

int run_parts(const Context& context) {
    const auto opened = open_case(context);
    if (!opened) {
        return opened.error();
    }
    const auto stock =
        context.arguments.has(option::stock)
            ? read_beside(context, context.arguments.value(option::stock), read_stock)
            : Result<std::vector<StockPiece>, int>{std::vector<StockPiece>{}};
    if (!stock) {
        return stock.error();
    }
    const PartsList list = parts_list(opened->written,
                                      opened->installation,
                                      solve(opened->installation, Detail::stations),
                                      *stock);
    PartsReportOptions report{.style = context.style,
                              .input = answer_input(*opened),
                              .assumptions = opened->installation.assumptions};
    report.style.units = opened->installation.units;
    const std::string_view format = context.arguments.value(option::table_format);
    return write_answer(context,
                        context.wants_json() ? parts_json(list, report)
                        : format == "csv"    ? parts_csv(list)
                                             : parts_text(list, report),
                        all_pass);
}

constexpr std::array<const OptionInfo*, 5> parts_options{
    &option::table_format, &option::json, &option::units, &option::stock, &option::output};

} // namespace

extern const Command parts_command;
const Command parts_command{
    .name = "parts",
    .summary = "what to buy, what to cut from which end, which adapters",
    .about =
        "Reads an installation and lists the lengths to buy, the pieces to cut and the end to "
        "measure each from, screws, supports, adapters and sealant, what it all weighs and how "
        "far it grows when hot. The plan of cuts buys as little as possible.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = parts_options,
    .example = "fluewright parts run.json --stock shelf.json",
    .run = run_parts};

} // namespace fluewright::cli
