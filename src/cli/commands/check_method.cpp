#include "check_method.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "fluewright/io/report/report_method.hpp"
#include "fluewright/model/standards/en13384.hpp"
#include "fluewright/model/standards/handbook.hpp"

#include <array>
#include <fmt/core.h>

namespace fluewright::cli {

namespace {

/// What only the physics asks for; a method would pass over it without a word.
constexpr std::array of_physics{&option::sizes,
                                &option::rules,
                                &option::require,
                                &option::no_size_search,
                                &option::samples,
                                &option::seed,
                                &option::jobs,
                                &option::details};

} // namespace

int run_method(const Context& context) {
    for (const OptionInfo* const row : of_physics) {
        if (context.arguments.has(*row)) {
            return refuse(context,
                          wrong_input,
                          fmt::format("{} goes with --method physics, the default, not with {}",
                                      row->name,
                                      context.arguments.value(option::method)));
        }
    }
    const auto opened = open_case(context);
    if (!opened) {
        return opened.error();
    }
    const MethodResult result = context.arguments.value(option::method) == "handbook"
                                    ? handbook::calculate(opened->installation)
                                    : european::calculate(opened->installation);
    const Case& resolved = opened->installation;
    const Checked checked =
        checks_of_file(opened->written, resolved, solve(resolved, Detail::stations));
    MethodReportOptions report{.style = context.style,
                               .dangers = present_dangers(checked),
                               .not_decided = fire_not_decided(checked, resolved.units),
                               .input = answer_input(*opened)};
    report.style.units = resolved.units;
    const bool decided = report.dangers.empty() && report.not_decided.empty();
    return write_answer(context,
                        context.wants_json() ? method_json(result, resolved.assumptions, report)
                                             : method_text(result, report),
                        result.met() && decided ? all_pass : falls_short);
}

} // namespace fluewright::cli
