#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/input/piece_price_reader.hpp"
#include "fluewright/io/report/parts_text.hpp"
#include "fluewright/io/report/price_template.hpp"
#include "fluewright/model/resolve/resolve.hpp"

#include <algorithm>
#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

/// The list of --stock, held against the run as well.
Result<std::vector<StockPiece>, int> read_box(const Context& context, const OpenedCase& opened) {
    const std::string_view file = context.arguments.value(option::stock);
    const auto input = read_input(file, context.streams.in, context.files_read);
    if (!input) {
        return Failure{refuse(context, no_access, input.error())};
    }
    auto stock = read_stock(input->text, input->name);
    if (!stock) {
        return Failure{tell_faults(context, stock.error())};
    }
    const Faults faults = box_faults(*stock, opened.written, opened.installation);
    if (!faults.empty()) {
        return Failure{tell_faults(context, locate(faults, input->text, input->name))};
    }
    return std::move(stock).value();
}

Result<PartsWishes, int> read_wishes(const Context& context, const OpenedCase& opened) {
    PartsWishes wishes;
    wishes.thermometer = context.arguments.has(option::thermometer);
    wishes.from_box = context.arguments.has(option::from_box);
    const Faults faults = box_faults(opened.written.stock, opened.written, opened.installation);
    if (!faults.empty()) {
        return Failure{tell_faults(context, locate(faults, opened.text, opened.name))};
    }
    if (context.arguments.has(option::stock)) {
        auto box = read_box(context, opened);
        if (!box) {
            return Failure{box.error()};
        }
        wishes.at_hand = std::move(box).value();
    }
    if (context.arguments.has(option::piece_prices)) {
        auto prices =
            read_beside(context, context.arguments.value(option::piece_prices), read_piece_prices);
        if (!prices) {
            return Failure{prices.error()};
        }
        wishes.prices = std::move(prices).value();
    }
    return wishes;
}

int run_parts(const Context& context) {
    const bool as_template = context.arguments.has(option::price_template);
    if (as_template
        && (context.arguments.has(option::table_format) || context.arguments.has(option::json))) {
        return refuse(
            context, wrong_input, "--price-template has a form of its own; leave out --format");
    }
    const auto opened = open_case(context);
    if (!opened) {
        return opened.error();
    }
    const auto wishes = read_wishes(context, *opened);
    if (!wishes) {
        return wishes.error();
    }
    const auto& own = opened->written.stock;
    const bool any_at_hand =
        !wishes->at_hand.empty()
        || std::any_of(own.begin(), own.end(), [](const auto& p) { return p.count.has_value(); });
    if (wishes->from_box && !any_at_hand) {
        return refuse(context,
                      wrong_input,
                      "--from-box lays what is at hand, and nothing is: name it in a file for "
                      "--stock, or as `stock` with a `count` in the installation");
    }
    const PartsList list = parts_list(opened->written,
                                      opened->installation,
                                      solve(opened->installation, Detail::stations),
                                      *wishes);
    PartsReportOptions report{.style = context.style,
                              .input = answer_input(*opened),
                              .assumptions = opened->installation.assumptions};
    report.style.units = opened->installation.units;
    const std::string_view format = context.arguments.value(option::table_format);
    return write_answer(context,
                        as_template            ? price_template(list, report.style.units)
                        : context.wants_json() ? parts_json(list, report)
                        : format == "csv"      ? parts_csv(list)
                                               : parts_text(list, report),
                        all_pass);
}

constexpr std::array<const OptionInfo*, 9> parts_options{&option::table_format,
                                                         &option::json,
                                                         &option::units,
                                                         &option::stock,
                                                         &option::from_box,
                                                         &option::piece_prices,
                                                         &option::price_template,
                                                         &option::thermometer,
                                                         &option::output};

} // namespace

extern const Command parts_command;
const Command parts_command{
    .name = "parts",
    .summary = "what to buy, what to cut from which end, which adapters",
    .about =
        "Lists what to buy: lengths, fittings, screws, supports, adapters and sealant, with the "
        "weight. Then the cuts, each with the end to measure from, and how far the pipe expands "
        "when "
        "hot. All straights are planned together, with the pipe and fittings "
        "at hand (--stock), so that as little as possible is bought: length, or money with "
        "--prices. --price-template writes a list to put prices in; --from-box shows what the "
        "pieces at hand give alone.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = parts_options,
    .example = "fluewright parts run.json --stock shelf.json",
    .run = run_parts};

} // namespace fluewright::cli
