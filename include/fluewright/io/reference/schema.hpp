#pragma once

#include <string>

/// Documents made from the tables, so that they cannot fall behind the program.
namespace fluewright {

/// The JSON Schema (draft 2020-12) of the input file, for completion and checks in an editor. It
/// is looser than the reader: units and ranges of quantities are in its descriptions only.
[[nodiscard]] std::string input_schema();

/// The JSON Schema (draft 2020-12) of every answer in JSON and of a line of a batch: strict, no key
/// but those it names.
[[nodiscard]] std::string result_schema();

/// docs/output.md: every record of the answers, with what stands under each key.
[[nodiscard]] std::string output_reference_markdown();

/// docs/input.md: every key with its meaning, an example, its range and what stands in for it.
[[nodiscard]] std::string input_reference_markdown();

/// docs/checks.md: every matter with its meaning and remedy, and the checks that speak of it.
[[nodiscard]] std::string checks_reference_markdown();

} // namespace fluewright
