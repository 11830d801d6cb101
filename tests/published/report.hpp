#pragma once

#include "outcome.hpp"

namespace published {

/// The report and its drawings: file names relative to the folder of the report, with their text.
using Files = std::map<std::string, std::string>;

/// `name` is the file name of the report itself, "validation.md".
[[nodiscard]] Files make_report(const std::vector<Outcome>& outcomes,
                                const std::map<std::string, std::string>& sources,
                                const std::string& name);

} // namespace published
