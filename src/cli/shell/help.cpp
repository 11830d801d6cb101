#include "help.hpp"

#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <array>
#include <fmt/format.h>

namespace fluewright::cli {
namespace {

constexpr std::size_t help_width = 79;
constexpr Indent flush_left{.first = 0, .rest = 0};

constexpr std::string_view about_program =
    "fluewright works out whether a heater's flue will draw: draft and margin in every condition "
    "and in every weather, what is wrong with the run, and the pipe size that suits it.";

constexpr std::string_view no_approval =
    "What it prints is arithmetic, not approval: local code, the makers' instructions and the "
    "people licensed for the work come first.";

using Pair = HelpPair;

constexpr std::array exit_statuses{
    Pair{"0", "done; of a check: what counts is decided and nothing of it short (see --require)"},
    Pair{"1", "computed, and something that counts is short or not decided"},
    Pair{"2", "usage or input at fault; nothing was computed"},
    Pair{"3", "cannot read or write"},
    Pair{"4", "the solver or the program failed; please report it"},
};

constexpr std::array variables{
    Pair{"NO_COLOR", "when set and not empty: no color"},
    Pair{"FORCE_COLOR, CLICOLOR_FORCE", "when set, not empty and not 0: color everywhere"},
    Pair{"TERM", "when it is dumb: no color"},
    Pair{"LC_ALL, LC_CTYPE, LANG", "ASCII only, unless the first of them set names UTF-8"},
};

Style plain() {
    Style style;
    style.width = help_width;
    return style;
}

template <std::size_t N>
std::string pairs(const std::array<Pair, N>& rows) {
    TextTable table({{}, {.wraps = true}});
    for (const Pair& row : rows) {
        table.add({{std::string{row[0]}}, {std::string{row[1]}}});
    }
    return table.text(plain(), 2);
}

std::string option_names(const OptionInfo& option) {
    std::string names = option.short_name.empty() ? "" : fmt::format("{}, ", option.short_name);
    names += option.name;
    if (option.takes_value()) {
        names += ' ';
        names += option.value_name;
    }
    return names;
}

std::string option_table(std::span<const OptionInfo* const> rows) {
    TextTable table({{}, {.wraps = true}});
    for (const OptionInfo* option : rows) {
        std::string text{option->text};
        if (!option->choices.empty()) {
            text += fmt::format(" [{}]", fmt::join(option->choices, ", "));
        }
        table.add({{option_names(*option)}, {std::move(text)}});
    }
    return table.text(plain(), 2);
}

std::string command_table() {
    TextTable table({{}, {.wraps = true}});
    for (const Command* command : commands()) {
        table.add({{std::string{command->name}}, {std::string{command->summary}}});
    }
    return table.text(plain(), 2);
}

std::string usage_of(const Command& command) {
    std::string usage = fmt::format("fluewright {}", command.name);
    if (!command.word.name.empty()) {
        usage += command.word.required ? fmt::format(" {}", command.word.name)
                                       : fmt::format(" [{}]", command.word.name);
    }
    return usage + " [OPTIONS]";
}

} // namespace

std::string_view what_it_is() {
    return about_program;
}

std::string_view approval_words() {
    return no_approval;
}

std::span<const HelpPair> exit_status_rows() {
    return exit_statuses;
}

std::span<const HelpPair> variable_rows() {
    return variables;
}

std::string_view version_number() {
    return FLUEWRIGHT_VERSION;
}

std::string version_text() {
    const std::size_t rows = catalog::fuels().size() + catalog::materials().size()
                             + catalog::walls().size() + catalog::fittings().size()
                             + catalog::trade_sizes().size() + catalog::clay_liners().size()
                             + catalog::appliance_defaults().size() + catalog::defaults().size();
    return fmt::format("fluewright {}\n"
                       "{} rows of data from {} sources\n"
                       "built with {} {}, C++ {}\n",
                       version_number(),
                       rows,
                       catalog::sources().size(),
                       FLUEWRIGHT_COMPILER,
                       FLUEWRIGHT_BUILD_TYPE,
                       __cplusplus);
}

std::string short_help() {
    std::string out = paragraph(about_program, flush_left, help_width);
    out += "\nStart with:\n"
           "  fluewright new run.json                asks, and writes the first file\n"
           "  fluewright check run.json              will it draw?\n"
           "  fluewright draw run.json -o run.svg    the same as a picture\n"
           "\nCommands:\n";
    out += command_table();
    out += "\n`fluewright --help` tells more, `fluewright COMMAND --help` about one command.\n";
    return out;
}

std::string full_help() {
    static constexpr std::array<const OptionInfo*, 2> top{&option::help, &option::version};
    std::string out = "Usage: fluewright COMMAND [OPTIONS]\n\nExamples:\n";
    for (const Command* command : commands()) {
        out += fmt::format("  {}\n", command->example);
    }
    out += '\n' + paragraph(about_program, flush_left, help_width);
    out += "\nCommands:\n" + command_table();
    out += "\nOptions:\n" + option_table(top);
    out += "\nExit status:\n" + pairs(exit_statuses);
    out += "\nEnvironment:\n" + pairs(variables);
    out += '\n' + paragraph(no_approval, flush_left, help_width);
    return out;
}

std::string command_help(const Command& command) {
    std::string out =
        fmt::format("Usage: {}\n\nExample:\n  {}\n\n", usage_of(command), command.example);
    out += paragraph(command.about, flush_left, help_width);
    if (!command.word.name.empty()) {
        TextTable table({{}, {.wraps = true}});
        table.add({{std::string{command.word.name}}, {std::string{command.word.text}}});
        out += "\nArgument:\n" + table.text(plain(), 2);
    }
    out += "\nOptions:\n" + option_table(options_of(command));
    out += "\nExit status:\n" + pairs(exit_statuses);
    return out;
}

} // namespace fluewright::cli
