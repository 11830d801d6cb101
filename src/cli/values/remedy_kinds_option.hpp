#pragma once

#include "cli/shell/command.hpp"
#include "fluewright/advice/remedies/remedy_kind.hpp"
#include "fluewright/core/result.hpp"

#include <optional>
#include <string>
#include <vector>

namespace fluewright::cli {

/// The kinds of change named by an option, parted by commas or by giving it again; empty where it
/// is not given. The failure is the sentence to print, with the nearest kind.
[[nodiscard]] Result<std::vector<RemedyKind>, std::string>
read_remedy_kinds(const Context& context, const OptionInfo& option);

/// The most that a plan may cost; nothing where --budget is not given.
[[nodiscard]] Result<std::optional<double>, std::string> read_budget(const Context& context);

} // namespace fluewright::cli
