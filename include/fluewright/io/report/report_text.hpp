#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/study/tolerance_study.hpp"
#include "fluewright/advice/upkeep/trade.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// The report for a person with a pipe in one hand.
namespace fluewright {

struct ReportOptions {
    Style style{};
    std::string_view version{}; ///< of the program
    std::string_view file{};    ///< as the user named it
    bool details{false};        ///< the profile along the run in every state, and every size tried
    bool size_searched{true};   ///< otherwise the size line says that it was not computed
    const TradeAdvice* trade{}; ///< joints, heat and upkeep, where they are wanted
    const ToleranceStudy* tolerances{}; ///< where the file gives any
};

/// Verdict, states, size, findings, what the trade says, spread, assumptions, what was understood,
/// cautions: in this order, in lines of at most style.width columns.
[[nodiscard]] std::string report_text(const Assessment& assessment, const ReportOptions& options);

} // namespace fluewright
