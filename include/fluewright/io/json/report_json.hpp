#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/study/tolerance_study.hpp"
#include "fluewright/advice/upkeep/trade.hpp"
#include "fluewright/io/results/answer.hpp"

#include <string>

namespace fluewright {

struct JsonReportOptions {
    AnswerInput input{};
    bool size_searched{true};           ///< otherwise "size" is null
    const TradeAdvice* trade{};         ///< adds "joints", "hot_surfaces", "building", "upkeep"
    const ToleranceStudy* tolerances{}; ///< adds "tolerances"; otherwise it is null
};

/// The whole assessment as JSON, in the envelope of every answer; docs/output.md, check_answer.
/// Numbers are SI and their keys end in the unit; what was not computed is null, never a number.
[[nodiscard]] std::string report_json(const Assessment& assessment,
                                      const JsonReportOptions& options);

} // namespace fluewright
