#pragma once

#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// What improve() found, for a fitter and for programs.
namespace fluewright {

/// The answer, the plans with what each does in every state and what it may worsen.
[[nodiscard]] std::string improvement_text(const Improvement& improvement, const Style& style);

/// The answer in its envelope; docs/output.md, improve_answer.
[[nodiscard]] std::string improvement_json(const Improvement& improvement,
                                           const AnswerInput& input);

/// One line for each plan and state, with a heading line (RFC 4180); SI.
[[nodiscard]] std::string improvement_csv(const Improvement& improvement);

} // namespace fluewright
