#pragma once

#include "fluewright/advice/study/tolerance_study.hpp"

#include <nlohmann/json.hpp>

namespace fluewright::report {

/// Ranges, probabilities and first-order indices. Numbers are SI.
[[nodiscard]] nlohmann::ordered_json tolerances_json(const Assessment& assessment,
                                                     const ToleranceStudy& study);

} // namespace fluewright::report
