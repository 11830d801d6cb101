#pragma once

#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/io/results/answer.hpp"
#include "fluewright/io/text/style.hpp"
#include "fluewright/model/run/case.hpp"
#include "fluewright/model/standards/method.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// A calculation by a named method, line by line, in SI as its document has it.
namespace fluewright {

struct MethodReportOptions {
    Style style;
    std::vector<PresentDanger> dangers; ///< of the run, which no method looks at
    std::string not_decided;            ///< fire_not_decided() of the run
    AnswerInput input;
};

/// The dangers of the run, then verdict, conditions, the full physics beside them, every term by
/// its symbol, notes, cautions.
[[nodiscard]] std::string method_text(const MethodResult& result,
                                      const MethodReportOptions& options);

/// The answer in its envelope; docs/output.md, method_answer. Terms carry their unit in words,
/// since their names are those of the document. `assumptions`: of the case.
[[nodiscard]] std::string method_json(const MethodResult& result,
                                      std::span<const Assumption> assumptions,
                                      const MethodReportOptions& options);

} // namespace fluewright
