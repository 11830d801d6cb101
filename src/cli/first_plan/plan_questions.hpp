#pragma once

#include "cli/shell/options.hpp"
#include "fluewright/io/reference/first_plan.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

/// The questions of `new`, in order. Each is held against the answers before it.
namespace fluewright::cli {

struct PlanQuestion {
    const OptionInfo* option; ///< that answers it on the command line
    bool (*concerns)(const FirstPlan& plan);
    std::string (*words)(const FirstPlan& plan);
    /// Puts the answer in; returns why it cannot be, or nothing.
    std::optional<std::string> (*take)(std::string_view typed, FirstPlan& plan);
    bool may_be_unknown{false};
};

[[nodiscard]] std::span<const PlanQuestion> plan_questions();

} // namespace fluewright::cli
