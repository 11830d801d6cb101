#include "fluewright/io/page/study_pages.hpp"

#include "fluewright/io/report/report_compare.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "html_page.hpp"
#include "io/report/check_parts.hpp"

#include <fmt/core.h>

namespace fluewright {
namespace {

std::string foot_of(const AnswerInput& input) {
    std::string files;
    for (const AnswerFile& file : input.files) {
        files += (files.empty() ? "" : ", ") + file.name;
    }
    return fmt::format("fluewright {}, from {}", input.version, files);
}

} // namespace

std::string comparison_page(const Comparison& comparison, const AnswerInput& input) {
    const Case& first = comparison.layouts.front().assessment.installation;
    Style inner = page::style_of(3);
    inner.units = first.units;
    Style outer = page::style_of(2);
    outer.units = first.units;
    page::HtmlPage made;
    made.add("layouts", "Side by side", comparison_text(comparison, inner));
    made.add_figure("margins",
                    "Margins",
                    comparison_svg(comparison),
                    "Draft over the need, and how far the door may be opened, by layout.");
    made.add_headed("cautions", "Cautions", report::cautions_text(input.heater(), outer));
    return made.finished({.title = "Layouts side by side",
                          .kicker = "Heater, pipe and chimney: which of them?",
                          .lead = comparison.sentence,
                          .passes = comparison.layouts[comparison.best].assessment.works(),
                          .foot = foot_of(input)});
}

std::string diagnosis_page(const Diagnosis& diagnosis, const AnswerInput& input, UnitSystem units) {
    DiagnosisReportOptions report{.style = page::style_of(3), .input = input};
    report.style.units = units;
    page::HtmlPage made;
    made.add("answer", "What was seen, and why", diagnosis_text(diagnosis, report));
    made.add_figure("causes",
                    "Causes",
                    diagnosis_svg(diagnosis),
                    "How likely each cause is, and how large it would be.");
    const bool urgent = !diagnosis.urgent.empty();
    return made.finished({.title = diagnosis.title.empty() ? std::string_view{"Why it smokes"}
                                                           : std::string_view{diagnosis.title},
                          .kicker = "Heater, pipe and chimney: what is wrong?",
                          .lead = urgent ? std::string_view{diagnosis.urgent.front()}
                                         : std::string_view{diagnosis.sentence},
                          .passes = asks_for_no_cure(diagnosis),
                          .foot = foot_of(input)});
}

} // namespace fluewright
