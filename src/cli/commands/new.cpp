#include "cli/files/files.hpp"
#include "cli/first_plan/plan_questions.hpp"
#include "cli/shell/asking.hpp"
#include "cli/shell/command.hpp"

#include <array>
#include <filesystem>
#include <fmt/format.h>
#include <iostream>

namespace fluewright::cli {
namespace {

/// Why asking ended before all was answered.
enum class Ended { not_yet, by_end_of_input, by_wish, not_understood };

std::string_view why(Ended ended) {
    switch (ended) {
    case Ended::by_wish:
        return "stopped";
    case Ended::not_understood:
        return "the answers were not understood";
    case Ended::by_end_of_input:
    case Ended::not_yet:
        break;
    }
    return "the answers ended too early";
}

/// One question, until its answer fits or nobody answers. What stood on the command line is the
/// first answer.
Ended put_question(const Context& context, const PlanQuestion& question, FirstPlan& plan) {
    if (context.arguments.has(*question.option)) {
        const auto misfit = question.take(context.arguments.value(*question.option), plan);
        if (!misfit) {
            return Ended::not_yet;
        }
        tell_misfit(context,
                    fmt::format("{} {}: {}",
                                question.option->name,
                                context.arguments.value(*question.option),
                                *misfit),
                    context.style);
    }
    const std::string words =
        question.words(plan) + (question.may_be_unknown ? " (\"don't know\" leaves it out)" : "");
    for (int tries = 0; tries < most_tries; ++tries) {
        const auto line = read_answer(context, words, context.style);
        if (!line) {
            return Ended::by_end_of_input;
        }
        const std::string text = plain_answer(*line);
        if (is_stop_answer(text)) {
            return Ended::by_wish;
        }
        if (is_unknown_answer(text)) {
            if (question.may_be_unknown) {
                return Ended::not_yet;
            }
            tell_misfit(context,
                        "The file cannot do without it; measure it, or `stop` and come back.",
                        context.style);
            continue;
        }
        const auto misfit = question.take(*line, plan);
        if (!misfit) {
            return Ended::not_yet;
        }
        tell_misfit(context, *misfit, context.style);
    }
    return Ended::not_understood;
}

/// An answer that was given and is not asked for, as by --flue of a run that meets no masonry.
const OptionInfo* beside_the_point(const Context& context, const FirstPlan& plan) {
    for (const PlanQuestion& question : plan_questions()) {
        if (context.arguments.has(*question.option) && !question.concerns(plan)) {
            return question.option;
        }
    }
    return nullptr;
}

/// Whether what may be left out is asked for: not of somebody who gave the whole plan in options.
bool all_given(const Context& context, const FirstPlan& plan) {
    for (const PlanQuestion& question : plan_questions()) {
        if (!question.may_be_unknown && question.concerns(plan)
            && !context.arguments.has(*question.option)) {
            return false;
        }
    }
    return true;
}

int run_new(const Context& context) {
    const std::string& file = context.arguments.words.front();
    std::error_code error;
    if (std::filesystem::exists(std::filesystem::symlink_status(file, error))) {
        return refuse(context,
                      wrong_input,
                      fmt::format("`{}` is there already; nothing is written over a file", file));
    }
    const auto place = output_place(file, context.files_read, false);
    if (!place) {
        return refuse(context, place.error().status, place.error().message);
    }
    FirstPlan plan;
    for (const PlanQuestion& question : plan_questions()) {
        const bool left_out = question.may_be_unknown && !context.arguments.has(*question.option)
                              && all_given(context, plan);
        if (!question.concerns(plan) || left_out) {
            continue;
        }
        if (const Ended ended = put_question(context, question, plan); ended != Ended::not_yet) {
            context.streams.out.flush();
            return refuse(context, wrong_input, fmt::format("{}; nothing was written", why(ended)));
        }
    }
    if (const OptionInfo* option = beside_the_point(context, plan)) {
        return refuse(
            context,
            wrong_input,
            fmt::format("{} does not go with this heater and this way; nothing was written",
                        option->name));
    }
    if (const int status = write_new_file(context, file, plan_file(plan)); status != all_pass) {
        return status;
    }
    context.streams.out << fmt::format("\n{}\n`{}` is written. Next:\n"
                                       "  fluewright check {}\n  fluewright draw {} -o run.svg\n",
                                       plan_sketch(plan),
                                       file,
                                       file,
                                       file);
    return all_pass;
}

constexpr std::array new_options{&option::plan_heater,
                                 &option::plan_way,
                                 &option::plan_collar,
                                 &option::plan_front,
                                 &option::plan_fire,
                                 &option::plan_collar_height,
                                 &option::plan_distance,
                                 &option::plan_entry,
                                 &option::plan_flue,
                                 &option::plan_ceiling,
                                 &option::plan_roof,
                                 &option::plan_top,
                                 &option::plan_pitch,
                                 &option::plan_ridge,
                                 &option::plan_clearance,
                                 &option::plan_pass};

} // namespace

extern const Command new_command;
const Command new_command{
    .name = "new",
    .summary = "asks about a heater and its run, and writes the first file",
    .about =
        "Asks what heater it is, where its run goes and how high things are. Writes an "
        "installation that check accepts, with comments and a sketch. Options answer questions "
        "beforehand. An answer that does not fit those before it is asked for again. Heights count "
        "from the floor the heater stands on. Nothing is written over a file, and nothing before "
        "all is answered.",
    .word = {.name = "FILE", .text = "the file to write; it must not exist yet"},
    .options = new_options,
    .example = "fluewright new run.json",
    .run = run_new};

} // namespace fluewright::cli
