#include "fluewright/io/report/report_improve.hpp"
#include "io/text/csv_text.hpp"
#include "score_json.hpp"

#include <array>
#include <fmt/core.h>

namespace fluewright {
namespace {

using Json = json::Value;

using report::json_number;

constexpr int improve_schema = 1;

std::string_view outcome_name(Improvement::Outcome outcome) {
    constexpr std::array<std::string_view, 5> names{
        "leave alone", "one change cures", "two changes cure", "three changes cure", "hopeless"};
    return names[static_cast<std::size_t>(outcome)];
}

Json ids(const std::vector<const Matter*>& findings) {
    Json list = Json::array();
    for (const Matter* matter : findings) {
        list.push_back(matter->id);
    }
    return list;
}

Json plan_json(const Case& c, const Plan& plan) {
    Json steps = Json::array();
    for (const Remedy& remedy : plan.steps) {
        steps.push_back({{"remedy", effort_of(remedy.kind).id},
                         {"what", remedy.what},
                         {"place", remedy.place},
                         {"length_m", json_number(remedy.length_m)},
                         {"cost", json_number(remedy.effort)},
                         {"look_at", effort_of(remedy.kind).may_worsen}});
    }
    return {{"rank", plan.rank},
            {"steps", std::move(steps)},
            {"cost", json_number(plan.cost)},
            {"gain", json_number(plan.gain)},
            {"cures", plan.cures},
            {"too_strong", plan.too_strong},
            {"on_front", plan.on_front},
            {"least_relative_spare", json_number(plan.score.least_spare)},
            {"limiting_state", plan.score.limiting},
            {"states", report::score_json(c, plan.score)},
            {"findings_raised", ids(plan.raised)},
            {"findings_cleared", ids(plan.cleared)},
            {"may_worsen", plan.worsens}};
}

} // namespace

std::string
improvement_json(const Improvement& improvement, std::string_view version, std::string_view file) {
    const Case& c = improvement.present.installation;
    Json plans = Json::array();
    for (const Plan& plan : improvement.plans) {
        plans.push_back(plan_json(c, plan));
    }
    const Json whole{
        {"schema", improve_schema},
        {"program", "fluewright"},
        {"version", version},
        {"file", file},
        {"title", c.title},
        {"outcome", outcome_name(improvement.outcome)},
        {"goal", improvement.goal == Goal::more_to_spare ? "more to spare" : "less draft"},
        {"sentence", improvement.sentence},
        {"reason", improvement.reason},
        {"present",
         {{"works", improvement.present.works},
          {"sentence", improvement.present.sentence},
          {"least_relative_spare", json_number(improvement.score.least_spare)},
          {"states", report::score_json(c, improvement.score)}}},
        {"cost_unit", improvement.currency.empty() ? "effort" : improvement.currency},
        {"runs_solved", improvement.tried},
        {"unpriced", improvement.unpriced},
        {"plans", std::move(plans)}};
    return json::indented_text(whole) + '\n';
}

std::string improvement_csv(const Improvement& improvement) {
    const Case& c = improvement.present.installation;
    std::string out =
        fmt::format("rank,remedies,cost,gain,cures,on_front,{}\r\n", report::score_csv_heading());
    report::append_score_csv(out, c, improvement.score, "0,as it stands,0,0,,");
    for (const Plan& plan : improvement.plans) {
        std::string remedies;
        for (const Remedy& remedy : plan.steps) {
            remedies += (remedies.empty() ? "" : " + ") + std::string{effort_of(remedy.kind).id};
        }
        report::append_score_csv(out,
                                 c,
                                 plan.score,
                                 fmt::format("{},{},{},{},{},{}",
                                             plan.rank,
                                             csv_field(remedies),
                                             plan.cost,
                                             plan.gain,
                                             plan.cures ? "yes" : "no",
                                             plan.on_front ? "yes" : "no"));
    }
    return out;
}

} // namespace fluewright
