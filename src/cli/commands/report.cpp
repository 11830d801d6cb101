#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/shell/progress.hpp"
#include "cli/values/count_option.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/page/report_page.hpp"

#include <array>
#include <optional>

namespace fluewright::cli {
namespace {

int run_report(const Context& context) {
    const auto required = required_of(context);
    const auto jobs = read_jobs(context);
    if (!required || !jobs) {
        return refuse(context, wrong_input, !required ? required.error() : jobs.error());
    }
    const auto written = read_written(context, context.arguments.words.front());
    if (!written) {
        return written.error();
    }
    AssessOptions options;
    options.units = context.units();
    options.rules = context.arguments.value(option::rules);
    options.required = *required;
    if (context.arguments.has(option::sizes)) {
        options.sizes = context.arguments.value(option::sizes) == "inch" ? TradeSizes::inch
                                                                         : TradeSizes::metric;
    }
    const auto assessment = assess(written->installation, options);
    if (!assessment) {
        return tell_faults(context, assessment.error(), *written);
    }
    const TradeAdvice trade = trade_advice(written->installation, *assessment);
    const PartsList parts = parts_list(written->installation, *assessment);
    std::optional<ToleranceStudy> study;
    if (has_tolerances(written->installation)) {
        Progress progress(context.streams.terminal, context.environment.error_is_terminal);
        study = study_tolerances(
            written->installation, *assessment, {.jobs = *jobs, .progress = progress.teller()});
        progress.clear();
    }
    const std::string page = report_page(written->installation,
                                         *assessment,
                                         {.version = version_number(),
                                          .file = written->name,
                                          .trade = &trade,
                                          .parts = &parts,
                                          .tolerances = study ? &*study : nullptr});
    return write_answer(context,
                        page,
                        unless_given_up(context,
                                        gave_up(assessment->solution.states),
                                        assessment->passes_decided() ? all_pass : falls_short));
}

constexpr std::array<const OptionInfo*, 6> report_options{&option::rules,
                                                          &option::require,
                                                          &option::sizes,
                                                          &option::units,
                                                          &option::jobs,
                                                          &option::output};

} // namespace

extern const Command report_command;
const Command report_command{
    .name = "report",
    .summary = "the whole answer as one page to print and hand over",
    .about =
        "Writes one HTML page that holds all it needs. It has what check says by kind of harm, the "
        "drawing, every condition, the profile along the run, the size and the findings. Then come "
        "what the rules would ask, parts and cut sheet, every check with its source, what was "
        "assumed, and cautions. Ends with the status of check: 1 when something that counts falls "
        "short.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = report_options,
    .example = "fluewright report run.json -o run.html",
    .run = run_report};

} // namespace fluewright::cli
