#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/io/reference/catalog_report.hpp"

#include <algorithm>
#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

int unknown_table(const Context& context, std::string_view typed) {
    std::vector<std::string_view> ids;
    for (const CatalogName& name : catalog_names()) {
        ids.push_back(name.id);
    }
    context.streams.err << "fluewright: `" << typed << "` is not a table of the catalog; ";
    if (const auto nearest = nearest_word(typed, ids)) {
        context.streams.err << "did you mean `" << *nearest << "`?\n";
    } else {
        context.streams.err << "`fluewright catalog` lists them\n";
    }
    return wrong_input;
}

int run_catalog(const Context& context) {
    const auto& words = context.arguments.words;
    const auto names = catalog_names();
    if (!words.empty() && std::none_of(names.begin(), names.end(), [&](const CatalogName& name) {
            return name.id == words.front();
        })) {
        return unknown_table(context, words.front());
    }
    const CatalogTable table = words.empty() ? catalog_contents() : catalog_table(words.front());
    const std::string_view format = context.arguments.value(option::table_format);
    if (context.wants_json()) {
        return write_answer(context, catalog_json(table, {.version = version_number()}), all_pass);
    }
    if (format == "csv") {
        return write_answer(context, catalog_csv(table), all_pass);
    }
    Style style = context.style;
    style.units = context.units().value_or(UnitSystem::metric);
    return write_answer(context, catalog_text(table, style), all_pass);
}

constexpr std::array<const OptionInfo*, 4> catalog_options{
    &option::table_format, &option::json, &option::units, &option::output};

} // namespace

extern const Command catalog_command;
const Command catalog_command{
    .name = "catalog",
    .summary = "fuels, walls, fittings, sizes and more, with their sources",
    .about = "Prints one of the built-in tables, every row with its source: what a file may name "
             "and what is assumed when it says nothing. Without a name it lists the tables.",
    .word = {.name = "TABLE",
             .text = "fuels, walls, fittings, sizes, liners, materials, appliances, defaults, "
                     "sources, findings, rules or checks",
             .required = false},
    .options = catalog_options,
    .example = "fluewright catalog fuels",
    .run = run_catalog};

} // namespace fluewright::cli
