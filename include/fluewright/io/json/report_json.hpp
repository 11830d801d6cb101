#pragma once

#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/study/tolerance_study.hpp"
#include "fluewright/advice/upkeep/trade.hpp"

#include <string>
#include <string_view>

namespace fluewright {

struct JsonReportOptions {
    std::string_view version{};         ///< of the program
    std::string_view file{};            ///< as the user named it
    bool size_searched{true};           ///< otherwise "size" is null
    const TradeAdvice* trade{};         ///< adds "joints", "hot_surfaces", "building", "upkeep"
    const ToleranceStudy* tolerances{}; ///< adds "tolerances"; otherwise it is null
};

/// The whole assessment as JSON. Numbers are SI and their keys end in the unit; what was not
/// computed is null, never a number. "schema" counts up when a key changes its meaning or goes.
[[nodiscard]] std::string report_json(const Assessment& assessment,
                                      const JsonReportOptions& options);

} // namespace fluewright
