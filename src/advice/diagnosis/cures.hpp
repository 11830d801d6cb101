#pragma once

#include "fluewright/advice/diagnosis/tables.hpp"
#include "fluewright/advice/trial/trial.hpp"

#include <vector>

/// Flaws of a design and what the run looks like without them.
namespace fluewright::diagnosis {

/// The installation without the flaw named by a cause: one trial for each way to take it away, by
/// the remedies there are for it and where there is none with the flaw itself gone; empty where it
/// does not have the flaw. What comes of each is what a check of the changed installation says.
[[nodiscard]] std::vector<Trial>
cured(const Cause& cause, const Installation& written, const Case& resolved);

} // namespace fluewright::diagnosis
