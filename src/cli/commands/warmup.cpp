#include "fluewright/model/warmup/warmup.hpp"

#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/report/report_warmup.hpp"
#include "fluewright/model/warmup/burn_plan.hpp"

#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

constexpr double minute_s = 60.0;

struct TimeOption {
    const OptionInfo& option;
    double bare_unit_s; ///< of a plain number
    double least_s;
    double most_s;
};

constexpr TimeOption minutes_option{
    .option = option::minutes, .bare_unit_s = minute_s, .least_s = minute_s, .most_s = 604800.0};
constexpr TimeOption step_option{
    .option = option::step, .bare_unit_s = 1.0, .least_s = 0.5, .most_s = 3600.0};

/// A duration, or a plain number in the option's own unit; 0 when the option was not given. The
/// failure is the sentence to print.
Result<double, std::string> read_time(const Context& context, const TimeOption& info) {
    const std::string text{context.arguments.value(info.option)};
    if (text.empty()) {
        return 0.0;
    }
    const auto plain = parse_quantity(text, Kind::number);
    const auto timed = plain ? plain : parse_quantity(text, Kind::duration);
    const double seconds = !timed ? -1.0 : plain ? plain->value * info.bare_unit_s : timed->value;
    if (seconds < info.least_s || seconds > info.most_s) {
        return Failure{"`" + text + "` is no time for " + std::string{info.option.name} + "; from "
                       + format_quantity(info.least_s, Kind::duration, UnitSystem::metric) + " to "
                       + format_quantity(info.most_s, Kind::duration, UnitSystem::metric)};
    }
    return seconds;
}

/// Longer courses in finer steps would take minutes and as much memory as they like.
constexpr double most_steps = 200'000.0;

/// How long the course takes that is looked at.
double length_of(const Case& resolved, double total_s) {
    const BurnPlan plan(resolved, total_s, resolved.weathers.front().room_temperature_k);
    double length_s = 0.0;
    for (const BurnPhase& phase : plan.phases()) {
        length_s += phase.duration_s;
    }
    return length_s;
}

int run_warmup(const Context& context) {
    const auto total_s = read_time(context, minutes_option);
    const auto step_s = read_time(context, step_option);
    for (const auto* time : {&total_s, &step_s}) {
        if (!*time) {
            return refuse(context, wrong_input, time->error());
        }
    }
    const auto opened = open_case(context);
    if (!opened) {
        return opened.error();
    }
    const Case& c = opened->installation;
    const double used_step_s = *step_s > 0.0 ? *step_s : WarmupOptions{}.step_s;
    if (const double length_s = length_of(c, *total_s); length_s > most_steps * used_step_s) {
        const auto in_words = [](double duration_s) {
            return format_quantity(duration_s, Kind::duration, UnitSystem::metric);
        };
        return refuse(context,
                      wrong_input,
                      "a course of " + in_words(length_s) + " in steps of " + in_words(used_step_s)
                          + " takes more than 200,000 steps; shorten it with --minutes, or "
                            "lengthen --step");
    }
    std::vector<WarmupInWeather> courses;
    for (std::size_t weather = 0; weather < c.weathers.size(); ++weather) {
        WarmupOptions options;
        options.weather = weather;
        options.total_s = *total_s;
        if (*step_s > 0.0) {
            options.step_s = *step_s;
        }
        courses.push_back({.weather = weather, .course = warm_up(c, options)});
    }
    WarmupReportOptions report{
        .style = context.style, .dangers = {}, .not_decided = {}, .input = answer_input(*opened)};
    report.style.units = c.units;
    const Checked checked = checks_of_file(opened->written, c, solve(c, Detail::stations));
    report.dangers = present_dangers(checked);
    report.not_decided = fire_not_decided(checked, c.units);
    const int status = draws_in_time(courses) && report.dangers.empty() ? all_pass : falls_short;
    if (context.wants_json()) {
        return write_answer(context, warmup_json(c, courses, report), status);
    }
    const std::string_view format = context.arguments.value(option::chart_format);
    if (format == "csv") {
        return write_answer(context, warmup_csv(c, courses), status);
    }
    if (format == "svg") {
        return write_answer(context, warmup_svg(c, courses, report), status);
    }
    return write_answer(context, warmup_text(c, courses, report), status);
}

constexpr std::array<const OptionInfo*, 6> warmup_options{&option::minutes,
                                                          &option::step,
                                                          &option::chart_format,
                                                          &option::json,
                                                          &option::units,
                                                          &option::output};

} // namespace

extern const Command warmup_command;
const Command warmup_command{
    .name = "warmup",
    .summary = "from the match to the cold stove: when it draws, when it is dry",
    .about =
        "Follows one fire from a cold flue through lighting, high fire and burn-down, with the "
        "heat the walls take up: after how many minutes the draft suffices, the wall is dry and "
        "too hot for creosote, and how long the draft lasts after the fire. The course of the fire "
        "is that under \"burn\" in the file, or a usual one. Ends with status 1 when the draft a "
        "high fire needs is not reached in some weather, or a danger stands in the run.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = warmup_options,
    .example = "fluewright warmup run.json --minutes 120",
    .run = run_warmup};

} // namespace fluewright::cli
