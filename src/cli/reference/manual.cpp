#include "manual.hpp"

#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace fluewright::cli {
namespace {

constexpr std::size_t line_width = 76;

/// Text that mdoc takes as it is: no escape and no macro of its own, ASCII alone.
std::string as_text(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i, 2) == "\u00b1") {
            out += "\\(+-";
            ++i;
        } else if (text[i] == '\\') {
            out += "\\e";
        } else {
            out += text[i];
        }
    }
    return out.starts_with('.') || out.starts_with('\'') ? "\\&" + out : out;
}

/// A paragraph, each sentence on a line of its own as mdoc wants it.
std::string sentences(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const std::size_t stop = std::min(text.find(". "), text.size());
        for (const std::string& line :
             wrap(std::string{text.substr(0, std::min(stop + 1, text.size()))}, line_width)) {
            out += as_text(line) + '\n';
        }
        text.remove_prefix(std::min(stop + 2, text.size()));
    }
    return out;
}

/// "--format" as Fl has it: without its first dash.
std::string_view flag(std::string_view name) {
    return name.substr(1);
}

std::string option_item(const OptionInfo& option) {
    std::string out = ".It";
    if (!option.short_name.empty()) {
        out += fmt::format(" Fl {} ,", flag(option.short_name));
    }
    out += fmt::format(" Fl {}", flag(option.name));
    if (option.takes_value()) {
        out += fmt::format(" Ar {}", option.value_name);
    }
    out += '\n' + sentences(option.text);
    if (!option.choices.empty()) {
        out += sentences(fmt::format("One of {}.", fmt::join(option.choices, ", ")));
    }
    return out;
}

std::string list(const std::string& items) {
    return ".Bl -tag -width Ds\n" + items + ".El\n";
}

std::string command_part(const Command& command) {
    std::string out = fmt::format(".Ss {}\n.Nm\n.Cm {}\n", command.name, command.name);
    if (!command.word.name.empty()) {
        out += fmt::format(".{}Ar {}\n", command.word.required ? "" : "Op ", command.word.name);
    }
    out += ".Op Ar options\n.Pp\n" + sentences(command.about);
    std::string items;
    if (!command.word.name.empty()) {
        items += fmt::format(".It Ar {}\n{}", command.word.name, sentences(command.word.text));
    }
    for (const OptionInfo* option : options_of(command)) {
        items += option_item(*option);
    }
    return out + list(items);
}

std::string pair_items(std::span<const HelpPair> rows, std::string_view macro) {
    std::string items;
    for (const HelpPair& row : rows) {
        items += fmt::format(".It {} {}\n{}", macro, row[0], sentences(row[1]));
    }
    return list(items);
}

} // namespace

std::string manual_page() {
    std::string out =
        fmt::format(".\\\" Made by `fluewright manual`.\n.Dd {}\n.Dt FLUEWRIGHT 1\n.Os\n"
                    ".Sh NAME\n.Nm fluewright\n.Nd chimney draft and flue sizing\n"
                    ".Sh SYNOPSIS\n.Nm\n.Ar command\n.Op Ar options\n"
                    ".Sh DESCRIPTION\n",
                    FLUEWRIGHT_DATE);
    out += sentences(what_it_is()) + ".Sh COMMANDS\n";
    for (const Command* command : commands()) {
        out += command_part(*command);
    }
    out += ".Sh ENVIRONMENT\n" + pair_items(variable_rows(), "Ev");
    out += ".Sh EXIT STATUS\n" + pair_items(exit_status_rows(), "Li");
    out += ".Sh EXAMPLES\n.Bd -literal -offset indent\n";
    for (const Command* command : commands()) {
        out += as_text(command->example) + '\n';
    }
    out += ".Ed\n.Sh CAVEATS\n" + sentences(approval_words());
    return out;
}

} // namespace fluewright::cli
