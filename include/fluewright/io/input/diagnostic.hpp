#pragma once

#include "fluewright/core/fault.hpp"
#include "fluewright/io/results/answer.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Faults with their place in a file, and how they are shown.
namespace fluewright {

struct Diagnostic {
    std::string file; ///< as the user named it; "<stdin>" for standard input
    int line{0};      ///< from 1
    int column{0};    ///< in characters, from 1
    Fault fault;
};

using Diagnostics = std::vector<Diagnostic>;

/// Finds each fault's place by its pointer and sorts by place. A pointer that does not lead to a
/// value in `text` gets the place of the nearest object around it, and an empty `found` is filled
/// with what stands there.
[[nodiscard]] Diagnostics
locate(const Faults& faults, std::string_view text, std::string_view file);

/// One block per diagnostic, at most 20, and last how many there are:
///
///     stove.json:14:22: error: `birhc` is not a known fuel
///       at      /appliance/fuel/name
///       found   "birhc"
///       allowed beech, birch, ...
///       help    did you mean `birch`?
///
///     1 error; nothing was computed
[[nodiscard]] std::string diagnostics_text(const Diagnostics& diagnostics);

/// All of them in the envelope of every answer; docs/output.md, faults.
[[nodiscard]] std::string diagnostics_json(const Diagnostics& diagnostics,
                                           std::string_view command,
                                           const AnswerInput& input);

} // namespace fluewright
