#include "fluewright/advice/study/sweep.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/shell/progress.hpp"
#include "cli/values/count_option.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/report/report_sweep.hpp"

#include <algorithm>
#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

constexpr std::size_t most_quantities = 2;

Result<std::vector<Varied>, int> varied_of(const Context& context, const Installation& written) {
    std::vector<Varied> over;
    std::size_t points = 1;
    for (const std::string& typed : context.arguments.values(option::over)) {
        auto varied = read_varied(typed, written);
        if (!varied) {
            context.streams.err << "fluewright: --over: " << varied.error() << '\n';
            return Failure{static_cast<int>(wrong_input)};
        }
        points *= varied->values.size();
        over.push_back(std::move(varied).value());
    }
    const std::string fault =
        over.empty() ? "needs --over name=range, such as --over height=3..8m:6"
        : over.size() > most_quantities
            ? "takes --over once or twice; `fluewright vary` writes files for more"
        : over.size() == most_quantities && over[0].key.name == over[1].key.name
            ? "takes two different quantities"
        : points > most_sweep_points ? "solves at most " + std::to_string(most_sweep_points)
                                           + " combinations; these are " + std::to_string(points)
                                     : "";
    if (!fault.empty()) {
        context.streams.err << "fluewright: sweep " << fault << '\n';
        return Failure{static_cast<int>(wrong_input)};
    }
    return over;
}

std::string answer(const Context& context, const Sweep& made, const AnswerInput& input) {
    const std::string_view format = context.arguments.value(option::chart_format);
    if (context.wants_json() || format == "json") {
        return sweep_json(made, input);
    }
    if (format == "csv") {
        return sweep_csv(made);
    }
    if (format == "svg") {
        return sweep_svg(made);
    }
    Style style = context.style;
    style.units = made.present.units;
    return sweep_text(made, style);
}

int run_sweep(const Context& context) {
    const Arguments& arguments = context.arguments;
    SweepOptions options;
    options.units = context.units();
    const auto jobs = read_jobs(context);
    if (!jobs) {
        return refuse(context, wrong_input, jobs.error());
    }
    options.threads = *jobs;
    const auto required = required_of(context);
    if (!required) {
        return refuse(context, wrong_input, required.error());
    }
    options.required = *required;
    const auto written = read_written(context, arguments.words.front());
    if (!written) {
        return written.error();
    }
    auto over = varied_of(context, written->installation);
    if (!over) {
        return over.error();
    }
    Progress progress(context.streams.terminal, context.environment.error_is_terminal);
    options.progress = progress.teller();
    const auto made = sweep(written->installation, std::move(over).value(), options);
    progress.clear();
    if (!made) {
        return tell_faults(context, made.error(), *written);
    }
    const bool any = std::any_of(
        made->points.begin(), made->points.end(), [](const auto& point) { return point.passes(); });
    const bool open = options.required.asks(Harm::fire) && !made->not_decided.empty();
    const bool no_answer =
        std::any_of(made->points.begin(), made->points.end(), [](const auto& point) {
            return point.score && gave_up(point.score->states);
        });
    return write_answer(context,
                        answer(context, *made, answer_input(*written)),
                        unless_given_up(context, no_answer, any && !open ? all_pass : falls_short));
}

constexpr std::array sweep_options{&option::over,
                                   &option::chart_format,
                                   &option::require,
                                   &option::json,
                                   &option::jobs,
                                   &option::units,
                                   &option::output};

} // namespace

extern const Command sweep_command;
const Command sweep_command{
    .name = "sweep",
    .summary = "how does it change? one or two numbers over a range",
    .about =
        "Solves every condition at every value of one number of the file, or of every pair of "
        "two: outdoor, height, diameter, burn_rate, a key such as moisture, or the pointer of "
        "any number, such as /run/0/up. Says from where to where what counts passes. "
        "--format svg draws it. Ends with status 1 when no value does, or something that counts is "
        "not decided.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = sweep_options,
    .example = "fluewright sweep run.json --over outdoor=-20..15degC:8 --over height=3..8m:6",
    .run = run_sweep};

} // namespace fluewright::cli
