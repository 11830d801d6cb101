#pragma once

#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/study/compare.hpp"
#include "fluewright/io/results/answer.hpp"

#include <string>

/// The answers of `compare` and `diagnose` as pages of the kind of report_page().
namespace fluewright {

[[nodiscard]] std::string comparison_page(const Comparison& comparison, const AnswerInput& input);

/// What is urgent stands first.
[[nodiscard]] std::string
diagnosis_page(const Diagnosis& diagnosis, const AnswerInput& input, UnitSystem units);

} // namespace fluewright
