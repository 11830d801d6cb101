#pragma once

#include "fluewright/advice/assessment.hpp"
#include "json_text.hpp"

/// The JSON of checks and findings. Numbers are SI.
namespace fluewright::report {

/// Every check with its outcome, by the table.
[[nodiscard]] json::Value checks_json(const Assessment& assessment);

/// What is not met, each with its sources.
[[nodiscard]] json::Value findings_json(const Findings& findings);

} // namespace fluewright::report
