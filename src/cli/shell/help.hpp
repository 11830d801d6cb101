#pragma once

#include "command.hpp"

#include <array>
#include <span>
#include <string>
#include <string_view>

/// Help, made from the tables of commands and options. No line passes 79 columns.
namespace fluewright::cli {

/// A word and what it means.
using HelpPair = std::array<std::string_view, 2>;

[[nodiscard]] std::span<const HelpPair> exit_status_rows();

/// Variables of the environment that are heeded.
[[nodiscard]] std::span<const HelpPair> variable_rows();

/// What the program is for.
[[nodiscard]] std::string_view what_it_is();

/// What must not be taken from its answers.
[[nodiscard]] std::string_view approval_words();

/// What stands there when fluewright is called without arguments.
[[nodiscard]] std::string short_help();

/// fluewright --help
[[nodiscard]] std::string full_help();

/// fluewright COMMAND --help
[[nodiscard]] std::string command_help(const Command& command);

/// fluewright --version: the version alone on the first line, then what it was made with.
[[nodiscard]] std::string version_text();

/// The number alone: "0.1.0".
[[nodiscard]] std::string_view version_number();

} // namespace fluewright::cli
