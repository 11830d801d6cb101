#pragma once

#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"

#include <span>
#include <string>
#include <string_view>

/// What to buy, what to cut, where it grows.
namespace fluewright {

struct PartsReportOptions {
    Style style;
    AnswerInput input;
    std::span<const Assumption> assumptions; ///< of the case
};

[[nodiscard]] std::string parts_text(const PartsList& list, const PartsReportOptions& options);

/// One row for each thing to buy and each cut; lengths in m, weights in kg.
[[nodiscard]] std::string parts_csv(const PartsList& list);

/// The answer in its envelope; docs/output.md, parts_answer.
[[nodiscard]] std::string parts_json(const PartsList& list, const PartsReportOptions& options);

} // namespace fluewright
