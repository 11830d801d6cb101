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
    std::string_view version{};         ///< of the program
    std::string_view file{};            ///< as the user named it
    bool details{false};                ///< everything; otherwise what fits a screen or two
    bool size_searched{true};           ///< otherwise the size line says that it was not computed
    const TradeAdvice* trade{};         ///< joints, heat and upkeep, where they are wanted
    const ToleranceStudy* tolerances{}; ///< where the file gives any
};

/// The verdict by kind of harm, the conditions in the weather that decides, size, findings,
/// cautions; with details all weathers, what the trade says, spread, profiles, assumptions and what
/// was understood as well. Lines of at most style.width columns.
[[nodiscard]] std::string report_text(const Assessment& assessment, const ReportOptions& options);

/// What every check that the file does not decide would ask, a line each, along the run.
[[nodiscard]] std::string requirements_text(const Assessment& assessment,
                                            const ReportOptions& options);

} // namespace fluewright
