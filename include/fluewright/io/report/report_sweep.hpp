#pragma once

#include "fluewright/advice/study/sweep.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"

#include <string>
#include <string_view>

namespace fluewright {

/// The answer, then every value against every state; two quantities as a grid.
[[nodiscard]] std::string sweep_text(const Sweep& sweep, const Style& style);

/// The answer in its envelope; docs/output.md, sweep_answer.
[[nodiscard]] std::string sweep_json(const Sweep& sweep, const AnswerInput& input);

/// One line for each point and state, with a heading line (RFC 4180); SI.
[[nodiscard]] std::string sweep_csv(const Sweep& sweep);

/// A chart that stands alone: lines of draft and door over one quantity, a map of the least margin
/// over two, each with the line where the need is just met.
[[nodiscard]] std::string sweep_svg(const Sweep& sweep);

} // namespace fluewright
