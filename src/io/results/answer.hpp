#pragma once

#include "fluewright/io/results/answer.hpp"
#include "fluewright/model/run/case.hpp"
#include "io/json/json_text.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The envelope of every answer in JSON.
namespace fluewright::results {

/// What was assumed of one of the input files.
struct AssumedOf {
    std::string_view file;
    std::span<const Assumption> assumptions;
};

/// {"program", "version", "input", "result", "assumptions", "cautions"}: SI, keys end in the unit,
/// what was not computed is null; ends with a line end. File names may hold any bytes; what is not
/// UTF-8 is replaced, not refused.
[[nodiscard]] std::string answer_text(std::string_view command,
                                      const AnswerInput& input,
                                      const json::Value& result,
                                      std::span<const AssumedOf> assumed);

/// The same where one file is all there is.
[[nodiscard]] std::string answer_text(std::string_view command,
                                      const AnswerInput& input,
                                      const json::Value& result,
                                      std::span<const Assumption> assumptions);

} // namespace fluewright::results
