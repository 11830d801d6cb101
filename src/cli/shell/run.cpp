#include "run.hpp"

#include "command.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "help.hpp"
#include "look.hpp"
#include "parse.hpp"
#include "visible_stream.hpp"

#include <algorithm>
#include <iostream>

namespace fluewright::cli {
namespace {

int complain(std::ostream& err, const UsageError& error) {
    err << "fluewright: " << error.message;
    if (!error.help.empty()) {
        err << "; " << error.help;
    }
    err << '\n';
    return wrong_input;
}

/// Of an argument that begins with a dash.
const OptionInfo* find_option(std::string_view argument) {
    const std::string_view name = argument.substr(0, argument.find('='));
    const auto rows = all_options();
    const auto found = std::find_if(rows.begin(), rows.end(), [name](const OptionInfo* option) {
        return name == option->name || (name.size() > 1 && name == option->short_name);
    });
    return found == rows.end() ? nullptr : *found;
}

/// How many arguments behind it belong to it.
std::ptrdiff_t takes_next(std::string_view argument) {
    const OptionInfo* option = find_option(argument);
    const bool takes =
        option != nullptr && option->takes_value() && argument.find('=') == std::string_view::npos;
    return takes ? static_cast<std::ptrdiff_t>(option->values) : 0;
}

/// An option no command has, before the name of one.
UsageError unknown_option(std::string_view argument) {
    const std::string_view name = argument.substr(0, argument.find('='));
    std::vector<std::string_view> names;
    for (const OptionInfo* option : all_options()) {
        names.push_back(option->name);
    }
    const auto nearest = nearest_word(name, names);
    return {.message = "`" + std::string{name} + "` is not an option",
            .help = nearest ? "did you mean `" + std::string{*nearest} + "`?"
                            : "`fluewright --help` shows how it is used"};
}

/// Where the name of the command stands: options may come before it.
std::vector<std::string>::const_iterator find_name(const std::vector<std::string>& arguments) {
    auto at = arguments.begin();
    while (at != arguments.end() && at->size() > 1 && at->front() == '-') {
        at += std::min(1 + takes_next(*at), std::distance(at, arguments.end()));
    }
    return at;
}

/// What is answered without a command.
int run_alone(const std::vector<std::string>& arguments, const Streams& streams) {
    if (arguments.empty()) {
        streams.out << short_help();
        return all_pass;
    }
    const auto given = [&](const OptionInfo& option) {
        return std::any_of(arguments.begin(), arguments.end(), [&](const std::string& argument) {
            return find_option(argument) == &option;
        });
    };
    if (given(option::help)) {
        streams.out << full_help();
        return all_pass;
    }
    if (given(option::version)) {
        streams.out << version_text();
        return all_pass;
    }
    return complain(streams.err,
                    {.message = "`" + arguments.front() + "` needs a command before it",
                     .help = "`fluewright --help` lists them"});
}

int run_command(const std::vector<std::string>& arguments,
                const Environment& environment,
                const Streams& streams) {
    const auto name = find_name(arguments);
    const auto unknown = std::find_if(arguments.begin(), name, [](const std::string& argument) {
        return argument.size() > 1 && argument.front() == '-' && find_option(argument) == nullptr;
    });
    if (unknown != name) {
        return complain(streams.err, unknown_option(*unknown));
    }
    if (name == arguments.end()) {
        return run_alone(arguments, streams);
    }
    std::vector<std::string> rest(arguments.begin(), name);
    rest.insert(rest.end(), name + 1, arguments.end());
    if (*name == "help") {
        const auto topic = find_name(rest);
        if (topic == rest.end()) {
            streams.out << full_help();
            return all_pass;
        }
        if (const Command* command = find_command(*topic)) {
            streams.out << command_help(*command);
            return all_pass;
        }
        return complain(
            streams.err,
            {.message = "`" + *topic + "` is not a command", .help = nearest_command_help(*topic)});
    }
    const Command* command = find_command(*name);
    if (command == nullptr) {
        return complain(
            streams.err,
            {.message = "`" + *name + "` is not a command", .help = nearest_command_help(*name)});
    }
    const auto parsed = parse(*command, rest);
    if (!parsed) {
        return complain(streams.err, parsed.error());
    }
    if (parsed->has(option::help)) {
        streams.out << command_help(*command);
        return all_pass;
    }
    FilesRead files_read;
    return command->run({.command = command->name,
                         .arguments = *parsed,
                         .environment = environment,
                         .streams = streams,
                         .files_read = files_read,
                         .style = look(*parsed, environment)});
}

} // namespace

int run(const std::vector<std::string>& arguments,
        const Environment& environment,
        std::istream& in,
        std::ostream& out,
        std::ostream& err) {
    VisibleLines lines(err);
    std::ostream complaints(&lines);
    const int status = run_command(arguments, environment, {in, out, complaints, err});
    complaints.flush();
    // A full disk shows only when the last bytes leave.
    out.flush();
    if (!out) {
        err << "fluewright: cannot write the answer to standard output\n";
        return no_access;
    }
    return status;
}

} // namespace fluewright::cli
