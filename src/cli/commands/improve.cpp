#include "fluewright/advice/remedies/improve.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/shell/progress.hpp"
#include "cli/values/count_option.hpp"
#include "cli/values/remedy_kinds_option.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/advice/unsolved.hpp"
#include "fluewright/io/input/price_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/report/report_improve.hpp"

#include <algorithm>
#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

constexpr std::size_t most_shown = 1000;

/// Writes the installation with one of the changes made; returns the exit status.
int write_plan(const Context& context,
               const Improvement& improvement,
               const Written& written,
               std::size_t number) {
    const auto plan = std::find_if(improvement.plans.begin(),
                                   improvement.plans.end(),
                                   [number](const Plan& p) { return p.rank == number; });
    if (plan == improvement.plans.end()) {
        context.streams.err << "fluewright: there is no change number " << number << " to write; "
                            << improvement.plans.size() << " are shown, --most shows more\n";
        return wrong_input;
    }
    const std::string& file = context.arguments.values(option::write_plan).back();
    const int status =
        write_to_file(context, file, write_installation_like(plan->changed, written.text));
    if (status == all_pass) {
        context.streams.err << "fluewright: change number " << number << " is written to `" << file
                            << "`, without comments"
                            << (written.installation.observed.size() > plan->changed.observed.size()
                                    ? " and without what was observed on the run as it was\n"
                                    : "\n");
    }
    return status;
}

std::string
answer(const Context& context, const Improvement& improvement, const AnswerInput& input) {
    if (context.wants_json()) {
        return improvement_json(improvement, input);
    }
    if (context.arguments.value(option::table_format) == "csv") {
        return improvement_csv(improvement);
    }
    Style style = context.style;
    style.units = improvement.present.installation.units;
    return improvement_text(improvement, style);
}

/// What the user asks of the search; the number of the change to write is 0 for none.
struct Wanted {
    ImproveOptions search;
    std::size_t write{};
};

Result<Wanted, int> wanted_of(const Context& context) {
    const Arguments& arguments = context.arguments;
    Wanted wanted;
    wanted.search.pairs = arguments.has(option::pairs);
    wanted.search.units = context.units();
    wanted.search.rules = arguments.value(option::rules);
    const auto required = required_of(context);
    if (!required) {
        return Failure{refuse(context, wrong_input, required.error())};
    }
    wanted.search.required = *required;
    auto without = read_remedy_kinds(context, option::without);
    auto only = read_remedy_kinds(context, option::only_kinds);
    const auto budget = read_budget(context);
    for (const auto* read : {&without, &only}) {
        if (!*read) {
            return Failure{refuse(context, wrong_input, read->error())};
        }
    }
    if (!budget) {
        return Failure{refuse(context, wrong_input, budget.error())};
    }
    wanted.search.without = std::move(without).value();
    wanted.search.only = std::move(only).value();
    wanted.search.budget = *budget;
    const auto most = read_count(
        context,
        {.option = option::most, .least = 1, .most = most_shown, .usual = wanted.search.most});
    if (!most) {
        return Failure{refuse(context, wrong_input, most.error())};
    }
    wanted.search.most = *most;
    if (arguments.has(option::write_plan)) {
        const auto number =
            read_whole(arguments.values(option::write_plan).front(),
                       {.option = option::write_plan, .least = 1, .most = most_shown, .usual = 1});
        if (!number) {
            return Failure{refuse(context, wrong_input, number.error())};
        }
        wanted.write = *number;
    }
    const auto jobs = read_jobs(context);
    if (!jobs) {
        return Failure{refuse(context, wrong_input, jobs.error())};
    }
    wanted.search.threads = *jobs;
    if (arguments.has(option::prices)) {
        auto prices = read_beside(context, arguments.value(option::prices), read_prices);
        if (!prices) {
            return Failure{prices.error()};
        }
        wanted.search.prices = std::move(prices).value();
    }
    return wanted;
}

int run_improve(const Context& context) {
    const Arguments& arguments = context.arguments;
    auto wanted = wanted_of(context);
    if (!wanted) {
        return wanted.error();
    }
    const auto written = read_written(context, arguments.words.front());
    if (!written) {
        return written.error();
    }
    Progress progress(context.streams.terminal, context.environment.error_is_terminal);
    wanted->search.progress = progress.teller();
    const auto improvement = improve(written->installation, wanted->search);
    progress.clear();
    if (!improvement) {
        return tell_faults(context, improvement.error(), *written);
    }
    if (wanted->write > 0) {
        const int status = write_plan(context, *improvement, *written, wanted->write);
        if (status != all_pass) {
            return status;
        }
    }
    // No change of pipe decides what the file does not tell.
    const bool passes =
        (improvement->outcome != Improvement::Outcome::hopeless || improvement->present.works())
        && !improvement->present.verdict.leaves_open();
    return write_answer(context,
                        answer(context, *improvement, answer_input(*written)),
                        unless_given_up(context,
                                        gave_up(improvement->present.solution.states),
                                        passes ? all_pass : falls_short));
}

constexpr std::array improve_options{&option::pairs,
                                     &option::most,
                                     &option::prices,
                                     &option::without,
                                     &option::only_kinds,
                                     &option::budget,
                                     &option::write_plan,
                                     &option::rules,
                                     &option::require,
                                     &option::jobs,
                                     &option::table_format,
                                     &option::json,
                                     &option::units,
                                     &option::output};

} // namespace

extern const Command improve_command;
const Command improve_command{
    .name = "improve",
    .summary = "which change makes it work? the least effort first",
    .about = "Tries the changes that can really be made to a run, alone and where that is not "
             "enough in twos and threes, and solves each. Those that make it work come first, the "
             "cheapest before the dearer; what has an amount is set to the least that does it. "
             "Says what each does in every condition and what it may worsen. Clears first what "
             "harms most. Of a run that passes what counts it mends upkeep where it can; ends with "
             "status 1 when nothing "
             "that was tried makes it pass, or something that counts is not decided.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = improve_options,
    .example = "fluewright improve run.json --write-plan 1 better.json",
    .run = run_improve};

} // namespace fluewright::cli
