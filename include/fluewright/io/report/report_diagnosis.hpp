#pragma once

#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// What was seen, why, and what to look at next.
namespace fluewright {

struct DiagnosisReportOptions {
    Style style;
    AnswerInput input;
};

/// What to do now where smoke or gas is in the room; the outcome in a sentence; what was seen and
/// whether it fits; the causes; the next check; assumptions and cautions.
[[nodiscard]] std::string diagnosis_text(const Diagnosis& diagnosis,
                                         const DiagnosisReportOptions& options);

/// The beginning of the report for a dialogue: the outcome and the leading causes in a line each.
[[nodiscard]] std::string so_far_text(const Diagnosis& diagnosis, const Style& style);

/// What to do at once; empty where nothing calls for it.
[[nodiscard]] std::string urgent_text(const Diagnosis& diagnosis, const Style& style);

/// Dangers that the file itself shows, for the beginning; empty where it shows none.
[[nodiscard]] std::string shown_dangers_text(const Diagnosis& diagnosis, const Style& style);

/// A check: what to do, and what to expect under each leading cause.
[[nodiscard]] std::string check_text(const NextCheck& check, const Style& style);

/// The answer in its envelope; docs/output.md, diagnose_answer.
[[nodiscard]] std::string diagnosis_json(const Diagnosis& diagnosis,
                                         const DiagnosisReportOptions& options);

/// A chart that stands alone: what is urgent, then the causes as bars of their probability with
/// the range of their size.
[[nodiscard]] std::string diagnosis_svg(const Diagnosis& diagnosis);

} // namespace fluewright
