#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/dialogue.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/page/study_pages.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"

#include <array>
#include <iostream>

namespace fluewright::cli {
namespace {

int status_of(const Diagnosis& diagnosis) {
    return asks_for_no_cure(diagnosis) ? all_pass : falls_short;
}

int run_diagnose(const Context& context) {
    const std::string& file = context.arguments.words.front();
    const bool asks = context.arguments.has(option::ask);
    if (asks && context.wants_json()) {
        return refuse(context, wrong_input, "a dialogue is for people; --ask goes with no --json");
    }
    const std::string_view format = context.arguments.value(option::picture_format);
    if (asks && (format == "svg" || format == "html")) {
        return refuse(context,
                      wrong_input,
                      "--ask writes to the screen; it goes with no picture and no page");
    }
    if (asks && file == "-") {
        return refuse(
            context, wrong_input, "--ask reads the answers from standard input; name the file");
    }
    if (asks && context.arguments.has(option::output)) {
        return refuse(context, wrong_input, "--ask writes to the screen; it goes with no --output");
    }
    auto written = read_written(context, file);
    if (!written) {
        return written.error();
    }
    if (const auto units = context.units()) {
        written->installation.units = *units == UnitSystem::us ? FileUnits::us : FileUnits::metric;
    }
    auto diagnoser = Diagnoser::open(written->installation);
    if (!diagnoser) {
        return tell_faults(context, diagnoser.error(), *written);
    }
    DiagnosisReportOptions report{.style = context.style, .input = answer_input(*written)};
    report.style.units = diagnoser->units();
    Diagnosis diagnosis = asks ? ask(context, report.style, *diagnoser) : diagnoser->diagnose();
    add_better_design(diagnosis, written->installation);
    if (context.wants_json()) {
        return write_answer(context, diagnosis_json(diagnosis, report), status_of(diagnosis));
    }
    if (format == "svg") {
        return write_answer(context, diagnosis_svg(diagnosis), status_of(diagnosis));
    }
    if (format == "html") {
        return write_answer(context,
                            diagnosis_page(diagnosis, report.input, report.style.units),
                            status_of(diagnosis));
    }
    const int status =
        write_answer(context, diagnosis_text(diagnosis, report), status_of(diagnosis));
    if (asks && diagnoser->installation().observed.size() > written->installation.observed.size()) {
        context.streams.out << "\nTo keep the answers, put this into " << written->name
                            << " in place of its \"observed\":\n  "
                            << write_observed(diagnoser->installation());
    }
    return status;
}

constexpr std::array diagnose_options{
    &option::ask, &option::picture_format, &option::json, &option::units, &option::output};

} // namespace

extern const Command diagnose_command;
const Command diagnose_command{
    .name = "diagnose",
    .summary = "it smokes: why, how sure, and what to look at next",
    .about =
        "Reads an installation as built, and what was seen and measured on it (\"observed\"). "
        "Weighs hidden causes and faults of the design by how well each explains it. Names "
        "the next check worth making. With --ask it asks for those checks one by one. Ends with "
        "status 1 when something is likely wrong or the file shows a danger.",
    .word = {.name = "FILE", .text = "the installation; - reads standard input"},
    .options = diagnose_options,
    .example = "fluewright diagnose run.json --ask",
    .run = run_diagnose};

} // namespace fluewright::cli
