#pragma once

#include "fluewright/model/run/case.hpp"

#include <optional>
#include <string>
#include <vector>

/// Changes to the text of a file, as a person would type them.
namespace fluewright::agreement {

/// The file with the assumed values in the places where the file could have said them; nothing
/// where the reader does not take them. Weathers and the open end are written as the file would
/// have them, since their places are lists.
[[nodiscard]] std::optional<Installation> with_written(const Installation& written,
                                                       const std::vector<Assumption>& assumptions);

/// Whether an assumption has no key of its own: what the program takes for every installation, and
/// what follows from another key.
[[nodiscard]] bool has_no_key(const Assumption& assumption);

/// The installation, written as a file and read again. Ends the test where the reader does not take
/// it.
[[nodiscard]] Installation through_file(const Installation& installation);

} // namespace fluewright::agreement
