#pragma once

#include <string>
#include <vector>

namespace fluewright {

/// One thing wrong with what the user wrote, in words. `pointer` is the JSON pointer (RFC 6901) of
/// the value at fault; line and column are found from it later, and only when there is something
/// to report. Fields with nothing to say stay empty.
struct Fault {
    std::string pointer;
    std::string message; ///< stands alone: lower case, no final stop
    std::string found;   ///< the value as typed
    std::string allowed; ///< the range or the list of words, with units
    std::string help;    ///< the nearest valid word or a right spelling
};

using Faults = std::vector<Fault>;

} // namespace fluewright
