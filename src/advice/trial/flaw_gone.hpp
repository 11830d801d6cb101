#pragma once

#include "fluewright/advice/diagnosis/cause_id.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/installation.hpp"

#include <string>

namespace fluewright {

/// The installation without a flaw of its design that no part, tool or habit takes away. Failure:
/// where it has no such flaw.
[[nodiscard]] Result<Installation, std::string> without_flaw(const Installation& written,
                                                             diagnosis::CauseId cause);

} // namespace fluewright
