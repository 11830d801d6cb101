#pragma once

#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <string>
#include <string_view>

namespace fluewright {

/// The installation without a flaw of its design that no part, tool or habit takes away. Failure:
/// where it has no such flaw.
[[nodiscard]] Result<Installation, std::string> without_flaw(const Installation& written,
                                                             std::string_view cause);

} // namespace fluewright
