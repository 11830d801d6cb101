#pragma once

#include "altered.hpp"
#include "fluewright/model/states/states.hpp"

/// Flaws of a design and what the run looks like without them.
namespace fluewright::diagnosis {

/// The installation without the flaw named by a cause; nothing where it does not have the flaw.
[[nodiscard]] std::optional<Installation>
cured(const Cause& cause, const Installation& written, const Case& resolved);

} // namespace fluewright::diagnosis
