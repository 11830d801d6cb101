#pragma once

#include "fluewright/advice/study/tolerance_study.hpp"
#include "io/json/json_text.hpp"

namespace fluewright::report {

/// Ranges, probabilities and first-order indices. Numbers are SI.
[[nodiscard]] json::Value tolerances_json(const Assessment& assessment,
                                          const ToleranceStudy& study);

} // namespace fluewright::report
