#pragma once

#include "command.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"

/// Diagnosis as a dialogue: a check is proposed, its answer taken, the causes weighed anew.
namespace fluewright::cli {

/// Asks until one cause stands out, nothing worth asking is left, or the answers end. Returns the
/// last diagnosis.
[[nodiscard]] Diagnosis ask(const Context& context, const Style& style, Diagnoser& diagnoser);

} // namespace fluewright::cli
