#include "check_method.hpp"
#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/shell/progress.hpp"
#include "cli/values/count_option.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/json/report_json.hpp"
#include "fluewright/io/report/report_text.hpp"
#include "fluewright/model/standards/listing_basis.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <iostream>
#include <optional>
#include <utility>

namespace fluewright::cli {
namespace {

AssessOptions assess_options(const Context& context) {
    AssessOptions options;
    options.size_search = !context.arguments.has(option::no_size_search);
    options.units = context.units();
    options.rules = context.arguments.value(option::rules);
    if (context.arguments.has(option::sizes)) {
        options.sizes = context.arguments.value(option::sizes) == "inch" ? TradeSizes::inch
                                                                         : TradeSizes::metric;
    }
    return options;
}

Result<ToleranceOptions, std::string> tolerance_options(const Context& context) {
    constexpr std::uint64_t fewest = 100;
    constexpr std::uint64_t most = 1'000'000;
    const ToleranceOptions usual;
    const auto runs = read_count(
        context, {.option = option::samples, .least = fewest, .most = most, .usual = usual.runs});
    const auto seed = read_seed(context);
    const auto jobs = read_jobs(context);
    if (!runs || !seed || !jobs) {
        return Failure{!runs ? runs.error() : !seed ? seed.error() : jobs.error()};
    }
    return ToleranceOptions{.runs = *runs, .seed = *seed, .jobs = *jobs};
}

int status_of(const Context& context, const Assessment& assessment) {
    return unless_given_up(context,
                           gave_up(assessment.solution.states),
                           assessment.passes_decided() ? all_pass : falls_short);
}

int run_check(const Context& context) {
    const std::string_view method = context.arguments.value(option::method);
    const bool by_listing = context.arguments.value(option::basis) == "listing";
    if (!method.empty() && method != "physics") {
        return by_listing ? refuse(context, wrong_input, "--basis has no effect with that --method")
                          : run_method(context);
    }
    if (context.arguments.has(option::requirements) && context.wants_json()) {
        return refuse(context, wrong_input, "--requirements is a text; it goes with no json");
    }
    if (context.arguments.has(option::sizes) && context.arguments.has(option::no_size_search)) {
        return refuse(context, wrong_input, "--sizes has no effect with --no-size-search: choose");
    }
    const std::string& file = context.arguments.words.front();
    auto written = read_written(context, file);
    if (!written) {
        return written.error();
    }
    if (by_listing) {
        std::optional<Installation> listed = listing_basis::of(written->installation);
        if (!listed) {
            return refuse(context,
                          wrong_input,
                          "--basis listing is for gas appliances on a gas of the catalog");
        }
        written->installation = std::move(*listed);
    }
    auto study_options = tolerance_options(context);
    if (!study_options) {
        return refuse(context, wrong_input, study_options.error());
    }
    const auto required = required_of(context);
    if (!required) {
        return refuse(context, wrong_input, required.error());
    }
    AssessOptions options = assess_options(context);
    options.required = *required;
    const auto assessment = assess(written->installation, options);
    if (!assessment) {
        return tell_faults(context, assessment.error(), *written);
    }
    const int status = status_of(context, *assessment);
    const TradeAdvice trade = trade_advice(written->installation, *assessment);
    std::optional<ToleranceStudy> study;
    if (has_tolerances(written->installation)) {
        Progress progress(context.streams.terminal, context.environment.error_is_terminal);
        study_options->progress = progress.teller();
        study = study_tolerances(written->installation, *assessment, *study_options);
        progress.clear();
    }
    const ToleranceStudy* const tolerances = study ? &*study : nullptr;
    if (context.wants_json()) {
        return write_answer(context,
                            report_json(*assessment,
                                        {.input = answer_input(*written),
                                         .size_searched = options.size_search,
                                         .trade = &trade,
                                         .tolerances = tolerances}),
                            status);
    }
    ReportOptions report{.style = context.style,
                         .version = version_number(),
                         .file = written->name,
                         .details = context.arguments.has(option::details),
                         .size_searched = options.size_search,
                         .trade = &trade,
                         .tolerances = tolerances};
    report.style.units = assessment->installation.units;
    return write_answer(context,
                        context.arguments.has(option::requirements)
                            ? requirements_text(*assessment, report)
                            : report_text(*assessment, report),
                        status);
}

constexpr std::array<const OptionInfo*, 15> check_options{&option::format,
                                                          &option::json,
                                                          &option::method,
                                                          &option::basis,
                                                          &option::units,
                                                          &option::sizes,
                                                          &option::rules,
                                                          &option::require,
                                                          &option::no_size_search,
                                                          &option::samples,
                                                          &option::seed,
                                                          &option::jobs,
                                                          &option::details,
                                                          &option::requirements,
                                                          &option::output};

} // namespace

extern const Command check_command;
const Command check_command{
    .name = "check",
    .summary = "will it draw? draft, margin, findings and pipe size of a run",
    .about = "Reads an installation, works out its draft in every condition and every weather, and "
             "answers by kind of harm: fire and carbon monoxide, draft, reloading, upkeep. Says "
             "what to do and which pipe size suits the run. The answer is short; --details has all "
             "of it, --requirements what the rules would ask where the file does not say. Ends "
             "with status 1 when something that counts falls short or is not decided; --require "
             "chooses what counts.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = check_options,
    .example = "fluewright check run.json",
    .run = run_check};

} // namespace fluewright::cli
