#pragma once

#include "fluewright/io/text/style.hpp"
#include "fluewright/model/standards/method.hpp"

#include <string>
#include <string_view>

/// A calculation by a named method, line by line, in SI as its document has it.
namespace fluewright {

struct MethodReportOptions {
    Style style;
    std::string_view version; ///< of the program
    std::string_view file;    ///< as the user named it
};

/// Verdict, conditions, the full physics beside them, every term by its symbol, notes, cautions.
[[nodiscard]] std::string method_text(const MethodResult& result,
                                      const MethodReportOptions& options);

/// The same as JSON: {"schema", "program", "file", "method", "met", "firings", "notes"}. Terms
/// carry their unit in words, since their names are those of the document.
[[nodiscard]] std::string method_json(const MethodResult& result,
                                      const MethodReportOptions& options);

} // namespace fluewright
