#include "parse.hpp"

#include "fluewright/core/nearest_word.hpp"

#include <algorithm>
#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace fluewright::cli {
namespace {

std::string joined(std::span<const std::string_view> words) {
    return fmt::format("{}", fmt::join(words, ", "));
}

std::string help_line(const Command& command) {
    return fmt::format("`fluewright {} --help` shows how it is used", command.name);
}

UsageError unknown_option(const Command& command, std::string_view typed) {
    const std::string_view name = typed.substr(0, typed.find('='));
    std::vector<std::string_view> names;
    for (const OptionInfo* option : options_of(command)) {
        names.push_back(option->name);
    }
    const auto nearest = nearest_word(name, names);
    return {.message = fmt::format("`{}` is not an option of {}", name, command.name),
            .help = nearest ? fmt::format("did you mean `{}`?", *nearest) : help_line(command)};
}

UsageError wrong_choice(const OptionInfo& option, std::string_view value) {
    const auto nearest = nearest_word(value, option.choices);
    return {.message = fmt::format("`{}` is not a value of {}", value, option.name),
            .help = nearest ? fmt::format("did you mean `{}`?", *nearest)
                            : fmt::format("it takes one of {}", joined(option.choices))};
}

UsageError missing_value(const OptionInfo& option) {
    return {.message = fmt::format("{} needs a value", option.name),
            .help = option.choices.empty()
                        ? fmt::format("write {} {}", option.name, option.value_name)
                        : fmt::format("it takes one of {}", joined(option.choices))};
}

/// Only an option that may be repeated insists on its value when the arguments are taken apart.
UsageError value_of_repeating(const Command& command) {
    for (const OptionInfo* row : options_of(command)) {
        if (row->repeats) {
            return missing_value(*row);
        }
    }
    return {.message = "the arguments cannot be read", .help = help_line(command)};
}

/// What the packaged parser knows of a command: names only. It takes any number of values, so that
/// what is missing or too much gets words of our own.
struct Parser {
    CLI::App app;
    std::vector<std::pair<const OptionInfo*, CLI::Option*>> options;
    std::vector<std::string> words;

    explicit Parser(const Command& command) {
        app.set_help_flag();
        app.allow_extras(false);
        for (const OptionInfo* row : options_of(command)) {
            std::string names{row->name};
            if (!row->short_name.empty()) {
                names = fmt::format("{},{}", row->short_name, row->name);
            }
            CLI::Option* option = row->takes_value() ? app.add_option(names) : app.add_flag(names);
            if (row->repeats) {
                // One value each time; to take none as well it would have to take any number.
                option->expected(1);
                option->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
            } else if (row->takes_value()) {
                option->expected(0, static_cast<int>(row->values));
                option->multi_option_policy(CLI::MultiOptionPolicy::TakeLast);
            }
            options.emplace_back(row, option);
        }
        app.add_option("words", words)->expected(0, -1);
    }
};

/// The first argument that looks like an option and is none of this command's.
std::string first_unknown(const Parser& parser) {
    const auto left = parser.app.remaining();
    const auto found = std::find_if(
        left.begin(), left.end(), [](const std::string& word) { return word.starts_with('-'); });
    return found == left.end() ? std::string{} : *found;
}

/// The packaged parser would take "--json=no" for a kind of yes.
std::optional<UsageError> flag_with_value(const Command& command,
                                          const std::vector<std::string>& typed) {
    const auto rows = options_of(command);
    for (const std::string& word : typed) {
        if (word == "--") {
            break;
        }
        const std::size_t equals = word.find('=');
        if (equals == std::string::npos) {
            continue;
        }
        const std::string_view name = std::string_view{word}.substr(0, equals);
        if (std::any_of(rows.begin(), rows.end(), [name](const OptionInfo* row) {
                return row->name == name && !row->takes_value();
            })) {
            return UsageError{.message = fmt::format("{} takes no value", name),
                              .help = help_line(command)};
        }
    }
    return std::nullopt;
}

std::optional<UsageError> check_words(const Command& command, const Arguments& arguments) {
    const auto& words = arguments.words;
    if (words.empty() && command.word.required && !command.word.name.empty()) {
        return UsageError{
            .message =
                fmt::format("{} needs {}: {}", command.name, command.word.name, command.word.text),
            .help = fmt::format("for example: {}", command.example)};
    }
    const std::size_t most = command.word.name.empty() ? 0 : 1;
    if (words.size() > most && !command.word.many) {
        return UsageError{.message = fmt::format(
                              "`{}` is one argument too many for {}", words[most], command.name),
                          .help = help_line(command)};
    }
    return std::nullopt;
}

} // namespace

Result<Arguments, UsageError> parse(const Command& command, const std::vector<std::string>& typed) {
    if (auto error = flag_with_value(command, typed)) {
        return Failure{std::move(*error)};
    }
    Parser parser(command);
    try {
        // The packaged parser takes its arguments from the back.
        std::vector<std::string> reversed(typed.rbegin(), typed.rend());
        parser.app.parse(std::move(reversed));
    } catch (const CLI::ExtrasError&) {
        return Failure{unknown_option(command, first_unknown(parser))};
    } catch (const CLI::ArgumentMismatch&) {
        return Failure{value_of_repeating(command)};
    } catch (const CLI::ParseError&) {
        return Failure{
            UsageError{.message = "the arguments cannot be read", .help = help_line(command)}};
    }
    Arguments arguments;
    arguments.words = std::move(parser.words);
    for (const auto& [row, option] : parser.options) {
        if (option->count() == 0) {
            continue;
        }
        arguments.options.insert_or_assign(std::string{row->name},
                                           row->takes_value() ? option->results()
                                                              : std::vector<std::string>{});
    }
    if (arguments.has(option::help)) {
        return arguments;
    }
    for (const auto& [row, option] : parser.options) {
        if (!arguments.has(*row) || !row->takes_value()) {
            continue;
        }
        const std::string_view value = arguments.value(*row);
        if (value.empty() || arguments.values(*row).size() < row->values) {
            return Failure{missing_value(*row)};
        }
        if (!row->choices.empty()
            && std::find(row->choices.begin(), row->choices.end(), value) == row->choices.end()) {
            return Failure{wrong_choice(*row, value)};
        }
    }
    const std::string_view format = arguments.value(option::format);
    if (arguments.has(option::json) && !format.empty() && format != "json") {
        return Failure{UsageError{
            .message = fmt::format("--json and --format {} contradict each other", format),
            .help = help_line(command)}};
    }
    if (auto error = check_words(command, arguments)) {
        return Failure{std::move(*error)};
    }
    return arguments;
}

} // namespace fluewright::cli
