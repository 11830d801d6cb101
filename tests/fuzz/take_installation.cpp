// A valid installation through all that is made of one.
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/parts/parts_list.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/json/report_json.hpp"
#include "fluewright/io/report/parts_text.hpp"
#include "fluewright/io/report/report_diagnosis.hpp"
#include "fluewright/io/report/report_improve.hpp"
#include "fluewright/io/report/report_text.hpp"
#include "takers.hpp"

#include <cmath>

using namespace fluewright;

namespace fuzz {
namespace {

void take_improve(const Installation& written, std::string_view text) {
    ImproveOptions options;
    options.most = 2;
    const auto improvement = improve(written, options);
    insist(improvement || !improvement.error().empty(), "not improved, without a reason", text);
    if (improvement) {
        insist_visible(improvement_text(*improvement, {}), text);
        insist_visible(improvement_json(*improvement, {}), text);
        for (const Plan& plan : improvement->plans) {
            insist(std::isfinite(plan.cost), "a cost is not finite", text);
            insist(read_installation(write_installation(plan.changed)).has_value(),
                   "a plan that does not read back",
                   text);
        }
    }
}

void take_diagnose(const Installation& written, std::string_view text) {
    auto diagnoser = Diagnoser::open(written);
    if (!diagnoser) {
        return;
    }
    const Diagnosis diagnosis = diagnoser->diagnose();
    double sum = 0.0;
    for (const Explanation& explanation : diagnosis.explanations) {
        insist(explanation.probability >= 0.0 && explanation.probability <= 1.0,
               "a probability that is none",
               text);
        sum += explanation.probability;
    }
    // Those too unlikely to be shown are left out.
    insist(sum > 0.5 && sum < 1.0 + 1e-6, "probabilities that do not add up", text);
    insist_visible(diagnosis_text(diagnosis, {}), text);
    insist_visible(diagnosis_json(diagnosis, {}), text);
}

} // namespace

void take_installation(std::string_view text) {
    const ReadResult read = read_installation(text, "fuzz.json");
    if (!read) {
        return;
    }
    const std::string again = write_installation(*read);
    const ReadResult reread = read_installation(again);
    insist(reread.has_value(), "what was written does not read back", text);
    insist(write_installation(*reread) == again, "written as another", text);
    // The searches take a hundred times as long as the rest.
    const bool searches = pick(text, 8) == 0;
    AssessOptions options;
    options.size_search = searches;
    const Result<Assessment, Faults> assessed = assess(*read, options);
    if (!assessed) {
        insist(!assessed.error().empty(), "not resolved, without a reason", text);
        return;
    }
    insist_solved(*assessed, text);
    ReportOptions report;
    report.details = true;
    report.size_searched = searches;
    insist_visible(report_text(*assessed, report), text);
    JsonReportOptions json;
    json.size_searched = searches;
    insist_visible(report_json(*assessed, json), text);
    const PartsList list = parts_list(*read, assessed->installation, assessed->solution, {});
    PartsReportOptions parts{
        .style = {}, .input = {}, .assumptions = assessed->installation.assumptions};
    insist(std::isfinite(list.weight_kg + list.bought_m + list.offcut_m),
           "parts that are not finite",
           text);
    insist_visible(parts_text(list, parts), text);
    insist_visible(parts_json(list, parts), text);
    if (pick(text, 4) == 0) {
        take_diagnose(*read, text);
    }
    if (searches) {
        take_improve(*read, text);
    }
}

} // namespace fuzz
