#pragma once

#include "command.hpp"

#include <string>

/// Help, made from the tables of commands and options. No line passes 79 columns.
namespace fluewright::cli {

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
