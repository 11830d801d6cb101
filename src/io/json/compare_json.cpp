#include "fluewright/io/report/report_compare.hpp"
#include "io/text/csv_text.hpp"
#include "score_json.hpp"

#include <fmt/core.h>

namespace fluewright {

using Json = json::Value;
using report::json_number;

namespace {

Json layout_json(const Layout& layout) {
    const Case& c = layout.assessment.installation;
    Json findings = Json::array();
    for (const Finding& finding : layout.assessment.findings) {
        findings.push_back({{"id", finding.matter->id}, {"severity", name(finding.severity)}});
    }
    return {{"file", layout.name},
            {"title", c.title},
            {"works", layout.score.passes},
            {"sentence", layout.assessment.sentence},
            {"least_relative_spare", json_number(layout.score.least_spare)},
            {"limiting_state", layout.score.limiting},
            {"height_m", json_number(layout.rise_m)},
            {"pipe_m", json_number(layout.pipe_m)},
            {"level_m", json_number(layout.level_m)},
            {"turns_rad", json_number(layout.turns_rad)},
            {"least_area_m2", json_number(layout.least_area_m2)},
            {"states", report::score_json(c, layout.score)},
            {"findings", std::move(findings)}};
}

} // namespace

std::string comparison_json(const Comparison& comparison, std::string_view version) {
    constexpr int schema = 1;
    Json layouts = Json::array();
    for (const Layout& layout : comparison.layouts) {
        layouts.push_back(layout_json(layout));
    }
    Json differences = Json::array();
    for (const FileDifference& row : file_differences(comparison)) {
        differences.push_back({{"pointer", row.pointer}, {"values", row.values}});
    }
    const Json whole{{"schema", schema},
                     {"program", "fluewright"},
                     {"version", version},
                     {"sentence", comparison.sentence},
                     {"best", comparison.best},
                     {"alike", comparison.alike},
                     {"layouts", std::move(layouts)},
                     {"differences", std::move(differences)}};
    return json::indented_text(whole) + '\n';
}

std::string comparison_csv(const Comparison& comparison) {
    std::string out = fmt::format("file,works,best,height_m,pipe_m,level_m,turns_rad,{}\r\n",
                                  report::score_csv_heading());
    for (std::size_t i = 0; i < comparison.layouts.size(); ++i) {
        const Layout& layout = comparison.layouts[i];
        report::append_score_csv(out,
                                 layout.assessment.installation,
                                 layout.score,
                                 fmt::format("{},{},{},{},{},{},{}",
                                             csv_field(layout.name),
                                             layout.score.passes ? "yes" : "no",
                                             i == comparison.best ? "yes" : "no",
                                             layout.rise_m,
                                             layout.pipe_m,
                                             layout.level_m,
                                             layout.turns_rad));
    }
    return out;
}

} // namespace fluewright
