#pragma once

#include "cli/files/file_identity.hpp"
#include "environment.hpp"
#include "exit_status.hpp"
#include "fluewright/io/text/style.hpp"
#include "options.hpp"

#include <iosfwd>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What a command is and what it is given.
namespace fluewright::cli {

/// The arguments behind the name of a command, sorted out but not yet understood.
struct Arguments {
    /// By "--name": the values in the order they were given; none for a flag.
    std::map<std::string, std::vector<std::string>, std::less<>> options;
    std::vector<std::string> words; ///< what is no option, in order

    [[nodiscard]] bool has(const OptionInfo& option) const {
        return options.find(option.name) != options.end();
    }

    /// The value of an option, the last one given; empty when it was not given.
    [[nodiscard]] std::string_view value(const OptionInfo& option) const {
        const auto given = values(option);
        return given.empty() ? std::string_view{} : std::string_view{given.back()};
    }

    /// All values of an option.
    [[nodiscard]] std::span<const std::string> values(const OptionInfo& option) const {
        const auto found = options.find(option.name);
        return found == options.end() ? std::span<const std::string>{} : found->second;
    }
};

struct Streams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;      ///< complaints; what could steer a terminal comes out escaped
    std::ostream& terminal; ///< the same place, for what is meant to steer it
};

/// All a command works with. It writes its answer with write_answer(), its complaints to
/// streams.err.
struct Context {
    std::string_view command; ///< its name
    const Arguments& arguments;
    const Environment& environment;
    const Streams& streams;
    FilesRead& files_read; ///< so that nothing is written over them
    Style style;

    /// Whether --json or --format json was given.
    [[nodiscard]] bool wants_json() const {
        return arguments.has(option::json) || arguments.value(option::format) == "json";
    }

    /// The units asked for with --units.
    [[nodiscard]] std::optional<UnitSystem> units() const {
        if (!arguments.has(option::units)) {
            return std::nullopt;
        }
        return arguments.value(option::units) == "us" ? UnitSystem::us : UnitSystem::metric;
    }
};

/// The word a command takes beside its options.
struct WordInfo {
    std::string_view name; ///< "FILE"; empty when the command takes none
    std::string_view text;
    bool required{true};
    bool many{false}; ///< any number of them
};

/// One row of the table of commands.
struct Command {
    std::string_view name;
    std::string_view summary; ///< one line
    std::string_view about;   ///< a few sentences for its help
    WordInfo word;
    std::span<const OptionInfo* const> options; ///< beside the common ones
    std::string_view example;                   ///< a whole command line
    int (*run)(const Context& context);
};

/// Every command, in the order of the help. To add one: write src/cli/commands/<name>.cpp with a
/// Command in it, declare that in commands.cpp and list it there.
[[nodiscard]] std::span<const Command* const> commands();

/// The options a command understands: its own, and those that come with them or are common.
[[nodiscard]] std::vector<const OptionInfo*> options_of(const Command& command);

/// The command of that name; null for none. No abbreviations: a script must not change its meaning
/// when a command is added.
[[nodiscard]] const Command* find_command(std::string_view name);

/// "did you mean `check`?", or where all the names are listed.
[[nodiscard]] std::string nearest_command_help(std::string_view typed);

} // namespace fluewright::cli
