#pragma once

#include "environment.hpp"

#include <iosfwd>
#include <string>
#include <vector>

namespace fluewright::cli {

/// The whole program but for the process round it: `arguments` are those behind the program's name.
/// Returns the exit status. Answers go to `out`, complaints to `err`.
[[nodiscard]] int run(const std::vector<std::string>& arguments,
                      const Environment& environment,
                      std::istream& in,
                      std::ostream& out,
                      std::ostream& err);

} // namespace fluewright::cli
