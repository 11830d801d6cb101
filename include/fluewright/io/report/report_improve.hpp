#pragma once

#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

/// What improve() found, for a fitter and for programs.
namespace fluewright {

/// The answer, the plans with what each does in every state and what it may worsen.
[[nodiscard]] std::string improvement_text(const Improvement& improvement, const Style& style);

/// {"schema", "outcome", "sentence", "plans": [...]}: SI, keys end in the unit.
[[nodiscard]] std::string
improvement_json(const Improvement& improvement, std::string_view version, std::string_view file);

/// One line for each plan and state, with a heading line (RFC 4180); SI.
[[nodiscard]] std::string improvement_csv(const Improvement& improvement);

} // namespace fluewright
