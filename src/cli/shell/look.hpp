#pragma once

#include "command.hpp"

namespace fluewright::cli {

/// Color and letters of the text, from options and environment.
///
/// Color   --color always or never decides; else NO_COLOR, FORCE_COLOR or CLICOLOR_FORCE, then
///          whether standard output is a terminal that is not dumb. Never for --output.
/// Letters  ASCII only unless LC_ALL, LC_CTYPE or LANG, the first one set, names UTF-8
[[nodiscard]] Style look(const Arguments& arguments, const Environment& environment);

} // namespace fluewright::cli
