#pragma once

#include "fluewright/advice/checks/check.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <string_view>

namespace fluewright::checking {

/// A check of physics or trade practice; its matter has the same id.
struct OwnCheck {
    std::string_view id;
    Basis basis;
    bool needs_solution;
    std::string_view rule;
    std::string_view applies;
    std::string_view source;
    std::string_view mark;
    Kinds kinds = every_kind; ///< told as not applying to these alone
};

} // namespace fluewright::checking
