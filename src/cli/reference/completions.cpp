#include "completions.hpp"

#include "cli/shell/command.hpp"

#include <array>
#include <fmt/format.h>

namespace fluewright::cli {
namespace {

constexpr std::array<std::string_view, 3> shells{"bash", "zsh", "fish"};

bool is_file(std::string_view word) {
    return word.find("FILE") != std::string_view::npos;
}

std::string with(std::string_view text, char letter, std::string_view instead) {
    std::string out;
    for (const char c : text) {
        c == letter ? out += instead : out += c;
    }
    return out;
}

/// Between single quotes of bash and zsh.
std::string quoted(std::string_view text) {
    return '\'' + with(text, '\'', "'\\''") + '\'';
}

std::string names_of(const Command& command) {
    std::string names;
    for (const OptionInfo* option : options_of(command)) {
        names += fmt::format("{}{}", names.empty() ? "" : " ", option->name);
    }
    return names;
}

std::string command_names() {
    std::string names;
    for (const Command* command : commands()) {
        names += fmt::format("{}{}", names.empty() ? "" : " ", command->name);
    }
    return names;
}

std::string bash() {
    std::string out =
        "# bash completion of fluewright; made by `fluewright completions bash`\n"
        "_fluewright() {\n"
        "  local current=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD-1]}\n"
        "  COMPREPLY=()\n"
        "  if [[ $COMP_CWORD -eq 1 ]]; then\n";
    out += fmt::format("    COMPREPLY=($(compgen -W '{} --help --version' -- \"$current\"))\n"
                       "    return\n  fi\n"
                       "  case \"${{COMP_WORDS[1]}} $previous\" in\n",
                       command_names());
    for (const Command* command : commands()) {
        for (const OptionInfo* option : options_of(*command)) {
            if (!option->choices.empty()) {
                out += fmt::format("    '{} {}') COMPREPLY=($(compgen -W '{}' -- \"$current\")); "
                                   "return ;;\n",
                                   command->name,
                                   option->name,
                                   fmt::join(option->choices, " "));
            } else if (option->takes_value() && !is_file(option->value_name)) {
                out += fmt::format("    '{} {}') return ;;\n", command->name, option->name);
            }
        }
    }
    out += "  esac\n  case \"${COMP_WORDS[1]}\" in\n";
    for (const Command* command : commands()) {
        out += fmt::format("    {}) [[ $current == -* ]] && COMPREPLY=($(compgen -W '{}' -- "
                           "\"$current\")) && return ;;\n",
                           command->name,
                           names_of(*command));
    }
    return out
           + "  esac\n  COMPREPLY=($(compgen -f -- \"$current\"))\n}\n"
             "complete -o filenames -F _fluewright fluewright\n";
}

/// The value of an option as _arguments of zsh has it; nothing for a flag.
std::string zsh_value(const OptionInfo& option) {
    if (!option.takes_value()) {
        return {};
    }
    if (!option.choices.empty()) {
        return fmt::format(":{}:({})", option.value_name, fmt::join(option.choices, " "));
    }
    return fmt::format(
        ":{}:{}", with(option.value_name, ':', ""), is_file(option.value_name) ? "_files" : " ");
}

/// The text of an option as it stands between the brackets of _arguments.
std::string zsh_text(std::string_view text) {
    return with(with(with(text, '[', "("), ']', ")"), ':', "\\:");
}

std::string zsh() {
    std::string out = "#compdef fluewright\n# made by `fluewright completions zsh`\n"
                      "_fluewright() {\n  local -a commands\n  commands=(\n";
    for (const Command* command : commands()) {
        out +=
            fmt::format("    {}\n", quoted(fmt::format("{}:{}", command->name, command->summary)));
    }
    out += "  )\n  if (( CURRENT == 2 )); then\n    _describe command commands\n    return\n  fi\n"
           "  local name=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $name in\n";
    for (const Command* command : commands()) {
        out += fmt::format("    {})\n      _arguments", command->name);
        for (const OptionInfo* option : options_of(*command)) {
            out += fmt::format(" \\\n        {}",
                               quoted(fmt::format("{}{}[{}]{}",
                                                  option->repeats ? "*" : "",
                                                  option->name,
                                                  zsh_text(option->text),
                                                  zsh_value(*option))));
        }
        if (!command->word.name.empty()) {
            out += fmt::format(" \\\n        '*:{}:{}'",
                               command->word.name,
                               is_file(command->word.name) ? "_files" : " ");
        }
        out += "\n      ;;\n";
    }
    return out + "  esac\n}\n_fluewright \"$@\"\n";
}

/// Between single quotes of fish.
std::string fish_quoted(std::string_view text) {
    return '\'' + with(with(text, '\\', "\\\\"), '\'', "\\'") + '\'';
}

std::string fish() {
    std::string out = "# made by `fluewright completions fish`\n"
                      "complete -c fluewright -n __fish_use_subcommand -f\n";
    for (const Command* command : commands()) {
        out += fmt::format("complete -c fluewright -n __fish_use_subcommand -a {} -d {}\n",
                           command->name,
                           fish_quoted(command->summary));
        for (const OptionInfo* option : options_of(*command)) {
            out += fmt::format("complete -c fluewright -n '__fish_seen_subcommand_from {}' -l {}",
                               command->name,
                               option->name.substr(2));
            if (!option->short_name.empty()) {
                out += fmt::format(" -s {}", option->short_name.substr(1));
            }
            if (!option->choices.empty()) {
                out += fmt::format(" -x -a '{}'", fmt::join(option->choices, " "));
            } else if (option->takes_value()) {
                out += is_file(option->value_name) ? " -r" : " -x";
            }
            out += fmt::format(" -d {}\n", fish_quoted(option->text));
        }
    }
    return out;
}

} // namespace

std::span<const std::string_view> completion_shells() {
    return shells;
}

std::string completions_for(std::string_view shell) {
    return shell == "bash" ? bash() : shell == "zsh" ? zsh() : shell == "fish" ? fish() : "";
}

} // namespace fluewright::cli
