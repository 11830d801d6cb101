#pragma once

#include <span>
#include <string>
#include <string_view>

namespace fluewright::cli {

/// The shells that completions can be written for.
[[nodiscard]] std::span<const std::string_view> completion_shells();

/// What completes commands, options and their values in a shell, from the tables that --help is
/// made from; empty for a shell that is none of completion_shells().
[[nodiscard]] std::string completions_for(std::string_view shell);

} // namespace fluewright::cli
