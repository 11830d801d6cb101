#include "check_method.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "fluewright/io/report/report_method.hpp"
#include "fluewright/model/standards/en13384.hpp"
#include "fluewright/model/standards/handbook.hpp"

namespace fluewright::cli {

int run_method(const Context& context) {
    const auto opened = open_case(context);
    if (!opened) {
        return opened.error();
    }
    const MethodResult result = context.arguments.value(option::method) == "handbook"
                                    ? handbook::calculate(opened->installation)
                                    : european::calculate(opened->installation);
    MethodReportOptions report{.style = context.style, .input = answer_input(*opened)};
    report.style.units = opened->installation.units;
    return write_answer(context,
                        context.wants_json()
                            ? method_json(result, opened->installation.assumptions, report.input)
                            : method_text(result, report),
                        result.met() ? all_pass : falls_short);
}

} // namespace fluewright::cli
